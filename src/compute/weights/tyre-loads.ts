import type { Axle, Tyres } from '../../records/index.js';

/**
 * Load index to the load of one tyre at its reference pressure, kg, from 60 to 180.
 * Source: ISO 4223-1 and UNECE R54 Annex 4 (load index table).
 */
const FIRST_INDEX = 60;
const INDEX_KG: readonly number[] = [
  250, 257, 265, 272, 280, 290, 300, 307, 315, 325, 335, 345, 355, 365, 375, 387, 400, 412, 425, 437, 450, 462, 475, 487, 500,
  515, 530, 545, 560, 580, 600, 615, 630, 650, 670, 690, 710, 730, 750, 775, 800, 825, 850, 875, 900, 925, 950, 975, 1000, 1030,
  1060, 1090, 1120, 1150, 1180, 1215, 1250, 1285, 1320, 1360, 1400, 1450, 1500, 1550, 1600, 1650, 1700, 1750, 1800, 1850, 1900,
  1950, 2000, 2060, 2120, 2180, 2240, 2300, 2360, 2430, 2500, 2575, 2650, 2725, 2800, 2900, 3000, 3075, 3150, 3250, 3350, 3450,
  3550, 3650, 3750, 3875, 4000, 4125, 4250, 4375, 4500, 4625, 4750, 4875, 5000, 5150, 5300, 5450, 5600, 5800, 6000, 6150, 6300,
  6500, 6700, 6900, 7100, 7300, 7500, 7750, 8000,
];

/** Load of one tyre of that load index, kg; nothing outside 60 to 180. */
export const loadOfIndex = (index: number): number | undefined => INDEX_KG[index - FIRST_INDEX];

/** Exponent of the pressure law. ETRTO and ISO use 0.8; a smaller one would promise more below the reference pressure. */
const PRESSURE_EXPONENT = 0.8;

/**
 * L = Lref (P / Pref)ⁿ, never above Lref: air beyond the reference pressure buys no load.
 * Worked: load index 152 (3550 kg) at 0.9 of its reference pressure carries 3263.0 kg.
 */
export const loadAtPressure = (referenceKg: number, inflationPa: number, referencePa: number): number =>
  referenceKg * Math.min(1, Math.max(0, inflationPa / referencePa) ** PRESSURE_EXPONENT);

/** Load of one tyre as fitted, kg: the lesser of its single and dual figures on a dual axle, at its recorded pressure. */
export function tyreLoad(tyres: Tyres, dual: boolean): number | undefined {
  const [single, paired] = tyres.loadIndex.map(loadOfIndex);
  if (single === undefined) return undefined;
  if (dual && tyres.loadIndex.length > 1 && paired === undefined) return undefined;
  const atReference = dual ? Math.min(single, paired ?? single) : single;
  const { inflationPa, inflationForIndexPa } = tyres;
  if (inflationPa === undefined || inflationForIndexPa === undefined) return atReference;
  return loadAtPressure(atReference, inflationPa, inflationForIndexPa);
}

/** Four tyres or more on an axle stand in duals, whether the record says so or not. */
export const hasDuals = (axle: Axle): boolean => axle.dual || (axle.tyres?.count ?? 0) >= 4;

/** What all tyres of an axle carry together, kg. */
export function axleTyresKg(axle: Axle): number | undefined {
  const each = axle.tyres && tyreLoad(axle.tyres, hasDuals(axle));
  return each === undefined ? undefined : each * (axle.tyres as Tyres).count;
}
