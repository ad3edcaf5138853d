import type { Axle, Model } from '../../model/shell.js';
import { type AxleModel, influenceAt } from './axle-reactions.js';
import { totalOf } from './burden.js';
import { OCCUPANT_KG } from './differences.js';
import { type Load, loadAt, NO_LOAD, plus, times } from './load.js';
import type { Loading } from './loadings.js';
import type { Unladen } from './normalise.js';
import { fullTank, tankRole, unladenLevel } from './tanks.js';

/** One thing that the user may put in or leave out, between nothing and full. */
interface Choice {
  readonly name: string;
  readonly kind: 'tank' | 'seat' | 'bay';
  readonly full: Load;
  /** Level that the unladen vehicle already has of it. */
  readonly already: number;
}

/**
 * The state of tanks, seats and bays that loads one axle most, within every stated limit and the GVWR.
 *
 * Each choice adds to the axle in proportion to its level, so without the GVWR each is either full or empty by the sign of what it
 * adds. With the GVWR it is a fractional knapsack: what adds least to the axle for its mass is left out first.
 */
export function worstLoading(model: Model, unladen: Unladen, carriage: AxleModel, at: number): Loading {
  const { axles, gvwrKg } = model.shell.chassis;
  const axle = axles[at] as Axle;
  const choices = choicesOf(model);
  const adds = choices.map((choice) => addedTo(carriage, at, choice.full));
  const levels: number[] = adds.map((kg) => (kg > 0 ? 1 : 0));
  let excessKg = totalOf(unladen.burden, axles).massKg - (gvwrKg ?? Number.POSITIVE_INFINITY);
  choices.forEach((choice, i) => {
    excessKg += choice.full.massKg * ((levels[i] as number) - choice.already);
  });
  const leanest = choices.map((_, i) => i).filter((i) => levels[i] === 1);
  leanest.sort((a, b) => (adds[a] as number) / massOf(choices[a]) - (adds[b] as number) / massOf(choices[b]));
  for (const i of leanest) {
    if (excessKg <= 0) break;
    const left = Math.min(excessKg, massOf(choices[i]));
    levels[i] = 1 - left / massOf(choices[i]);
    excessKg -= left;
  }
  let load = NO_LOAD;
  choices.forEach((choice, i) => {
    load = plus(load, times(choice.full, (levels[i] as number) - choice.already));
  });
  const words = wordsOf(choices, levels);
  return { name: `worst for ${axle.id}: ${words}`, kind: 'worst', holds: words, load, sources: [], lifted: carriage.lifted };
}

const massOf = (choice: Choice | undefined): number => (choice as Choice).full.massKg;

const addedTo = (carriage: AxleModel, at: number, { massKg, xKgMm }: Load): number =>
  massKg === 0 ? 0 : massKg * (influenceAt(carriage, xKgMm / massKg)[at] as number);

function choicesOf({ shell }: Model): readonly Choice[] {
  const tanks = shell.tanks
    // Operating fluids stay full: the vehicle does not run without them.
    .filter((tank) => tankRole(tank) !== 'operating fluid')
    .map((tank): Choice => ({ name: tank.id, kind: 'tank', full: fullTank(tank), already: unladenLevel(tank) }));
  const seats = shell.seats
    .filter((seat) => seat.belted)
    .map((seat): Choice => ({ name: seat.id, kind: 'seat', full: loadAt(OCCUPANT_KG, seat.at), already: 0 }));
  const bays = shell.bays
    .filter((bay) => bay.limitKg !== undefined)
    .map((bay): Choice => ({ name: bay.id, kind: 'bay', full: loadAt(bay.limitKg as number, bay.at), already: 0 }));
  return [...tanks, ...seats, ...bays].filter((choice) => choice.full.massKg > 0);
}

/** `FUEL full, FRESH full, GREY empty, seats driver, bays B1 B3`; parts in percent. */
function wordsOf(choices: readonly Choice[], levels: readonly number[]): string {
  const taken = (i: number): string => {
    const level = levels[i] as number;
    return level === 1 ? 'full' : level === 0 ? 'empty' : `${Math.round(level * 100)} %`;
  };
  const tanks = choices.flatMap((choice, i) => (choice.kind === 'tank' ? [`${choice.name} ${taken(i)}`] : []));
  const used = (kind: Choice['kind'], one: string): string[] => {
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
