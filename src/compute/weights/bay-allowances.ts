import { type Constraint, solve } from 'yalps';
import type { Model } from '../../model/shell.js';
import type { Bay } from '../../records/index.js';
import { type Load, loadAt, plus } from './load.js';
import type { Unladen } from './normalise.js';
import { type Gauge, gaugeOf, gauges, loadRangeOf, type SearchState } from './search-states.js';
import type { AxleRating, BayAllowance } from './types.js';
import { type SharedAs, solveAxleLoads } from './vehicle-load.js';

/** One limit that loading must keep: what is left of it, and what one kilogram in each bay takes of that; never less than nothing. */
export interface BayLimit {
  readonly name: string;
  readonly slackKg: number;
  readonly perKg: readonly number[];
}

/**
 * Every limit that bays must keep, whatever is in the tanks and on the seats, in each way that the vehicle may stand: what the worst level of
 * every tank and seat takes is off the slack already. A bay that relieves a limit counts as nothing there, so that it may be empty.
 */
export function bayLimits(
  model: Model,
  unladen: Unladen,
  states: readonly SearchState[],
  ratings: readonly AxleRating[],
): readonly BayLimit[] {
  const { axles, gvwrKg } = model.shell.chassis;
  const { bays } = model.shell;
  const { sharedAs } = unladen.vehicleLoad;
  if (!sharedAs) return [];
  const own = bays.flatMap((bay, b): BayLimit[] =>
    bay.limitKg === undefined
      ? []
      : [{ name: 'its stated limit', slackKg: bay.limitKg, perKg: bays.map((_, i) => (i === b ? 1 : 0)) }],
  );
  return [...states.flatMap((state) => stateLimits(model, unladen, sharedAs, state, ratings)), ...grossLimit(), ...own];

  function grossLimit(): readonly BayLimit[] {
    if (gvwrKg === undefined) return [];
    const { massKg } = solveAxleLoads(unladen.vehicleLoad, axles, undefined).total;
    const { most } = loadRangeOf(withoutBays(states[0]), (load) => load.massKg);
    return [{ name: 'GVWR', slackKg: gvwrKg - massKg - most, perKg: bays.map(() => 1) }];
  }
}

const withoutBays = (state: SearchState | undefined) => (state?.choices ?? []).filter((choice) => choice.kind !== 'bay');

function stateLimits(
  model: Model,
  unladen: Unladen,
  sharedAs: SharedAs,
  state: SearchState,
  ratings: readonly AxleRating[],
): readonly BayLimit[] {
  const { shell } = model;
  const { axles } = shell.chassis;
  const { axleModel, lifted, moved, words } = state;
  const base = solveAxleLoads({ ...unladen.vehicleLoad, placed: plus(unladen.vehicleLoad.placed, moved) }, axles, axleModel);
  const others = withoutBays(state);
  const one = shell.bays.map((bay) => oneKg(state, bay));
  const named = (name: string): string => (words === '' ? name : `${name}, ${words}`);
  return gauges(axles, lifted).flatMap((gauge): BayLimit[] => {
    const adds = gaugeOf(axleModel, sharedAs, gauge);
    const { most, least } = loadRangeOf(others, adds);
    const kg = shownKg(base, gauge);
    const perKg = one.map(adds);
    const lifts = {
      name: named(`${gauge.name} would lift off`),
      slackKg: kg + least,
      perKg: perKg.map((each) => Math.max(0, -each)),
    };
    const { limitKg, limitedBy } = ratings[gauge.axle] as AxleRating;
    const off = gauge.end === undefined ? [lifts] : [];
    if (limitKg === undefined) return off;
    const name = gauge.end === undefined ? `${gauge.name} ${WORDS[limitedBy ?? 'gawr']}` : gauge.name;
    const slackKg = (gauge.end === undefined ? limitKg : limitKg / 2) - kg - most;
    return [{ name: named(name), slackKg, perKg: perKg.map((each) => Math.max(0, each)) }, ...off];
  });
}

const WORDS = { gawr: 'GAWR', tyres: 'tires', wheels: 'wheels', suspension: 'suspension' } as const;

/** One kilogram in a bay, where the bay stands with the slide-outs as they are. */
function oneKg(state: SearchState, bay: Bay): Load {
  const full = state.choices.find((choice) => choice.kind === 'bay' && choice.name === bay.id)?.full;
  if (!full) return loadAt(1, bay.at);
  return {
    massKg: 1,
    xKgMm: full.xKgMm / full.massKg,
    yKgMm: full.yKgMm / full.massKg,
    zKgMm: full.zKgMm / full.massKg,
  };
}

const shownKg = ({ axlesKg, leftKg, rightKg }: ReturnType<typeof solveAxleLoads>, { axle, end }: Gauge): number =>
  (end === undefined ? axlesKg[axle] : end === 'left' ? leftKg[axle] : rightKg[axle]) ?? 0;

/**
 * The most that each bay may take: alone, and all together in any part of that, each bay by itself between empty and its figure. The second is a
 * linear programme, max Σ m with A m ≤ slack, A ≥ 0: what holds for all bays full then holds for any of them less full.
 */
export function bayAllowances(bays: readonly Bay[], limits: readonly BayLimit[]): readonly BayAllowance[] {
  const alone = bays.map((_, b) => aloneIn(b, limits));
  const together = togetherIn(alone, limits);
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

/** A limit passed by less than this is kept: floating-point dust of a limit that is just met. */
const DUST_KG = 1e-6;

/** One bay with the others empty: the least of slack ÷ influence. Nothing may be added over a limit that is already passed. */
function aloneIn(bay: number, limits: readonly BayLimit[]): Alone {
  const passed = limits.find((limit) => limit.slackKg < -DUST_KG);
  if (passed) return { kg: 0, by: `${passed.name}, already over` };
  let least: Alone = { kg: Number.POSITIVE_INFINITY, by: 'no rating on record' };
  for (const { name, slackKg, perKg } of limits) {
    const each = perKg[bay] as number;
    if (each > 1e-12 && Math.max(0, slackKg) / each < least.kg) least = { kg: Math.max(0, slackKg) / each, by: name };
  }
  return Number.isFinite(least.kg) ? least : { kg: 0, by: least.by };
}

function togetherIn(alone: readonly Alone[], limits: readonly BayLimit[]): readonly number[] {
  const constraints: [string, Constraint][] = [];
  const columns = alone.map(() => new Map<string, number>([['total', 1]]));
  limits.forEach(({ slackKg, perKg }, i) => {
    constraints.push([`limit ${i}`, { max: Math.max(0, slackKg) }]);
    perKg.forEach((each, b) => {
      if (each !== 0) columns[b]?.set(`limit ${i}`, each);
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
