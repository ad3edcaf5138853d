import type { Medium } from '../../records/index.js';
import { textBox } from '../ink.js';
import { MEDIUM_STYLES } from '../media.js';
import { growRect, overlaps, type Point, type Rect, type TextMark, textMark } from '../scene.js';
import { NODE_SYMBOL_MM } from '../symbols.js';

/** Between two letters, mm. */
const APART_MM = 0.4;

/** The letters of the media in their lines: none on another. */
export class RunLetters {
  private readonly taken: Rect[];

  /** @param symbols where the symbols of nodes stand: no letter on them. */
  constructor(symbols: readonly Point[] = []) {
    this.taken = symbols.map(([x, y]) => growRect({ x0: x, y0: y, x1: x, y1: y }, NODE_SYMBOL_MM));
  }

  /** A medium's letter at the first of the places where no other stands, or none. */
  at(medium: Medium, places: readonly Point[]): readonly TextMark[] {
    for (const place of places) {
      const mark = textMark('runs', 'letter', place, MEDIUM_STYLES[medium].letter, { anchor: 'middle', backed: true });
      const box = textBox(mark);
      if (this.taken.some((other) => overlaps(box, other, APART_MM))) continue;
      this.taken.push(box);
      return [mark];
    }
    return [];
  }
}
