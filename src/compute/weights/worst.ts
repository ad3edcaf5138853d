import { type Constraint, solve } from 'yalps';
import type { Model } from '../../model/shell.js';
import { plus } from './load.js';
import type { Loading } from './loadings.js';
import type { Unladen } from './normalise.js';
import { type Gauge, gaugeOf, type LoadChoice, loadedTo, type SearchState } from './search-states.js';
import { type SharedAs, totalOf } from './vehicle-load.js';

/** Levels nearer to full or empty than this are full or empty. */
const DUST = 1e-7;

/**
 * The levels of tanks, seats and bays that load one axle or one end of it most, within every stated limit and the GVWR: a linear programme,
 * max Σ a·level with 0 ≤ level ≤ 1 and Σ m·level ≤ what the GVWR leaves.
 */
export function worstLevels(choices: readonly LoadChoice[], adds: readonly number[], roomKg: number): readonly number[] {
  const constraints: [string, Constraint][] = choices.map((_, i) => [`level ${i}`, { max: 1 }]);
  if (Number.isFinite(roomKg)) constraints.push(['gvwr', { max: roomKg }]);
  const variables = choices.map(({ full }, i): [number, Map<string, number>] => [
    i,
    new Map([
      ['adds', adds[i] as number],
      [`level ${i}`, 1],
      ['gvwr', full.massKg],
    ]),
  ]);
  const found = solve({ direction: 'maximize', objective: 'adds', constraints, variables });
  const levels = new Map(found.status === 'optimal' ? found.variables : []);
  return choices.map((_, i) => {
    const level = levels.get(i) ?? 0;
    return level < DUST ? 0 : level > 1 - DUST ? 1 : level;
  });
}

/** The worst loading of one gauge with the vehicle standing in one way. */
export function worstLoading(model: Model, unladen: Unladen, sharedAs: SharedAs, state: SearchState, gauge: Gauge): Loading {
  const { axles, gvwrKg } = model.shell.chassis;
  const { choices, axleModel, lifted } = state;
  const add = gaugeOf(axleModel, sharedAs, gauge);
  // Of the whole mass what is already in the vehicle may be taken out again.
  const already = choices.reduce((sum, choice) => sum + choice.already * choice.full.massKg, 0);
  const roomKg = (gvwrKg ?? Number.POSITIVE_INFINITY) - totalOf(unladen.vehicleLoad, axles).massKg + already;
  const adds = choices.map(({ full }) => add(full));
  const levels = roomKg >= 0 ? worstLevels(choices, adds, roomKg) : choices.map(() => 0);
  const words = [wordsOf(choices, levels), state.words].filter((text) => text !== '').join(', ');
  return {
    name: `worst for ${gauge.name}: ${words}`,
    kind: 'worst',
    holds: words,
    load: plus(loadedTo(choices, levels), state.moved),
    sources: [],
    lifted,
  };
}

/** `FUEL full, FRESH full, GREY empty, seats driver, bays B1 B3`; parts in percent. */
function wordsOf(choices: readonly LoadChoice[], levels: readonly number[]): string {
  const taken = (i: number): string => {
    const level = levels[i] as number;
    return level === 1 ? 'full' : level === 0 ? 'empty' : `${Math.round(level * 100)} %`;
  };
  const tanks = choices.flatMap((choice, i) => (choice.kind === 'tank' ? [`${choice.name} ${taken(i)}`] : []));
  const used = (kind: LoadChoice['kind'], one: string): string[] => {
    const names = choices.flatMap((choice, i) => {
      if (choice.kind !== kind || levels[i] === 0) return [];
      return [levels[i] === 1 ? choice.name : `${choice.name} (${taken(i)})`];
    });
    return [names.length > 0 ? `${one} ${names.join(' ')}` : `no ${one}`];
  };
  const kinds = new Set(choices.map((choice) => choice.kind));
  return [...tanks, ...(kinds.has('seat') ? used('seat', 'seats') : []), ...(kinds.has('bay') ? used('bay', 'bays') : [])].join(
    ', ',
  );
}
