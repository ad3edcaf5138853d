import type { Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import { solidsIn } from '../query/shown.js';
import { project, type View } from './projection.js';
import { type Rect, rectAbout } from './scene.js';
import { boxCorners, memberCorners } from './visibility.js';

/** An axis-aligned box in the shell's datum, mm. */
export interface Extent {
  readonly low: Vec3;
  readonly high: Vec3;
}

/** No radius is on record: wheels are drawn at this one, dashed, and the sheet says so. */
export const ASSUMED_TYRE_RADIUS_MM = 508;
/** What is drawn of the chassis ahead of the first and behind the last axle where no shell covers it, mm. */
const AROUND_AXLE_MM = 700;

const spread = (points: readonly Vec3[]): Extent | undefined => {
  if (points.length === 0) return undefined;
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const point of points) {
    for (const axis of [0, 1, 2] as const) {
      low[axis] = Math.min(low[axis], point[axis]);
      high[axis] = Math.max(high[axis], point[axis]);
    }
  }
  return { low, high };
};

const extents = new WeakMap<Model, Extent>();

/** The welded shell with its skins: members and panels. Without any, the declared envelope behind the front axle. */
export function shellExtent(model: Model): Extent {
  // Every drawing asks for it.
  const extent = extents.get(model) ?? extentOf(model);
  extents.set(model, extent);
  return extent;
}

function extentOf(model: Model): Extent {
  const { members, panels, envelope } = model.shell;
  const points = [
    ...members.flatMap((member) => memberCorners(member, model.library)),
    ...panels.flatMap((panel) => panel.outline),
  ];
  const known = spread(points);
  if (known) return known;
  const { lengthMm, widthMm, heightMm } = envelope ?? { lengthMm: 8000, widthMm: 2500, heightMm: 2400 };
  return { low: [0, -widthMm / 2, 0], high: [lengthMm, widthMm / 2, heightMm] };
}

/** Height of the ground in the shell's datum, mm; where the rail's height is not on record, under the assumed tyres. */
export function groundZMm(model: Model): number {
  const above = model.shell.chassis.frame.railTopAboveGroundMm;
  return above === undefined ? -2 * ASSUMED_TYRE_RADIUS_MM : -above;
}

/** Shell, axles, ground, and what hangs outside of the shell, together: what an outside view must show. */
export function vehicleExtent(model: Model): Extent {
  const shell = shellExtent(model);
  const axles = model.shell.chassis.axles.map((axle) => axle.xMm);
  const ground = axles.length > 0 ? groundZMm(model) : shell.low[2];
  const hung = solidsIn(model).flatMap(({ box }) => boxCorners(box));
  const whole = spread([shell.low, shell.high, ...hung]) ?? shell;
  return {
    low: [Math.min(whole.low[0], ...axles.map((x) => x - AROUND_AXLE_MM)), whole.low[1], Math.min(whole.low[2], ground)],
    high: [Math.max(whole.high[0], ...axles.map((x) => x + AROUND_AXLE_MM)), whole.high[1], whole.high[2]],
  };
}

export function extentCorners({ low, high }: Extent): readonly Vec3[] {
  const corners: Vec3[] = [];
  for (const x of [low[0], high[0]])
    for (const y of [low[1], high[1]]) for (const z of [low[2], high[2]]) corners.push([x, y, z]);
  return corners;
}

/** Bounds in the view's plane, mm of the vehicle. */
export const viewBounds = (view: View, points: readonly Vec3[]): Rect =>
  rectAbout(points.map((point) => project(view, point))) ?? { x0: 0, y0: 0, x1: 1, y1: 1 };
