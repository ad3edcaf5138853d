import { crossesRect } from './outline.js';
import { growRect, type Mark, type Point, type Rect, rectAbout } from './scene.js';
import { keepsLabelsOff, PENS } from './styles.js';

const CELL_MM = 6;
/** More squares than any sheet has in a row. */
const ROW = 65536;
/** Circles count as so many straight pieces. */
const CIRCLE_PIECES = 12;

interface Piece {
  readonly from: Point;
  readonly to: Point;
  /** Half the width of the line, mm. */
  readonly halfMm: number;
}

const cellOf = (mm: number): number => Math.floor(mm / CELL_MM);

/** Lines that no label may lie on: outlines, hatches, areas of hazard, runs and symbols. */
export class KeptOff {
  private readonly cells = new Map<number, Piece[]>();

  /** @param within the sheet, mm: what lies off it stands in no label's way. */
  constructor(
    marks: readonly Mark[],
    private readonly within: Rect,
  ) {
    for (const mark of marks) for (const piece of piecesOf(mark)) this.add(piece);
  }

  private add(piece: Piece): void {
    const about = rectAbout([piece.from, piece.to]);
    if (!about) return;
    const box = growRect(about, piece.halfMm);
    const [left, right] = [Math.max(box.x0, this.within.x0), Math.min(box.x1, this.within.x1)];
    const [top, bottom] = [Math.max(box.y0, this.within.y0), Math.min(box.y1, this.within.y1)];
    for (let row = cellOf(top); row <= cellOf(bottom); row++) {
      for (let column = cellOf(left); column <= cellOf(right); column++) {
        const cell = { x0: column * CELL_MM, y0: row * CELL_MM, x1: (column + 1) * CELL_MM, y1: (row + 1) * CELL_MM };
        if (!crossesRect(piece.from, piece.to, growRect(cell, piece.halfMm))) continue;
        const there = this.cells.get(row * ROW + column);
        if (there) there.push(piece);
        else this.cells.set(row * ROW + column, [piece]);
      }
    }
  }

  /** Whether any of the lines, as wide as it is drawn, enters a rectangle of the sheet. */
  under(box: Rect): boolean {
    for (let row = cellOf(box.y0), last = cellOf(box.y1); row <= last; row++) {
      for (let column = cellOf(box.x0), right = cellOf(box.x1); column <= right; column++) {
        const there = this.cells.get(row * ROW + column);
        if (there?.some(({ from, to, halfMm }) => crossesRect(from, to, growRect(box, halfMm)))) return true;
      }
    }
    return false;
  }
}

/** Straight pieces of a mark that keeps labels off. */
function piecesOf(mark: Mark): readonly Piece[] {
  if (mark.kind === 'text' || !keepsLabelsOff(mark.pen)) return [];
  const halfMm = (mark.kind === 'shape' && mark.widthMm !== undefined ? mark.widthMm : PENS[mark.pen].widthMm) / 2;
  const rings = mark.kind === 'circle' ? [circleRing(mark.center, mark.radiusMm)] : mark.rings;
  const closed = mark.kind === 'circle' || mark.closed;
  return rings.flatMap((ring) =>
    ring.flatMap((from, at): readonly Piece[] => {
      const to = at + 1 < ring.length ? ring[at + 1] : closed ? ring[0] : undefined;
      return to ? [{ from, to, halfMm }] : [];
    }),
  );
}

const circleRing = ([x, y]: Point, radiusMm: number): readonly Point[] =>
  Array.from({ length: CIRCLE_PIECES }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / CIRCLE_PIECES;
    return [x + radiusMm * Math.cos(angle), y + radiusMm * Math.sin(angle)];
  });
