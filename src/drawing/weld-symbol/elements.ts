import type { WeldType } from '../../records/index.js';
import { circle, line, type Mark, type Point } from '../scene.js';

/**
 * The basic symbols of ISO 2553 and AWS A2.4, which draw these types alike (unverified citation). Each stands on the reference line
 * at `base` (its left end there) and points away from the line by `side`: 1 down the sheet, −1 up.
 */

/** Height of a basic symbol off its line, mm: as high as the figures beside it. */
export const SYMBOL_MM = 2.8;

export type ArrowSide = 1 | -1;

const WIDTH_MM: Readonly<Record<WeldType, number>> = {
  fillet: SYMBOL_MM,
  'square groove': SYMBOL_MM * 0.5,
  'bevel groove': SYMBOL_MM,
  'V groove': SYMBOL_MM * 1.15,
  flare: SYMBOL_MM * 1.3,
  plug: SYMBOL_MM * 1.4,
  seam: SYMBOL_MM * 1.6,
};
export const symbolWidthMm = (type: WeldType): number => WIDTH_MM[type];

const stroke = (...points: readonly Point[]): Mark => line('labels', 'weld-symbol', points);

/** Marks of one basic symbol. A seam of a resistance process lies across its line (`centred`), as it has no side. */
export function basicSymbol(type: WeldType, [x, y]: Point, side: ArrowSide, centred = false): readonly Mark[] {
  const h = SYMBOL_MM;
  const w = WIDTH_MM[type];
  const at = (along: number, away: number): Point => [x + along, y + side * away];
  switch (type) {
    case 'fillet':
      // The upright leg stands to the left, whichever side it is on: AWS A2.4, unverified citation.
      return [stroke(at(0, 0), at(0, h), at(w, 0))];
    case 'square groove':
      return [stroke(at(0, 0), at(0, h)), stroke(at(w, 0), at(w, h))];
    case 'bevel groove':
      return [stroke(at(0, h), at(0, 0), at(w, h))];
    case 'V groove':
      return [stroke(at(0, h), at(w / 2, 0), at(w, h))];
    case 'flare': {
      const gap = w - h;
      const curve = Array.from({ length: 9 }, (_, k): Point => {
        const angle = (k * Math.PI) / 16;
        return at(gap + h * (1 - Math.cos(angle)), h * Math.sin(angle));
      });
      return [stroke(at(0, 0), at(0, h)), stroke(...curve)];
    }
    case 'plug':
      return [stroke(at(0, 0), at(0, h * 0.75), at(w, h * 0.75), at(w, 0))];
    case 'seam': {
      const r = h / 2;
      const middle = centred ? 0 : r;
      return [
        circle('labels', 'weld-symbol', at(w / 2, middle), r),
        stroke(at(0, middle - r * 0.35), at(w, middle - r * 0.35)),
        stroke(at(0, middle + r * 0.35), at(w, middle + r * 0.35)),
      ];
    }
  }
}
