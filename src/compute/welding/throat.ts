import type { Weld } from '../../records/index.js';

/**
 * Effective throat of a weld, mm: of a fillet of equal legs leg / √2 (geometry; AWS D1.2, Eurocode 9); of a groove the depth on
 * record, in which no root is counted that was not welded. A flare, a plug and a seam have none that its size alone gives.
 */
export function effectiveThroatMm({ type, sizeMm }: Pick<Weld, 'type' | 'sizeMm'>): number | undefined {
  switch (type) {
    case 'fillet':
      return sizeMm / Math.SQRT2;
    case 'square groove':
    case 'bevel groove':
    case 'V groove':
      return sizeMm;
    default:
      return undefined;
  }
}
