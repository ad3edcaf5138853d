import { boxBounds } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { type Solid, solidsIn } from '../../query/shown.js';
import { ASSUMED_TYRE_RADIUS_MM, type Extent, groundZMm } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { circle, line, type Mark, type Point, rectArea } from '../scene.js';
import type { Port } from '../sheet.js';
import { wordsFor } from '../wording.js';

/** From memory: the usual rail spacing of North American chassis, 34 in; drawn only where nothing is on record. */
const USUAL_RAIL_SPACING_MM = 863.6;
const RAIL_WIDTH_MM = 80;
const RAIL_DEPTH_MM = 260;
const TYRE_WIDTH_MM = 290;
const USUAL_TRACK_MM = 2000;

/** What of the chassis is not to size. */
export const chassisNote = (model: Model): string =>
  wordsFor(model)(recordedFrame(model).length > 0 ? 'drawn.chassis.tyres' : 'drawn.chassis.all');

/** Rails and cross members of which the sizes are recorded. */
const recordedFrame = (model: Model): readonly Solid[] =>
  solidsIn(model).filter(({ kind }) => kind === 'rail' || kind === 'cross member');

const quad = (port: Port, corners: readonly Vec3[]): readonly Point[] => corners.map(port.place);

/** Rails and tyres seen from above or below. */
export function chassisPlan(model: Model, extent: Extent, port: Port): readonly Mark[] {
  const { frame, axles } = model.shell.chassis;
  if (axles.length === 0) return [];
  const lying = ([x0, y0]: readonly number[], [x1, y1]: readonly number[]): Mark => {
    const [from, to] = [Math.max(x0 as number, extent.low[0]), Math.min(x1 as number, extent.high[0])];
    const corners = [
      [from, y0],
      [to, y0],
      [to, y1],
      [from, y1],
    ] as const;
    return rectArea(
      'chassis',
      'chassis',
      quad(
        port,
        corners.map(([x, y]): Vec3 => [x, y as number, 0]),
      ),
    );
  };
  const recorded = recordedFrame(model).map(({ box }) => boxBounds(box));
  const half = (frame.railSpacingMm ?? USUAL_RAIL_SPACING_MM) / 2 - RAIL_WIDTH_MM / 2;
  const usual = [-half, half].map(
    (y) =>
      [
        [extent.low[0], y - RAIL_WIDTH_MM / 2],
        [extent.high[0], y + RAIL_WIDTH_MM / 2],
      ] as const,
  );
  const marks: Mark[] =
    recorded.length > 0 ? recorded.map(({ min, max }) => lying(min, max)) : usual.map(([from, to]) => lying(from, to));
  for (const axle of axles) {
    const track = (axle.trackMm ?? USUAL_TRACK_MM) / 2;
    marks.push(
      line(
        'chassis',
        'centre',
        quad(port, [
          [axle.xMm, -track - 500, 0],
          [axle.xMm, track + 500, 0],
        ]),
      ),
    );
    for (const side of [-1, 1]) {
      const wide = axle.dual ? TYRE_WIDTH_MM * 1.1 : TYRE_WIDTH_MM / 2;
      const [y0, y1] = [side * track - wide, side * track + wide];
      const [x0, x1] = [axle.xMm - ASSUMED_TYRE_RADIUS_MM, axle.xMm + ASSUMED_TYRE_RADIUS_MM];
      marks.push(
        rectArea(
          'chassis',
          'tyre',
          quad(port, [
            [x0, y0, 0],
            [x1, y0, 0],
            [x1, y1, 0],
            [x0, y1, 0],
          ]),
        ),
      );
    }
  }
  return marks;
}

/** Rails, tyres and ground seen from the side. */
export function chassisSide(model: Model, extent: Extent, port: Port): readonly Mark[] {
  const { axles } = model.shell.chassis;
  if (axles.length === 0) return [];
  const ground = groundZMm(model);
  const rail = recordedFrame(model).find(({ kind }) => kind === 'rail');
  const { min, max } = rail ? boxBounds(rail.box) : { min: [extent.low[0], 0, -RAIL_DEPTH_MM], max: [extent.high[0], 0, 0] };
  const [front, rear] = [Math.max(min[0] as number, extent.low[0]), Math.min(max[0] as number, extent.high[0])];
  const [low, top] = [min[2] as number, max[2] as number];
  const marks: Mark[] = [
    line(
      'ground',
      'ground',
      quad(port, [
        [extent.low[0] - 200, 0, ground],
        [extent.high[0] + 200, 0, ground],
      ]),
    ),
    rectArea(
      'chassis',
      'chassis',
      quad(port, [
        [front, 0, top],
        [rear, 0, top],
        [rear, 0, low],
        [front, 0, low],
      ]),
    ),
  ];
  for (const axle of axles) {
    const hub = port.place([axle.xMm, 0, ground + ASSUMED_TYRE_RADIUS_MM]);
    const radius = Math.abs(port.place([axle.xMm, 0, ground])[1] - hub[1]);
    marks.push(circle('chassis', 'tyre', hub, radius), ...cross(hub, radius * 0.25));
  }
  return marks;
}

/** Tyres and ground seen from the front (the first axle) or the rear (the last). */
export function chassisEnd(model: Model, extent: Extent, port: Port, end: 'front' | 'rear'): readonly Mark[] {
  const axle = end === 'front' ? model.shell.chassis.axles[0] : model.shell.chassis.axles.at(-1);
  if (!axle) return [];
  const ground = groundZMm(model);
  const track = (axle.trackMm ?? USUAL_TRACK_MM) / 2;
  const marks: Mark[] = [
    line(
      'ground',
      'ground',
      quad(port, [
        [axle.xMm, extent.low[1] - 200, ground],
        [axle.xMm, extent.high[1] + 200, ground],
      ]),
    ),
  ];
  for (const side of [-1, 1]) {
    const wide = axle.dual ? TYRE_WIDTH_MM * 1.1 : TYRE_WIDTH_MM / 2;
    const [y0, y1] = [side * track - wide, side * track + wide];
    const top = ground + 2 * ASSUMED_TYRE_RADIUS_MM;
    marks.push(
      rectArea(
        'chassis',
        'tyre',
        quad(port, [
          [axle.xMm, y0, ground],
          [axle.xMm, y1, ground],
          [axle.xMm, y1, top],
          [axle.xMm, y0, top],
        ]),
      ),
    );
  }
  return marks;
}

function cross([x, y]: Point, half: number): readonly Mark[] {
  return [
    line('chassis', 'centre', [
      [x - half, y],
      [x + half, y],
    ]),
    line('chassis', 'centre', [
      [x, y - half],
      [x, y + half],
    ]),
  ];
}

/** Names at the axles, at the given height and side. */
export function axleWishes(model: Model, port: Port, at: (xMm: number) => Vec3): readonly LabelWish[] {
  return model.shell.chassis.axles.map((axle) => ({
    text: wordsFor(model)('drawn.axle', { id: axle.id }),
    anchor: port.place(at(axle.xMm)),
    style: 'name',
    priority: 60,
    id: axle.id,
  }));
}
