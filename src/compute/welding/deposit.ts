import type { Weld } from '../../records/index.js';
import { withoutFiller } from './process.js';

/** Density of fillers, kg/m³: Aluminum Association nominal densities. */
const FILLER_KG_M3: Readonly<Record<string, number>> = { '4043': 2690, '5183': 2660, '5356': 2640, '5554': 2690, '5556': 2660 };
/** Steel wire and rod (ER70S …): structural steel, EN 1993-1-1, unverified citation. */
const STEEL_KG_M3 = 7850;
const OTHER_KG_M3 = 2660;

/** Density of a filler by the number in its name (`ER5356`). */
export function fillerDensityKgM3(filler = ''): number {
  const number = /\d{4}/u.exec(filler)?.[0] ?? '';
  if (Object.hasOwn(FILLER_KG_M3, number)) return FILLER_KG_M3[number] as number;
  return /^ER?(?:70|80|90|110|308|309|316)/iu.test(filler) ? STEEL_KG_M3 : OTHER_KG_M3;
}

/** Root opening of groove welds. Project default. */
const ROOT_GAP_MM = 1;
const sides = (weld: Weld): number => (weld.sides === 'both' ? 2 : 1);

/** Length laid at each joint: a weld on both sides is laid twice, mm. */
export const laidLengthMm = (weld: Weld): number => weld.lengthMm * sides(weld);

/**
 * Volume laid at one joint, mm³, flat faces, no cap: fillet leg² / 2; square groove depth × root gap; bevel groove of 45° and
 * V groove of 60° over their depth, with the gap; flare depth² / 2; plug the cylinder of its diameter through the thinner part.
 * A seam (resistance) lays nothing. Source: geometry; angles and gap are project defaults.
 */
function depositMm3(weld: Weld, thinnerMm: number | undefined): number {
  const size = weld.sizeMm;
  const along = laidLengthMm(weld);
  switch (weld.type) {
    case 'fillet':
    case 'flare':
      return (size ** 2 / 2) * along;
    case 'square groove':
      return size * ROOT_GAP_MM * along;
    case 'bevel groove':
      return (size ** 2 / 2 + size * ROOT_GAP_MM) * along;
    case 'V groove':
      return (size ** 2 * Math.tan(Math.PI / 6) + size * ROOT_GAP_MM) * along;
    case 'plug':
      return (Math.PI / 4) * size ** 2 * (thinnerMm ?? 0) * sides(weld);
    case 'seam':
      return 0;
  }
}

/** Filler laid at one joint, kg. */
export function depositKg(weld: Weld, thinnerMm: number | undefined): number {
  return withoutFiller(weld.process) ? 0 : depositMm3(weld, thinnerMm) * 1e-9 * fillerDensityKgM3(weld.filler);
}
