import { line, type Mark, type Point, rectArea, textMark } from './scene.js';

const ARROW_LENGTH_MM = 2;
const ARROW_HALF_MM = 0.33;
/** Extension lines start off the outline and run past the dimension line, ISO 129-1 style. */
const GAP_MM = 0.8;
const PAST_MM = 1;

export function arrowHead(tip: Point, angle: number): Mark {
  const back: Point = [tip[0] - ARROW_LENGTH_MM * Math.cos(angle), tip[1] - ARROW_LENGTH_MM * Math.sin(angle)];
  const side: Point = [-Math.sin(angle) * ARROW_HALF_MM, Math.cos(angle) * ARROW_HALF_MM];
  return rectArea('dimensions', 'arrow', [tip, [back[0] + side[0], back[1] + side[1]], [back[0] - side[0], back[1] - side[1]]]);
}

/** Between two x on the sheet, drawn at height `y`; extension lines reach from `fromY`. */
export function acrossDimension(x0: number, x1: number, y: number, fromY: number, words: string): readonly Mark[] {
  const away = Math.sign(y - fromY) || 1;
  const extension = (x: number): Mark =>
    line('dimensions', 'dimension', [
      [x, fromY + away * GAP_MM],
      [x, y + away * PAST_MM],
    ]);
  return [
    extension(x0),
    extension(x1),
    ...spanned([x0, y], [x1, y]),
    textMark('dimensions', 'dimension', [(x0 + x1) / 2, y], words, { anchor: 'middle', backed: true }),
  ];
}

/** Between two y on the sheet, drawn at `x`, read from the right. */
export function uprightDimension(y0: number, y1: number, x: number, fromX: number, words: string): readonly Mark[] {
  const away = Math.sign(x - fromX) || 1;
  const extension = (y: number): Mark =>
    line('dimensions', 'dimension', [
      [fromX + away * GAP_MM, y],
      [x + away * PAST_MM, y],
    ]);
  return [
    extension(y0),
    extension(y1),
    ...spanned([x, y0], [x, y1]),
    textMark('dimensions', 'dimension', [x, (y0 + y1) / 2], words, { anchor: 'middle', backed: true, upright: true }),
  ];
}

function spanned(a: Point, b: Point): readonly Mark[] {
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const far = Math.hypot(b[0] - a[0], b[1] - a[1]) > 3 * ARROW_LENGTH_MM;
  return [
    line('dimensions', 'dimension', [a, b]),
    ...(far ? [arrowHead(b, angle), arrowHead(a, angle + Math.PI)] : [tick(a), tick(b)]),
  ];
}

/** Too short for arrows: an oblique stroke. */
const tick = ([x, y]: Point): Mark =>
  line('dimensions', 'axis', [
    [x - 0.7, y + 0.7],
    [x + 0.7, y - 0.7],
  ]);
