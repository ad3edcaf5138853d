import type { Vec3 } from '../geometry/vector.js';
import { project, type View } from './projection.js';
import type { Point, Rect } from './scene.js';

export interface SheetSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Scales of ISO 5455 (from memory), and none between them: `50` is 1:50, `0.5` is 2:1. Beyond their end they go on by tens. */
export const SCALES = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000] as const;

export const scaleText = (reduction: number): string => (reduction >= 1 ? `1:${reduction}` : `${Math.round(1 / reduction)}:1`);

/** The largest drawing of the series that fits, as its reduction. Beyond its end (a length typed far too large) it goes on by tens. */
export function fittingScale(widthMm: number, heightMm: number, roomWidthMm: number, roomHeightMm: number): number {
  const needed = Math.max(widthMm / roomWidthMm, heightMm / roomHeightMm);
  const fitting = SCALES.find((reduction) => reduction >= needed - 1e-9);
  return fitting ?? 10 ** Math.ceil(Math.log10(needed));
}

/** One view placed on the sheet. */
export interface Port {
  readonly view: View;
  /** Where the view's bounds lie on the sheet. */
  readonly frame: Rect;
  /** From the vehicle to the sheet. */
  readonly place: (at: Vec3) => Point;
  /** From the view's plane, mm of the vehicle, to the sheet. */
  readonly placeFlat: (flat: Point) => Point;
  readonly title?: string;
}

export interface Layout {
  readonly reduction: number;
  readonly ports: readonly Port[];
  readonly widthMm: number;
  readonly heightMm: number;
  /** Where labels may stand. */
  readonly room: Rect;
}

export interface ViewRequest {
  readonly view: View;
  readonly bounds: Rect;
  readonly title?: string;
}

export interface Margins {
  /** Least clear strip around each view for labels and dimensions, mm on the sheet. */
  readonly sideMm: number;
  readonly aboveMm: number;
  readonly belowMm: number;
  /** The strip above and below may grow to this where the sheet has the height, mm. */
  readonly mostMm: number;
}

export const FURNITURE_MM = 11;
const EDGE_MM = 1;

/** Views below one another at one scale; the sheet is then only as high as they need. What is not to scale fills its sheet. */
export function layOut(
  views: readonly ViewRequest[],
  sheet: SheetSize,
  room: Margins,
  fit: 'to scale' | 'as large as it goes' = 'to scale',
): Layout {
  const widest = Math.max(...views.map(({ bounds }) => bounds.x1 - bounds.x0), 1);
  const total = Math.max(
    views.reduce((sum, { bounds }) => sum + bounds.y1 - bounds.y0, 0),
    1,
  );
  const strips = views.length * (room.aboveMm + room.belowMm);
  const inside = sheet.heightMm - FURNITURE_MM - 2 * EDGE_MM;
  const [wideMm, highMm] = [Math.max(sheet.widthMm - 2 * room.sideMm, 10), Math.max(inside - strips, 10)];
  const reduction = fit === 'to scale' ? fittingScale(widest, total, wideMm, highMm) : Math.max(widest / wideMm, total / highMm);
  const spare = inside - strips - total / reduction;
  const wanted = views.length * 2 * room.mostMm - strips;
  const extra = Math.max(0, Math.min(spare, wanted)) / (2 * views.length);
  const ports: Port[] = [];
  let y = EDGE_MM;
  for (const { view, bounds, title } of views) {
    const width = (bounds.x1 - bounds.x0) / reduction;
    const height = (bounds.y1 - bounds.y0) / reduction;
    const x0 = (sheet.widthMm - width) / 2;
    const y0 = y + room.aboveMm + extra;
    const placeFlat = ([x, up]: Point): Point => [x0 + (x - bounds.x0) / reduction, y0 + (bounds.y1 - up) / reduction];
    ports.push({
      view,
      frame: { x0, y0, x1: x0 + width, y1: y0 + height },
      placeFlat,
      place: (at) => placeFlat(project(view, at)),
      ...(title === undefined ? {} : { title }),
    });
    y = y0 + height + room.belowMm + extra;
  }
  const heightMm = Math.min(Math.ceil(y + FURNITURE_MM + EDGE_MM), Math.max(sheet.heightMm, 20));
  return {
    reduction,
    ports,
    widthMm: sheet.widthMm,
    heightMm,
    room: { x0: EDGE_MM, y0: EDGE_MM, x1: sheet.widthMm - EDGE_MM, y1: heightMm - FURNITURE_MM },
  };
}
