import { textBox } from './ink.js';
import { type Mark, type Point, type Rect, rectAbout } from './scene.js';
import { PENS } from './styles.js';

/** What a mark takes up on the sheet, its line width included. */
function markBounds(mark: Mark): Rect | undefined {
  if (mark.kind === 'text') return textBox(mark);
  const half = (mark.kind === 'shape' && mark.widthMm !== undefined ? mark.widthMm : PENS[mark.pen].widthMm) / 2;
  if (mark.kind === 'circle') {
    const r = mark.radiusMm + half;
    const [x, y] = mark.center;
    return { x0: x - r, y0: y - r, x1: x + r, y1: y + r };
  }
  const bare = rectAbout(mark.rings.flat());
  return bare && { x0: bare.x0 - half, y0: bare.y0 - half, x1: bare.x1 + half, y1: bare.y1 + half };
}

export function usedBounds(marks: readonly Mark[]): Rect | undefined {
  const corners = marks.flatMap((mark): readonly Point[] => {
    const rect = markBounds(mark);
    return rect
      ? [
          [rect.x0, rect.y0],
          [rect.x1, rect.y1],
        ]
      : [];
  });
  return rectAbout(corners);
}

/** The same marks, lower by `dy` mm. */
export function lowered(marks: readonly Mark[], dy: number): readonly Mark[] {
  const move = ([x, y]: Point): Point => [x, y + dy];
  return marks.map((mark): Mark => {
    if (mark.kind === 'text') return { ...mark, at: move(mark.at) };
    if (mark.kind === 'circle') return { ...mark, center: move(mark.center) };
    return { ...mark, rings: mark.rings.map((ring) => ring.map(move)) };
  });
}
