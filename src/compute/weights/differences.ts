import { OCCUPANT_KG } from '../../model/occupant.js';
import type { Model } from '../../model/shell.js';
import type { Condition, Tank } from '../../records/index.js';
import type { MassItem } from '../takeoff/types.js';
import { type Load, loadAt, sumOf, times } from './load.js';
import { fullTank, statedLevel, tankRole, unladenLevel } from './tanks.js';
import { rectangular, sourceOfLoad, type UncertaintySource } from './uncertainty.js';

/** One thing by which a condition differs from the unladen vehicle, and what is not known of it. */
export interface ConditionDifference {
  readonly name: string;
  readonly kind: 'tank' | 'occupant' | 'aboard' | 'bay' | 'missing';
  readonly load: Load;
  readonly sources: readonly UncertaintySource[];
}

/** A tank that the condition does not name: `empty`, as on a ticket, or as in the unladen vehicle where the shop states a loading. */
export type Unnamed = 'empty' | 'as unladen';

/** Reading of a level gauge: ± 5 % of the capacity. Common practice, no source. */
const LEVEL_HALF_WIDTH = 0.05;
/** A tank said to be full on the day of a weighing: ± 2 % of the capacity, by where the filler stopped. Common practice, no source. */
const FULL_HALF_WIDTH = 0.02;
/** A person counted at 68 kg instead of weighed: ± 20 kg. Common practice, no source. */
const OCCUPANT_HALF_WIDTH_KG = 20;
/** A thing said to be aboard: ± 10 % of its mass. Common practice, no source. */
const ABOARD_HALF_WIDTH = 0.1;

/** Everything by which a condition differs from unladen, by its own position. What is not on record is left out. */
export function conditionDifferences(
  { shell }: Model,
  condition: Condition,
  items: ReadonlyMap<string, MassItem>,
  unnamed: Unnamed,
): readonly ConditionDifference[] {
  const { axles } = shell.chassis;
  const source = (name: string, load: Load): readonly UncertaintySource[] => [sourceOfLoad(name, axles, load)];
  const tanks = shell.tanks.flatMap((tank) => {
    const level = levelOf(tank, condition, unnamed);
    const change = times(fullTank(tank), level - unladenLevel(tank));
    const halfWidth = levelUncertainty(level, unnamed);
    if (change.massKg === 0 && halfWidth === 0) return [];
    const doubt = times(fullTank(tank), rectangular(halfWidth));
    const sources = halfWidth === 0 ? [] : source(`level of ${tank.id}`, doubt);
    return [{ name: tank.id, kind: 'tank' as const, load: change, sources }];
  });
  const occupants = condition.occupants.flatMap(({ seat, massKg }) => {
    const at = shell.seats.find((one) => one.id === seat)?.at;
    if (!at) return [];
    const counted = massKg === OCCUPANT_KG;
    const doubt = loadAt(rectangular(OCCUPANT_HALF_WIDTH_KG), at);
    return [
      {
        name: seat,
        kind: 'occupant' as const,
        load: loadAt(massKg, at),
        sources: counted ? source('occupants not weighed', doubt) : [],
      },
    ];
  });
  const aboard = condition.aboard.map(({ name, massKg, at }) => ({
    name,
    kind: 'aboard' as const,
    load: loadAt(massKg, at),
    sources: source(`aboard: ${name}`, loadAt(rectangular(massKg * ABOARD_HALF_WIDTH), at)),
  }));
  const bays = Object.entries(condition.bays).flatMap(([id, massKg]) => {
    const at = shell.bays.find((bay) => bay.id === id)?.at;
    return at ? [{ name: id, kind: 'bay' as const, load: loadAt(massKg, at), sources: [] }] : [];
  });
  const missing = condition.missing.flatMap((id) => {
    const item = items.get(id);
    if (!item) return [];
    const doubt = loadAt(item.uMassKg, item.centroid);
    return [
      { name: id, kind: 'missing' as const, load: loadAt(-item.massKg, item.centroid), sources: source(`missing: ${id}`, doubt) },
    ];
  });
  return [...tanks, ...occupants, ...aboard, ...bays, ...missing];
}

/** What a level may be off by, as a share of the capacity. Full and empty as the shop states a loading are full and empty. */
function levelUncertainty(level: number, unnamed: Unnamed): number {
  if (level === 0) return 0;
  if (level < 1) return LEVEL_HALF_WIDTH;
  return unnamed === 'empty' ? FULL_HALF_WIDTH : 0;
}

export const loadOf = (list: readonly ConditionDifference[]): Load => sumOf(list.map(({ load }) => load));

function levelOf(tank: Tank, condition: Condition, unnamed: Unnamed): number {
  const stated = statedLevel(tank, condition);
  if (stated !== undefined) return stated;
  return unnamed === 'as unladen' ? unladenLevel(tank) : 0;
}

/** Why a condition cannot be brought to unladen; nothing where it can. */
export function fuelUncertainty({ shell }: Model, condition: Condition): string | undefined {
  const fuel = shell.tanks.filter((tank) => tankRole(tank) === 'fuel');
  if (!condition.fuelKnown) return 'its condition does not say how much fuel was in';
  if (fuel.length === 0) return 'no fuel tank is on record, so its fuel cannot be moved by its position';
  const unsaid = fuel.filter((tank) => statedLevel(tank, condition) === undefined);
  return unsaid.length > 0 ? `its condition does not say how full ${unsaid.map((tank) => tank.id).join(', ')} was` : undefined;
}
