import type { Axle, Bay } from '../../model/shell.js';
import { type AxleModel, influenceAt } from './axle-reactions.js';
import type { BayLimit } from './bay-allowances.js';
import { carrying, solveAxleLoads, totalOf, type VehicleLoad } from './burden.js';
import { loadAt, sumOf } from './load.js';
import type { AxleRating } from './types.js';

/**
 * What an end of an axle may take of the bays. The moment to a side is shared between axles by their vertical load, which the bays
 * change as well: an end's load is no linear function of them, but along one line of filling its room × total mass is a quadratic.
 */
export interface EndLimit {
  readonly name: string;
  /** What is left at this end with these masses in the bays, kg; negative where it is over. */
  roomKg(inBays: readonly number[]): number;
  /** The limit as a row of a linear programme, with the axle's share of the moment held as it is with these masses in the bays. */
  near(inBays: readonly number[]): BayLimit;
}

export interface Ends {
  readonly limits: readonly EndLimit[];
  /** Mass of the whole vehicle with these masses in the bays, kg. */
  totalKg(inBays: readonly number[]): number;
}

export const NO_ENDS: Ends = { limits: [], totalKg: () => 1 };

/** Ends of every axle whose rating and track are on record; each may carry half of the axle's limit. */
export function endLimits(
  bays: readonly Bay[],
  carriage: AxleModel,
  burden: VehicleLoad,
  axles: readonly Axle[],
  ratings: readonly AxleRating[],
): Ends {
  const filled = (inBays: readonly number[]): VehicleLoad =>
    carrying(burden, sumOf(inBays.map((kg, b) => loadAt(kg, (bays[b] as Bay).at))));
  const influences = bays.map((bay) => influenceAt(carriage, bay.at[0]));
  const limits = axles.flatMap((axle, i): EndLimit[] => {
    const limitKg = ratings[i]?.limitKg;
    const { trackMm } = axle;
    if (limitKg === undefined || trackMm === undefined || trackMm <= 0) return [];
    return (['left', 'right'] as const).map((side): EndLimit => {
      const name = `${side} end of ${axle.id}`;
      const roomKg = (inBays: readonly number[]): number =>
        limitKg / 2 - (solveAxleLoads(filled(inBays), axles, carriage)[side === 'left' ? 'leftKg' : 'rightKg'][i] as number);
      const near = (inBays: readonly number[]): BayLimit => {
        const { axlesKg, total } = solveAxleLoads(filled(inBays), axles, carriage);
        const held = (axlesKg[i] as number) / (total.massKg || 1) / trackMm;
        const outward = side === 'left' ? -1 : 1;
        const perKg = bays.map((bay, b) => (influences[b]?.[i] as number) / 2 + outward * held * bay.at[1]);
        // Through the point itself, so that there the row says exactly what the end has left.
        return { name, slackKg: roomKg(inBays) + perKg.reduce((sum, each, b) => sum + each * (inBays[b] as number), 0), perKg };
      };
      return { name, roomKg, near };
    });
  });
  return { limits, totalKg: (inBays) => totalOf(filled(inBays), axles).massKg };
}

/** How far the bays may be filled along one line, 0 to 1, before an end is over, and which end that is. */
export function fillUntilEnd(ends: Ends, inBays: readonly number[]): { readonly part: number; readonly by?: string } {
  let least: { part: number; by?: string } = { part: 1 };
  const at = (part: number): readonly number[] => inBays.map((kg) => kg * part);
  for (const end of ends.limits) {
    const value = (part: number): number => end.roomKg(at(part)) * ends.totalKg(at(part));
    const part = firstZero(value(0), value(0.5), value(1));
    if (part < least.part) least = { part, by: end.name };
  }
  return least;
}

/** Where the quadratic through values at 0, ½ and 1 first falls below zero; 1 where it does not before. */
function firstZero(atStart: number, atHalf: number, atEnd: number): number {
  if (atStart < 0) return 0;
  const a = 2 * (atStart - 2 * atHalf + atEnd);
  const b = atEnd - atStart - a;
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * atStart));
  // The form that does not lose digits where a is small.
  const q = -(b + (b < 0 ? -root : root)) / 2;
  const zeros = [q / a, atStart / q].filter((zero) => Number.isFinite(zero) && zero >= 0 && zero < 1);
  if (b * b - 4 * a * atStart < 0) return 1;
  // A zero that is only touched on the way up from a start at zero does not stop the filling.
  const falling = zeros.filter((zero) => 2 * a * zero + b < 0).sort((x, y) => x - y);
  return falling[0] ?? 1;
}
