import type { Mark, Point, Rect } from './scene.js';
import type { Layer } from './styles.js';
import { textHeightMm, textWidthMm } from './text-width.js';

/** How much a label would spoil by lying on a mark of this layer. */
const WEIGHT: Partial<Readonly<Record<Layer, number>>> = {
  chassis: 0.3,
  structure: 0.5,
  panels: 0.3,
  hidden: 0.15,
  outlines: 0.6,
  equipment: 1,
  runs: 2.5,
  nodes: 5,
  dimensions: 4,
};

const CELL_MM = 1;

/** Longest line that is followed step by step: longer ones lead off the sheet. */
const MOST_STEPS = 4000;

/** Where on the sheet something is drawn already, in cells of one millimetre. */
export class Ink {
  private readonly columns: number;
  private readonly rows: number;
  private readonly cells: Float32Array;

  constructor(widthMm: number, heightMm: number, marks: readonly Mark[]) {
    this.columns = Math.max(1, Math.ceil(widthMm / CELL_MM));
    this.rows = Math.max(1, Math.ceil(heightMm / CELL_MM));
    this.cells = new Float32Array(this.columns * this.rows);
    for (const mark of marks) this.add(mark);
  }

  private add(mark: Mark): void {
    const weight = WEIGHT[mark.layer] ?? 0;
    if (weight === 0 || mark.kind === 'text') return;
    if (mark.kind === 'circle') {
      const [x, y] = mark.center;
      const r = mark.radiusMm;
      this.mark(x, y, weight);
      for (let k = 0; k < 16 && r > CELL_MM; k++) {
        const angle = (k * Math.PI) / 8;
        this.mark(x + r * Math.cos(angle), y + r * Math.sin(angle), weight);
      }
      return;
    }
    for (const ring of mark.rings) {
      const count = mark.closed ? ring.length : ring.length - 1;
      for (let i = 0; i < count; i++) this.addSegment(ring[i] as Point, ring[(i + 1) % ring.length] as Point, weight);
    }
  }

  private addSegment(a: Point, b: Point, weight: number): void {
    const steps = Math.min(MOST_STEPS, Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / (CELL_MM * 0.7))));
    for (let k = 0; k <= steps; k++) this.mark(a[0] + ((b[0] - a[0]) * k) / steps, a[1] + ((b[1] - a[1]) * k) / steps, weight);
  }

  private index(x: number, y: number): number {
    return this.row(y) * this.columns + this.column(x);
  }

  private at(x: number, y: number): number {
    return this.cells[this.index(x, y)] as number;
  }

  private mark(x: number, y: number, weight: number): void {
    const index = this.index(x, y);
    this.cells[index] = Math.max(this.cells[index] as number, weight);
  }

  /** Sum over the cells along a line. */
  along(a: Point, b: Point): number {
    const steps = Math.min(MOST_STEPS, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / CELL_MM));
    let sum = 0;
    for (let k = 1; k <= steps; k++) sum += this.at(a[0] + ((b[0] - a[0]) * k) / steps, a[1] + ((b[1] - a[1]) * k) / steps);
    return sum;
  }

  /** Sum over the cells under a rectangle. */
  under({ x0, y0, x1, y1 }: Rect): number {
    let sum = 0;
    for (let y = y0; y < y1 + CELL_MM; y += CELL_MM) {
      const row = this.row(Math.min(y, y1)) * this.columns;
      for (let x = x0; x < x1 + CELL_MM; x += CELL_MM) sum += this.cells[row + this.column(Math.min(x, x1))] as number;
    }
    return sum;
  }

  private row(y: number): number {
    return Math.min(this.rows - 1, Math.max(0, Math.floor(y / CELL_MM)));
  }

  private column(x: number): number {
    return Math.min(this.columns - 1, Math.max(0, Math.floor(x / CELL_MM)));
  }
}

/** The rectangle that a text mark takes up. */
export function textBox(mark: Extract<Mark, { kind: 'text' }>): Rect {
  const width = textWidthMm(mark.text, mark.style);
  const height = textHeightMm(mark.style);
  const share = mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? 0.5 : 1;
  const [x, y] = mark.at;
  if (mark.upright) return { x0: x - height / 2, y0: y - width * (1 - share), x1: x + height / 2, y1: y + width * share };
  return { x0: x - width * share, y0: y - height / 2, x1: x + width * (1 - share), y1: y + height / 2 };
}
