import { OCCUPANT_KG } from '../../model/occupant.js';
import type { Model } from '../../model/shell.js';
import type { Axle, Condition, Tank } from '../../records/index.js';
import { conditionDifferences, loadOf } from './differences.js';
import { type Load, loadAt, NO_LOAD, plus, sumOf } from './load.js';
import type { Items } from './normalise.js';
import { liftedIn } from './normalise.js';
import { fullTank, tankRole } from './tanks.js';
import type { ConditionKind } from './types.js';
import type { UncertaintySource } from './uncertainty.js';

/** A loading condition: what is put on the unladen vehicle, and which axles are up. */
export interface Loading {
  readonly name: string;
  readonly kind: ConditionKind;
  readonly holds: string;
  readonly load: Load;
  readonly sources: readonly UncertaintySource[];
  readonly lifted: ReadonlySet<string>;
}

const DOWN: ReadonlySet<string> = new Set();

/** Every belted seat taken; 68 kg (150 lb) each (49 CFR 567.4(g)(3); 571.110 S3 up to 10,000 lb of GVWR). */
const occupantsLoad = ({ shell }: Model): Load =>
  sumOf(shell.seats.filter((seat) => seat.belted).map((seat) => loadAt(OCCUPANT_KG, seat.at)));

export const tanksOf = ({ shell }: Model, role: 'fresh water' | 'waste'): readonly Tank[] =>
  shell.tanks.filter((tank) => tankRole(tank) === role);

const tanksLoad = (model: Model, role: 'fresh water' | 'waste'): Load => sumOf(tanksOf(model, role).map(fullTank));

/** Bays at their stated limits; a bay without one stays empty. */
const baysLoad = ({ shell }: Model): Load =>
  sumOf(shell.bays.flatMap((bay) => (bay.limitKg === undefined ? [] : [loadAt(bay.limitKg, bay.at)])));

/** Occupants and full fresh water: what bays are loaded on top of. */
const waterLoad = (model: Model): Load => plus(occupantsLoad(model), tanksLoad(model, 'fresh water'));

/** The named conditions with every axle down. */
export function standardLoadings(model: Model): readonly Loading[] {
  const occupants = occupantsLoad(model);
  const water = waterLoad(model);
  const named = (name: string, holds: string, load: Load): Loading => ({
    name,
    kind: 'standard',
    holds,
    load,
    sources: [],
    lifted: DOWN,
  });
  return [
    named('unladen', 'fuel and operating fluids full, no water, nobody', NO_LOAD),
    named('occupants', 'unladen, and 68 kg (150 lb) in every belted seat', occupants),
    named('water', 'occupants, and fresh water full', water),
    named('loaded', 'water, and every bay at its stated limit', plus(water, baysLoad(model))),
    named('waste', 'occupants, fresh water empty, waste tanks full', plus(occupants, tanksLoad(model, 'waste'))),
  ];
}

/** The standard conditions again with each liftable axle up, and with all of them up where there are several. */
export function liftedLoadings(standard: readonly Loading[], axles: readonly Axle[]): readonly Loading[] {
  const liftable = axles.filter((axle) => axle.lift).map((axle) => axle.id);
  const ways = [...liftable.map((id) => [id]), ...(liftable.length > 1 ? [liftable] : [])];
  return ways.flatMap((up) =>
    standard.map((loading): Loading => {
      const suffix = up.map((id) => `${id} up`).join(', ');
      return { ...loading, name: `${loading.name} / ${suffix}`, kind: 'lifted', lifted: new Set(up) };
    }),
  );
}

/** The shop's own conditions. Fuel and operating fluids that they do not name are full. */
export function ownLoadings(model: Model, items: Items): readonly Loading[] {
  return model.shell.conditions.map(({ name, condition }) => {
    const list = conditionDifferences(model, condition, items, 'as unladen');
    return {
      name,
      kind: 'own' as const,
      holds: wordsOf(condition),
      load: loadOf(list),
      sources: list.flatMap((one) => one.sources),
      lifted: liftedIn(condition),
    };
  });
}

function wordsOf(condition: Condition): string {
  const words = [
    ...Object.entries(condition.levels).map(([name, level]) => `${name} ${Math.round(level * 100)} %`),
    ...condition.occupants.map(({ seat }) => `seat ${seat}`),
    ...condition.aboard.map(({ name }) => name),
    ...Object.keys(condition.bays).map((id) => `bay ${id}`),
    ...condition.missing.map((id) => `without ${id}`),
    ...[...liftedIn(condition)].map((axle) => `${axle} up`),
  ];
  return words.length > 0 ? `as the shop states it: ${words.join(', ')}` : 'as unladen';
}
