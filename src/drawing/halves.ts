import { clipLine, clipRing } from './outline.js';
import { holds, type Mark, type Rect } from './scene.js';

/** Long views with more to label than this are drawn in two halves, at a larger scale. */
const MOST_LABELS = 40;
/** The halves share this much of the whole, so that nothing is lost at the cut. */
const SHARED = 0.04;

export interface SheetPart {
  readonly bounds: Rect;
  /** Added to ids and titles; empty for the whole. */
  readonly suffix: '' | 'front half' | 'rear half';
}

/** The bounds of a view, whole, or cut across the vehicle where there is too much in it for one sheet. */
export function partsOf(bounds: Rect, labels: number, front: 'left' | 'right' | 'none'): readonly SheetPart[] {
  const width = bounds.x1 - bounds.x0;
  if (labels <= MOST_LABELS || front === 'none' || width < 1.6 * (bounds.y1 - bounds.y0)) return [{ bounds, suffix: '' }];
  const middle = (bounds.x0 + bounds.x1) / 2;
  const left: Rect = { ...bounds, x1: middle + SHARED * width };
  const right: Rect = { ...bounds, x0: middle - SHARED * width };
  const [first, second] = front === 'left' ? [left, right] : [right, left];
  return [
    { bounds: first, suffix: 'front half' },
    { bounds: second, suffix: 'rear half' },
  ];
}

/** A view this many times longer than high would be a thin line across its sheet. */
const THIN = 4.5;
/** Fewer labels than this are read well enough on a thin line. */
const FEW_LABELS = 6;
export const isThin = ({ x0, x1, y0, y1 }: Rect, labels: number): boolean => labels >= FEW_LABELS && x1 - x0 >= THIN * (y1 - y0);

/** A long thin part once more in two, to stand one below the other on one sheet: twice as large. */
export function stripsOf({ bounds }: SheetPart, labels: number, front: 'left' | 'right' | 'none'): readonly SheetPart[] {
  return isThin(bounds, labels) ? partsOf(bounds, Number.POSITIVE_INFINITY, front) : [{ bounds, suffix: '' }];
}

/** Only what lies within a rectangle of the sheet. */
export function clipMarks(marks: readonly Mark[], frame: Rect): readonly Mark[] {
  return marks.flatMap((mark): readonly Mark[] => {
    if (mark.kind === 'circle') return holds(frame, mark.center) ? [mark] : [];
    if (mark.kind === 'text') return holds(frame, mark.at) ? [mark] : [];
    const rings = mark.closed
      ? mark.rings.map((ring) => clipRing(ring, frame)).filter((ring) => ring.length >= 3)
      : mark.rings.flatMap((ring) => clipLine(ring, frame));
    return rings.length > 0 ? [{ ...mark, rings }] : [];
  });
}
