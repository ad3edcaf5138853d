import { LEAST_STEER_SHARE, steers } from '../../compute/weights/conditions.js';
import type { Weights } from '../../compute/weights/types.js';
import type { Axle } from '../../records/index.js';
import type { Station } from './types.js';

const TRIAL_KG = 100;
/** Less than this, of 100 kg, is not called a load on an axle: it is what is left of rounding. */
const LEAST_KG = 0.01;

const standardOf = ({ conditions }: Weights) => conditions.filter((one) => one.kind === 'standard');

/** What the whole may still gain, kg: the least GVWR margin of the standard conditions, or of everything full if that is less. */
export function leftOfGvwr(weights: Weights): number | undefined {
  const standard = standardOf(weights);
  const margins = standard.map((one) => one.gvwrMarginKg);
  if (margins.length === 0 || margins.includes(undefined)) return undefined;
  const full = standard.map((one) => (one.gvwrMarginKg as number) + one.totalKg - (weights.fullKg ?? one.totalKg));
  return Math.min(...(margins as number[]), ...full);
}

/**
 * The influence lines with what each station may take alone: every axle and its fuller end keep their reserve and stay on the road, the whole keeps its
 * GVWR, and the steered axles keep a fifth of it in every standard condition.
 * Worked: 300 kg left on an axle of which 100 kg at the station adds 60 kg: 500 kg.
 */
export function stations(weights: Weights, axles: readonly Axle[]): readonly Station[] {
  const whole = leftOfGvwr(weights);
  const left = axles.map(({ id }) => weights.budget.find((one) => one.axle === id)?.leftKg);
  return weights.influence.map(({ xMm, addsKg }): Station => {
    if (whole === undefined || left.includes(undefined)) return { xMm, addsKg };
    const perKg = axles.map(({ id }) => (addsKg[id] ?? 0) / TRIAL_KG);
    const limits: readonly (readonly [kg: number, by: string])[] = [
      [whole, 'GVWR'],
      ...axles.flatMap(({ id }, i): readonly (readonly [number, string])[] => {
        const each = perKg[i] as number;
        // On the centre line a load goes half to each end: the fuller end counts where it has less than half of what is left.
        if (each * TRIAL_KG > LEAST_KG) return [[(left[i] as number) / each, id], ...endOf(weights, id, each)];
        return each * TRIAL_KG < -LEAST_KG ? [[leastLoad(weights, id, i) / -each, `${id} lifts`]] : [];
      }),
      ...(weights.liftedMargins ?? []).flatMap(({ name, leftKg, perKg: a, perKgMm }): readonly (readonly [number, string])[] => {
        const each = a + perKgMm * xMm;
        return each * TRIAL_KG > LEAST_KG ? [[leftKg / each, name]] : [];
      }),
      ...steerLimit(weights, axles, perKg),
    ];
    const [mostKg, limitedBy] = limits.reduce((least, one) => (one[0] < least[0] ? one : least));
    return { xMm, addsKg, mostKg: Math.max(0, mostKg), limitedBy };
  });
}

function endOf(weights: Weights, axle: string, each: number): readonly (readonly [number, string])[] {
  const { leftEndKg, rightEndKg } = weights.budget.find((one) => one.axle === axle) ?? {};
  if (leftEndKg === undefined || rightEndKg === undefined) return [];
  const [kg, side] = leftEndKg < rightEndKg ? [leftEndKg, 'left'] : [rightEndKg, 'right'];
  return [[(2 * kg) / each, `${axle}, ${side} end`]];
}

const leastLoad = (weights: Weights, id: string, at: number): number =>
  weights.leastKg?.[id] ?? Math.min(...standardOf(weights).map((one) => one.axles[at]?.loadKg ?? 0));

/** From steered + m·s = 0.2·(total + m), the condition that allows least; nothing where the mass adds to the share. */
function steerLimit(weights: Weights, axles: readonly Axle[], perKg: readonly number[]): readonly (readonly [number, string])[] {
  const steered = steers(axles);
  const share = perKg.reduce((sum, each, i) => sum + (steered[i] ? each : 0), 0);
  if (share >= LEAST_STEER_SHARE) return [];
  const spare = standardOf(weights).map(({ steerShare = 0, totalKg }) => (steerShare - LEAST_STEER_SHARE) * totalKg);
  return [[Math.min(...spare) / (LEAST_STEER_SHARE - share), 'steer share']];
}
