import { awgAreaMm2 } from '../conductors.js';
import type { Wire } from './wire.js';

/**
 * What a copper conductor may carry, A, in the 60, 75 and 90 °C columns: NEC Table 310.16, at most three conductors together,
 * 30 °C around them. 18 and 16 AWG: NEC Table 551.10(E)(1), unverified citation, in every column.
 */
const COPPER_A: readonly (readonly [awg: string, a60: number, a75: number, a90: number])[] = [
  ['18', 6, 6, 6],
  ['16', 8, 8, 8],
  ['14', 15, 20, 25],
  ['12', 20, 25, 30],
  ['10', 30, 35, 40],
  ['8', 40, 50, 55],
  ['6', 55, 65, 75],
  ['4', 70, 85, 95],
  ['3', 85, 100, 115],
  ['2', 95, 115, 130],
  ['1', 110, 130, 145],
  ['1/0', 125, 150, 170],
  ['2/0', 145, 175, 195],
  ['3/0', 165, 200, 225],
  ['4/0', 195, 230, 260],
];

/** Largest fuse or breaker on a small copper conductor, A: NEC 240.4(D) and Table 551.10(E)(1), unverified citation. */
const SMALL_CONDUCTOR_A: Readonly<Record<string, number>> = {
  '18': 6,
  '16': 8,
  '14': 15,
  '12': 20,
  '10': 30,
};

/** Standard ratings of fuses and breakers, A: NEC 240.6(A). */
const STANDARD_A = [
  15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400,
] as const;

type Column = 60 | 75 | 90;

/** Air around the wires for which the table holds, °C. */
export const TABLE_AMBIENT_C = 30;

/** The column that an insulation's rating may use; unrated wire uses the lowest, and nothing goes above 90. */
export function column(ratingC: number | undefined): Column {
  if (ratingC === undefined || ratingC < 75) return 60;
  return ratingC < 90 ? 75 : 90;
}

const at = (row: readonly [unknown, number, number, number], of: Column): number => row[of === 60 ? 1 : of === 75 ? 2 : 3];

/**
 * Correction for the air around: √((Tc − Ta′) ÷ (Tc − Ta)), Tc the column, Ta 30 °C. NEC 310.15(B), whose table prints it to
 * two digits at the top of each step of 5 °C. Zero where the air is as hot as the wire may be.
 */
export const ambientFactor = (ambientC: number, of: Column): number =>
  ambientC >= of ? 0 : Math.sqrt((of - ambientC) / (of - TABLE_AMBIENT_C));

/** Adjustment for current-carrying conductors lying together over more than 24 in: NEC Table 310.15(C)(1). */
export function bundleFactor(conductors: number): number {
  if (conductors <= 3) return 1;
  if (conductors <= 6) return 0.8;
  if (conductors <= 9) return 0.7;
  if (conductors <= 20) return 0.5;
  if (conductors <= 30) return 0.45;
  return conductors <= 40 ? 0.4 : 0.35;
}

/** The table's row for an area: that of the largest gauge with no more metal, so that metric sizes err to the safe side. */
function rowOf({ areaMm2 }: Wire): (typeof COPPER_A)[number] | undefined {
  let found: (typeof COPPER_A)[number] | undefined;
  // Half a per cent: areas typed with two digits, as 2.08 mm² for 14 AWG.
  for (const row of COPPER_A) if ((awgAreaMm2(row[0]) as number) <= areaMm2 * 1.005) found = row;
  return found;
}

/** Ampacity alone in 30 °C air, A. Undefined for aluminium (no table was read) and below 18 AWG, unless the library rates the wire. */
export function ampacityA(wire: Wire): number | undefined {
  if (wire.ratedA !== undefined) return wire.ratedA;
  const row = wire.material === 'copper' ? rowOf(wire) : undefined;
  return row && at(row, column(wire.ratingC));
}

/** The most that a wire may carry for the sake of the terminals at its ends, A: their column of the table. Infinite where nothing is known of them. */
export function terminalLimitA(wire: Wire, terminalC: number | undefined): number {
  const row = terminalC === undefined || wire.material !== 'copper' ? undefined : rowOf(wire);
  return row ? at(row, column(terminalC)) : Infinity;
}

/** The small-conductor limit of a wire, A; undefined for larger ones, and for wire that the library rates. */
export function smallConductorA(wire: Wire): number | undefined {
  const row = wire.material === 'copper' && wire.ratedA === undefined ? rowOf(wire) : undefined;
  return row && SMALL_CONDUCTOR_A[row[0]];
}

/** The next standard rating at or above an ampacity, which NEC 240.4(B) lets pass (unverified citation); the ampacity itself above the list. */
export const nextStandardA = (ampacity: number): number => STANDARD_A.find((rating) => rating >= ampacity) ?? ampacity;
