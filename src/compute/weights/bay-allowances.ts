import { type Constraint, solve } from 'yalps';
import type { Bay } from '../../model/shell.js';
import { type AxleModel, influenceAt } from './axle-reactions.js';
import { type Ends, fillUntilEnd, NO_ENDS } from './bay-ends.js';
import type { AxleRating, BayAllowance } from './types.js';

/** One limit that loading must keep: what is left of it, and what one kilogram in each bay takes of that. */
export interface BayLimit {
  readonly name: string;
  readonly slackKg: number;
  readonly perKg: readonly number[];
}

/** Every limit that bays must keep, from the loads that the axles already carry. */
export function bayLimits(
  bays: readonly Bay[],
  carriage: AxleModel,
  axlesKg: readonly number[],
  totalKg: number,
  ratings: readonly AxleRating[],
  gvwrKg: number | undefined,
): readonly BayLimit[] {
  const influences = bays.map((bay) => influenceAt(carriage, bay.at[0]));
  const axles = carriage.axles.flatMap((axle, i): BayLimit[] => {
    const perKg = influences.map((row) => row[i] as number);
    const loadKg = axlesKg[i] as number;
    const { limitKg, limitedBy } = ratings[i] as AxleRating;
    const lifting = { name: `${axle.id} would lift off`, slackKg: loadKg, perKg: perKg.map((each) => -each) };
    return limitKg === undefined
      ? [lifting]
      : [{ name: `${axle.id} ${WORDS[limitedBy ?? 'gawr']}`, slackKg: limitKg - loadKg, perKg }, lifting];
  });
  const gross = gvwrKg === undefined ? [] : [{ name: 'GVWR', slackKg: gvwrKg - totalKg, perKg: bays.map(() => 1) }];
  const own = bays.flatMap((bay, b): BayLimit[] =>
    bay.limitKg === undefined
      ? []
      : [{ name: 'its stated limit', slackKg: bay.limitKg, perKg: bays.map((_, i) => (i === b ? 1 : 0)) }],
  );
  return [...axles, ...gross, ...own];
}

const WORDS = { gawr: 'GAWR', tyres: 'tyres', wheels: 'wheels', suspension: 'suspension' } as const;

/** The most that each bay may take, alone and all together, with every limit and every end of an axle kept. */
export function bayAllowances(bays: readonly Bay[], limits: readonly BayLimit[], ends: Ends = NO_ENDS): readonly BayAllowance[] {
  const alone = bays.map((_, b) => aloneIn(b, bays.length, limits, ends));
  const together = togetherIn(alone, limits, ends);
  return bays.map((bay, b) => ({
    id: bay.id,
    ...(bay.limitKg === undefined ? {} : { statedKg: bay.limitKg }),
    allowanceKg: alone[b]?.kg as number,
    limitedBy: alone[b]?.by as string,
    togetherKg: together[b] as number,
  }));
}

interface Alone {
  readonly kg: number;
  readonly by: string;
}

/** One bay with the others empty: the least of slack ÷ influence. Nothing may be added over a limit that is already passed. */
function aloneIn(bay: number, count: number, limits: readonly BayLimit[], ends: Ends): Alone {
  const empty = Array.from({ length: count }, () => 0);
  const passed = limits.find((limit) => limit.slackKg < 0) ?? ends.limits.find((end) => end.roomKg(empty) < -1e-6);
  if (passed) return { kg: 0, by: `${passed.name}, already over` };
  let least: Alone = { kg: Number.POSITIVE_INFINITY, by: 'no rating on record' };
  for (const { name, slackKg, perKg } of limits) {
    const each = perKg[bay] as number;
    if (each > 1e-12 && slackKg / each < least.kg) least = { kg: slackKg / each, by: name };
  }
  if (!Number.isFinite(least.kg)) return { kg: 0, by: least.by };
  const { part, by } = fillUntilEnd(
    ends,
    empty.map((_, i) => (i === bay ? least.kg : 0)),
  );
  return by === undefined ? least : { kg: least.kg * part, by };
}

const MOST_ROUNDS = 12;
const SETTLED_KG = 0.01;

/**
 * All bays for the greatest total: a linear programme, max Σ m with A m ≤ slack and 0 ≤ m ≤ what each bay may take alone, so that
 * no bay counts on another to hold the vehicle level. The ends of axles are rows of it about the last answer, until that settles; what
 * they are still over by then is taken off every bay alike.
 */
function togetherIn(alone: readonly Alone[], limits: readonly BayLimit[], ends: Ends): readonly number[] {
  let inBays: readonly number[] = alone.map(() => 0);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const from = inBays;
    inBays = greatest(alone, [...limits, ...ends.limits.map((end) => end.near(from))]);
    if (ends.limits.length === 0 || inBays.every((kg, b) => Math.abs(kg - (from[b] as number)) < SETTLED_KG)) break;
  }
  const { part } = fillUntilEnd(ends, inBays);
  return inBays.map((kg) => kg * part);
}

function greatest(alone: readonly Alone[], limits: readonly BayLimit[]): readonly number[] {
  const constraints: [string, Constraint][] = [];
  const columns = alone.map(() => new Map<string, number>([['total', 1]]));
  limits.forEach(({ slackKg, perKg }, i) => {
    constraints.push([`limit ${i}`, { max: slackKg }]);
    perKg.forEach((each, b) => {
      columns[b]?.set(`limit ${i}`, each);
    });
  });
  alone.forEach(({ kg }, b) => {
    constraints.push([`bay ${b}`, { max: kg }]);
    columns[b]?.set(`bay ${b}`, 1);
  });
  const variables = columns.map((column, b): [number, Map<string, number>] => [b, column]);
  const found = solve({ direction: 'maximize', objective: 'total', constraints, variables });
  const kg = new Map(found.status === 'optimal' ? found.variables : []);
  return alone.map((_, b) => Math.max(0, kg.get(b) ?? 0));
}
