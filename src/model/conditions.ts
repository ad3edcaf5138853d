import type { Finding } from '../finding.js';
import type { Condition, ConditionRead, RecordKind, Source, Tank } from '../records/index.js';
import { contentsWords, meansContents } from '../records/tank-contents.js';
import { didYouMean } from '../source/nearest.js';
import { shown } from '../source/shown.js';
import type { Path } from '../source/source.js';
import { OCCUPANT_KG } from './occupant.js';
import type { Register } from './register.js';

/** What a condition's words are resolved against. */
export interface Vehicle {
  readonly tanks: readonly Tank[];
  readonly register: Register<RecordKind>;
  readonly say: (finding: Finding) => void;
}

/** Where the condition was typed. */
export interface TypedCondition {
  readonly id: string;
  readonly source: Source;
  readonly path: Path;
}

const OWN_KEYS = ['occupants', 'aboard', 'missing', 'bays'];

/** Resolves a condition's keys: a tank by its id or by what is in it, a liftable axle by its id. Levels come back by tank id. */
export function readCondition(form: ConditionRead, at: TypedCondition, vehicle: Vehicle): Condition {
  const { occupants, aboard, missing, bays, ...others } = form;
  const levels: Record<string, number> = {};
  const lifted: Record<string, 'up' | 'down'> = {};
  let fuelKnown = false;
  for (const [key, value] of Object.entries(others as Readonly<Record<string, number | 'up' | 'down' | undefined>>)) {
    if (value === undefined) continue;
    if (typeof value === 'string') {
      if (known(vehicle, key, 'axle')) lifted[key] = value;
      else reportUnknown(key, at, vehicle);
      continue;
    }
    const tanks = tanksFor(key, vehicle);
    for (const tank of tanks) levels[tank] = value;
    if (tanks.length === 0) reportUnknown(key, at, vehicle);
    fuelKnown ||= key === 'fuel' || vehicle.tanks.some((tank) => tanks.includes(tank.id) && meansContents('fuel', tank));
  }
  return {
    levels,
    occupants: (occupants ?? []).map((one) =>
      typeof one === 'string' ? { seat: one, massKg: OCCUPANT_KG } : { seat: one.seat, massKg: one.mass ?? OCCUPANT_KG },
    ),
    aboard: (aboard ?? []).map(({ name, mass, at: place }) => ({ name, massKg: mass, at: place })),
    missing: missing ?? [],
    lifted,
    bays: bays ?? {},
    fuelKnown,
  };
}

const known = (vehicle: Vehicle, id: string, kind: RecordKind): boolean => {
  const found = vehicle.register.kindOf(id);
  return found === kind || found === 'any';
};

function tanksFor(key: string, vehicle: Vehicle): readonly string[] {
  if (known(vehicle, key, 'tank')) return [key];
  return vehicle.tanks.filter((tank) => meansContents(key, tank)).map((tank) => tank.id);
}

function reportUnknown(key: string, at: TypedCondition, vehicle: Vehicle): void {
  // A tank that was left out for a fault of its own may be the one that is meant.
  if ([...vehicle.register.idsOf(['tank'])].length > vehicle.tanks.length) return;
  const tanks = [...vehicle.register.idsOf(['tank']), ...contentsWords(vehicle.tanks)];
  const axles = [...vehicle.register.idsOf(['axle'])];
  const message =
    `Found \`${shown(key)}\` in \`condition\`, expected a tank by its id or contents, a liftable axle, ` +
    `or ${OWN_KEYS.map((one) => `\`${one}\``).join(', ')}${didYouMean(key, [...tanks, ...axles, ...OWN_KEYS])}`;
  vehicle.say({
    rule: 'format.unknown-reference',
    severity: 'error',
    message,
    ids: [at.id],
    place: at.source.place(...at.path, key),
  });
}
