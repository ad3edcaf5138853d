import { crossesRect } from './outline.js';
import { overlaps, type Point, type Rect } from './scene.js';

const CELL_MM = 8;
/** More squares than any sheet has in a row; a square left of the sheet or above it has a number below zero. */
const ROW = 65536;

const cellOf = (mm: number): number => Math.floor(mm / CELL_MM);

/** Boxes on a sheet, by the squares that they lie in: a sheet has hundreds, and a label looks at those about it. */
export class Boxes {
  private readonly cells = new Map<number, Rect[]>();
  /** Squares about all boxes: a line from a place far off the sheet is followed on the sheet only. */
  private readonly used = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };

  constructor(boxes: Iterable<Rect> = []) {
    for (const box of boxes) this.add(box);
  }

  add(box: Rect): void {
    this.used.left = Math.min(this.used.left, cellOf(box.x0));
    this.used.right = Math.max(this.used.right, cellOf(box.x1));
    this.used.top = Math.min(this.used.top, cellOf(box.y0));
    this.used.bottom = Math.max(this.used.bottom, cellOf(box.y1));
    for (let row = cellOf(box.y0); row <= cellOf(box.y1); row++) {
      for (let column = cellOf(box.x0); column <= cellOf(box.x1); column++) {
        const there = this.cells.get(row * ROW + column);
        if (there) there.push(box);
        else this.cells.set(row * ROW + column, [box]);
      }
    }
  }

  /** Whether any box comes within `airMm` of the place. */
  overlap(place: Rect, airMm: number): boolean {
    const [left, right] = [cellOf(place.x0 - airMm), cellOf(place.x1 + airMm)];
    for (let row = cellOf(place.y0 - airMm), last = cellOf(place.y1 + airMm); row <= last; row++) {
      for (let column = left; column <= right; column++) {
        const there = this.cells.get(row * ROW + column);
        if (there) for (const box of there) if (overlaps(place, box, airMm)) return true;
      }
    }
    return false;
  }

  /** Whether a line from one place to another runs over any box. */
  underLine(a: Point, b: Point): boolean {
    const left = Math.max(cellOf(Math.min(a[0], b[0])), this.used.left);
    const right = Math.min(cellOf(Math.max(a[0], b[0])), this.used.right);
    const last = Math.min(cellOf(Math.max(a[1], b[1])), this.used.bottom);
    for (let row = Math.max(cellOf(Math.min(a[1], b[1])), this.used.top); row <= last; row++) {
      for (let column = left; column <= right; column++) {
        const there = this.cells.get(row * ROW + column);
        if (there) for (const box of there) if (crossesRect(a, b, box)) return true;
      }
    }
    return false;
  }
}
