/** What is wrong with a finished sheet: measured from its marks, by other code than that which placed them. */

import type { Drawing } from '../../src/drawing/index.js';
import { textBox } from '../../src/drawing/ink.js';
import { crossesRect } from '../../src/drawing/outline.js';
import { growRect, type Mark, overlaps, type Point, type Rect, type TextMark } from '../../src/drawing/scene.js';
import { CAPITAL_SHARE, keepsLabelsOff, LAYERS, PENS, TEXT_STYLES } from '../../src/drawing/styles.js';

/** Two things nearer than this touch in print only, mm. */
const TOUCH_MM = 0.05;

type Line = Exclude<Mark, TextMark>;

export interface Fault {
  readonly drawing: string;
  readonly what: 'off its sheet' | 'label on label' | 'label on line';
  readonly words: string;
  /** The other label, or the pen of the line. */
  readonly on?: string;
}

/** Height of the capitals of a text, mm on the sheet (the lettering height h of ISO 3098-1). */
export const letterHeightMm = ({ style }: TextMark): number => TEXT_STYLES[style].sizeMm * CAPITAL_SHARE;

export const textsOf = (drawing: Drawing): readonly TextMark[] =>
  (drawing.marks ?? []).filter((mark): mark is TextMark => mark.kind === 'text');

/** The medium's letter stands in its run on purpose, and breaks the line. A ring or a stroke of a label is part of it. */
const breaksItsLine = ({ style }: TextMark): boolean => style === 'letter';

/** What a text covers: the white behind it, else its letters, from the baseline up where none hangs below it. */
function inkBox(text: TextMark): Rect {
  const box = textBox(text);
  if (text.backed || !/^[A-Z0-9½¾ .+±×→-]+$/u.test(text.text)) return box;
  const half = letterHeightMm(text) / 2;
  const [x, y] = text.at;
  return text.upright ? { ...box, x0: x - half, x1: x + half } : { ...box, y0: y - half, y1: y + half };
}

export function sheetFaults(drawing: Drawing): readonly Fault[] {
  const texts = textsOf(drawing).map((text) => ({ text, box: growRect(inkBox(text), -TOUCH_MM) }));
  const lines = (drawing.marks ?? []).filter(
    (mark): mark is Line => mark.kind !== 'text' && mark.layer !== 'labels' && keepsLabelsOff(mark.pen),
  );
  const painted = [...(drawing.marks ?? [])].sort((a, b) => LAYERS.indexOf(a.layer) - LAYERS.indexOf(b.layer));
  const faults: Fault[] = [];
  const add = (what: Fault['what'], words: string, on?: string): void => {
    faults.push({ drawing: drawing.id, what, words, ...(on === undefined ? {} : { on }) });
  };
  texts.forEach(({ text, box }, at) => {
    if (box.x0 < 0 || box.y0 < 0 || box.x1 > drawing.widthMm || box.y1 > drawing.heightMm) add('off its sheet', text.text);
    for (const other of texts.slice(at + 1)) if (overlaps(box, other.box)) add('label on label', text.text, other.text.text);
    if (breaksItsLine(text)) return;
    for (const mark of lines)
      if (touches(mark, box) && !isPaintedOver(mark, box, painted)) add('label on line', text.text, mark.pen);
  });
  return faults;
}

/** Whether what is painted after a line fills all of a box: the line cannot be seen there. */
function isPaintedOver(mark: Line, box: Rect, painted: readonly Mark[]): boolean {
  const corners: readonly Point[] = [
    [box.x0, box.y0],
    [box.x1, box.y0],
    [box.x1, box.y1],
    [box.x0, box.y1],
  ];
  return painted
    .slice(painted.indexOf(mark) + 1)
    .some(
      (later) =>
        later.kind === 'shape' &&
        later.closed &&
        later.rings.length === 1 &&
        PENS[later.pen].fill !== undefined &&
        corners.every((corner) => isInside(corner, later.rings[0] as readonly Point[])),
    );
}

/** By the crossings of a ray to the right. */
function isInside([x, y]: Point, ring: readonly Point[]): boolean {
  let inside = false;
  ring.forEach(([ax, ay], at) => {
    const [bx, by] = ring[(at + 1) % ring.length] as Point;
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
  });
  return inside;
}

function touches(mark: Line, box: Rect): boolean {
  const halfMm = (mark.kind === 'shape' && mark.widthMm !== undefined ? mark.widthMm : PENS[mark.pen].widthMm) / 2;
  if (mark.kind === 'circle') {
    const [x, y] = mark.center;
    const near = Math.hypot(x - Math.min(box.x1, Math.max(box.x0, x)), y - Math.min(box.y1, Math.max(box.y0, y)));
    const far = Math.hypot(Math.max(x - box.x0, box.x1 - x), Math.max(y - box.y0, box.y1 - y));
    return near < mark.radiusMm + halfMm && far > mark.radiusMm - halfMm;
  }
  const about = growRect(box, halfMm);
  return mark.rings.some((ring) =>
    ring.some((from, at) => {
      const to: Point | undefined = at + 1 < ring.length ? ring[at + 1] : mark.closed ? ring[0] : undefined;
      return to !== undefined && crossesRect(from, to, about);
    }),
  );
}
