import type { Rect } from './scene.js';

const CELL_MM = 12;

/** Boxes on a sheet, by the squares that they lie in: a sheet has hundreds, and a label looks at those about it. */
export class Boxes {
  private readonly cells = new Map<number, Rect[]>();

  constructor(boxes: Iterable<Rect> = []) {
    for (const box of boxes) this.add(box);
  }

  add(box: Rect): void {
    this.visit(box, (cell) => {
      const there = this.cells.get(cell);
      if (there) there.push(box);
      else this.cells.set(cell, [box]);
      return false;
    });
  }

  /** Whether any box that may come within `airMm` of the place is such; one may be asked about more than once. */
  near(place: Rect, airMm: number, such: (box: Rect) => boolean): boolean {
    const { x0, y0, x1, y1 } = place;
    return this.visit({ x0: x0 - airMm, y0: y0 - airMm, x1: x1 + airMm, y1: y1 + airMm }, (cell) => {
      const there = this.cells.get(cell);
      return there?.some(such) ?? false;
    });
  }

  private visit(box: Rect, act: (cell: number) => boolean): boolean {
    const [c0, c1, r0, r1] = [box.x0, box.x1, box.y0, box.y1].map((mm) => Math.floor(mm / CELL_MM)) as [
      number,
      number,
      number,
      number,
    ];
    for (let row = r0; row <= r1; row++) for (let column = c0; column <= c1; column++) if (act(row * 65536 + column)) return true;
    return false;
  }
}
