import { indexById } from '../../src/model/index-by-id.js';
import type { Model } from '../../src/model/shell.js';
import type { Entry, Shell } from '../../src/records/index.js';

/** What a coach is made of; what hangs on its history (tests, sign-offs, pictures, tickets) is not repeated. */
const REPEATED = [
  ...(['members', 'panels', 'welds', 'clamps', 'zones', 'openings', 'components', 'tanks', 'bays'] as const),
  ...(['circuits', 'nodes', 'runs', 'declared'] as const),
];
/** One coach stands behind the other. */
const APART_MM = 15_000;

/** A shell of so many coaches in a row: the records of one under new ids, each further aft. */
export function trainOf(model: Model, coaches: number): Model {
  const { shell } = model;
  const ids = new Set(REPEATED.flatMap((list) => shell[list].map(({ id }) => id)));
  const lists = Object.fromEntries(
    REPEATED.map((list) => [
      list,
      Array.from({ length: coaches }, (_, coach) =>
        coach === 0 ? shell[list] : (moved(shell[list], coach, ids) as readonly unknown[]),
      ).flat(),
    ]),
  );
  const byId = new Map<string, Entry>();
  const whole = { ...shell, ...lists, taped: new Map(), byId } as Shell;
  indexById(whole, byId);
  return { ...model, shell: whole };
}

function moved(value: unknown, coach: number, ids: ReadonlySet<string>, key = ''): unknown {
  if (typeof value === 'string') return ids.has(value) ? `${value}.${coach}` : value;
  if (typeof value !== 'object' || value === null || key === 'source') return value;
  if (!Array.isArray(value))
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, moved(one, coach, ids, name)]));
  const [x, y, z, more] = value as readonly unknown[];
  const isPlace = [x, y, z].every((one) => typeof one === 'number') && more === undefined && key !== 'sizeMm';
  return isPlace ? [(x as number) + coach * APART_MM, y, z] : value.map((one) => moved(one, coach, ids, key));
}
