import type { Vec3 } from '../geometry/vector.js';
import { found } from '../source/shown.js';
import type { Field } from './field.js';
import { block, either, id, ids, keyed, list, measured, open, position, quantity, text } from './fields.js';

export interface Occupant {
  readonly seat: string;
  readonly massKg: number;
}

/** What was in and on the vehicle. A tank not named is empty; fuel not named is unknown. */
export interface Condition {
  /** Tank id → level 0–1; words for contents (fuel, fresh, grey …) are resolved when the condition is read. */
  readonly levels: Readonly<Record<string, number>>;
  readonly occupants: readonly Occupant[];
  readonly aboard: readonly { readonly name: string; readonly massKg: number; readonly at: Vec3 }[];
  readonly missing: readonly string[];
  /** Liftable axle id → up or down. */
  readonly lifted: Readonly<Record<string, 'up' | 'down'>>;
  /** Bay id → load, kg. */
  readonly bays: Readonly<Record<string, number>>;
  /** True when the condition says anything about fuel. */
  readonly fuelKnown: boolean;
}

const occupant = either([
  id('Seat').names('seat'),
  block({ seat: id('Seat').names('seat').required(), mass: quantity('mass', 'Mass of the person', 'above zero') }),
]);

/** A tank’s level, or `up` or `down` for a liftable axle. */
const levelOrLift = measured<number | 'up' | 'down'>(
  (units) => (typed, say) => {
    if (typed === 'up' || typed === 'down') return typed;
    if (typeof typed !== 'string' && typeof typed !== 'number') {
      return void say({ found: found(typed), expected: 'a level as `3/4` for a tank, `up` or `down` for an axle' });
    }
    return units.level(typed, say);
  },
  'Level of a tank by its id or its contents, as fuel: 3/4; up or down for a liftable axle',
  { type: ['string', 'number'] },
);

const read = open(
  {
    occupants: list(occupant, 'Seats taken: 68 kg each, or {seat: driver, mass: 82 kg}'),
    aboard: list(
      block({
        name: text('What it is').required(),
        mass: quantity('mass', 'Its mass').required(),
        at: position('Where it stood').required(),
      }),
      'What was aboard and does not belong to the coach',
    ),
    missing: ids('Components that were not yet in').names('component'),
    bays: keyed(quantity('mass', 'Load'), 'Load in each bay').names('bay'),
  },
  levelOrLift,
  'What was in and on the vehicle: levels of tanks by name, occupants, what was aboard or missing',
);
/** A condition before its words are read with the tanks and axles of its shell. */
export type ConditionRead = (typeof read)['types']['read'];

export const condition: Field<ConditionRead, Condition> = read.model(
  (typed, given, key) => given.condition?.(typed as never, [...given.path, key]) as Condition,
);

/** A scale's answer for one axle: the whole, or both ends. */
export interface AxleReading {
  readonly totalKg: number;
  readonly leftKg?: number;
  readonly rightKg?: number;
}

const reading = either([
  quantity('mass', 'The whole axle'),
  block({
    left: quantity('mass', 'Left end').required(),
    right: quantity('mass', 'Right end').required(),
    axle: quantity('mass', 'The whole axle, where it was read as well'),
  }),
]).model(
  (typed): AxleReading =>
    typeof typed === 'number'
      ? { totalKg: typed }
      : { totalKg: typed.axle ?? typed.left + typed.right, leftKg: typed.left, rightKg: typed.right },
);

/** Axle id to its reading; both ends make the whole. */
export const readings = keyed(reading, 'Scale reading of each axle: the whole, or {left: …, right: …}').names('axle');
