import type { Point } from '../geometry/planar.js';
/** A finished drawing before any SVG exists: marks at fixed places in millimetres on a sheet, y down, origin top left. */

import type { Layer, PenName, TextStyleName } from './styles.js';

export type { Point } from '../geometry/planar.js';

/** A rectangle on the sheet, mm; y0 is the upper edge. */
export interface Rect {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** One or several rings or open lines drawn with one pen. Several closed rings cut holes in each other (even-odd). */
export interface ShapeMark {
  readonly kind: 'shape';
  readonly layer: Layer;
  readonly pen: PenName;
  readonly rings: readonly (readonly Point[])[];
  readonly closed: boolean;
  /** The record that the mark shows, where it is a subject of the drawing and not its background. */
  readonly id?: string;
  /** Line width that stands for a true width, mm on the sheet; otherwise the pen's own. */
  readonly widthMm?: number;
  /** Not in the coach yet: drawn in wide dashes. */
  readonly planned?: true;
}

export interface CircleMark {
  readonly kind: 'circle';
  readonly layer: Layer;
  readonly pen: PenName;
  readonly center: Point;
  readonly radiusMm: number;
  readonly id?: string;
  readonly planned?: true;
}

export interface TextMark {
  readonly kind: 'text';
  readonly layer: Layer;
  readonly style: TextStyleName;
  readonly text: string;
  /** Middle of the left edge, of the middle or of the right edge of the line of text, as `anchor` says. */
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
  /** True: white behind the words, so that lines break at them. */
  readonly backed: boolean;
  /** Read from the right-hand side of the sheet. */
  readonly upright?: boolean;
  readonly id?: string;
}

export type Mark = ShapeMark | CircleMark | TextMark;

export interface Scene {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: string;
  readonly alt: string;
  readonly marks: readonly Mark[];
}

export function rectAbout(points: Iterable<Point>): Rect | undefined {
  let rect: { x0: number; y0: number; x1: number; y1: number } | undefined;
  for (const [x, y] of points) {
    rect ??= { x0: x, y0: y, x1: x, y1: y };
    rect.x0 = Math.min(rect.x0, x);
    rect.y0 = Math.min(rect.y0, y);
    rect.x1 = Math.max(rect.x1, x);
    rect.y1 = Math.max(rect.y1, y);
  }
  return rect;
}

export const overlaps = (a: Rect, b: Rect, gapMm = 0): boolean =>
  a.x0 < b.x1 + gapMm && b.x0 < a.x1 + gapMm && a.y0 < b.y1 + gapMm && b.y0 < a.y1 + gapMm;

export const isWithinRect = (inner: Rect, outer: Rect): boolean =>
  inner.x0 >= outer.x0 && inner.y0 >= outer.y0 && inner.x1 <= outer.x1 && inner.y1 <= outer.y1;

export const holds = (r: Rect, [x, y]: Point): boolean => x >= r.x0 && x <= r.x1 && y >= r.y0 && y <= r.y1;

export const growRect = (a: Rect, byMm: number): Rect => ({ x0: a.x0 - byMm, y0: a.y0 - byMm, x1: a.x1 + byMm, y1: a.y1 + byMm });

export const line = (layer: Layer, pen: PenName, points: readonly Point[], id?: string): ShapeMark => ({
  kind: 'shape',
  layer,
  pen,
  rings: [points],
  closed: false,
  ...(id === undefined ? {} : { id }),
});

export const rectArea = (layer: Layer, pen: PenName, ring: readonly Point[], id?: string): ShapeMark => ({
  ...line(layer, pen, ring, id),
  closed: true,
});

export const rectangle = (layer: Layer, pen: PenName, r: Rect, id?: string): ShapeMark =>
  rectArea(
    layer,
    pen,
    [
      [r.x0, r.y0],
      [r.x1, r.y0],
      [r.x1, r.y1],
      [r.x0, r.y1],
    ],
    id,
  );

export const circle = (layer: Layer, pen: PenName, center: Point, radiusMm: number, id?: string): CircleMark => ({
  kind: 'circle',
  layer,
  pen,
  center,
  radiusMm,
  ...(id === undefined ? {} : { id }),
});

export function textMark(
  layer: Layer,
  style: TextStyleName,
  at: Point,
  words: string,
  more: Partial<Pick<TextMark, 'anchor' | 'backed' | 'upright' | 'id'>> = {},
): TextMark {
  return { kind: 'text', layer, style, text: words, at, anchor: 'start', backed: false, ...more };
}
