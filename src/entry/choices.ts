import { qualified } from '../compute/welding/qualification.js';
import { boundsOf } from '../geometry/box.js';
import { distance, lerp, type Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import type { LibraryKind, RecordKind, Weld } from '../records/index.js';
import { LIBRARY } from '../records/kinds.js';
import { referencesOf, type Target } from '../records/references.js';
import type { MenuChoice } from './asker.js';
import type { EntryColumn } from './columns.js';
import { type EntryKind, homeOf } from './homes.js';
import type { Data } from './yaml-text.js';

/** What a field may name, the likeliest first; undefined for a field that names no record. `data` is what was answered so far. */
export function choicesFor(kind: EntryKind, column: EntryColumn, data: Data, model: Model): readonly MenuChoice[] | undefined {
  if (kind === 'weld' && column.key === 'welder') return welders(data, model);
  const target = targetOf(kind, column);
  if (target === undefined) return undefined;
  if ('library' in target) return ofLibrary(target.library, model);
  const kinds = 'kinds' in target ? target.kinds : undefined;
  const near = placeOf(data, model);
  const entries = [...model.shell.byId.values()].filter((entry) => kinds === undefined || kinds.includes(entry.kind));
  const placed = entries.map((entry) => ({ entry, distanceMm: near ? distanceTo(entry.record, near) : undefined }));
  const sorted = near ? placed.sort((a, b) => (a.distanceMm ?? Infinity) - (b.distanceMm ?? Infinity)) : placed;
  return sorted.map(({ entry }) => ({ value: entry.id, name: shownName(entry.id, entry.record) }));
}

function targetOf(kind: EntryKind, { path, list }: EntryColumn): Target | undefined {
  if (homeOf(kind).in === 'library') return undefined;
  const wanted = [...path.map((step) => (typeof step === 'number' ? '*' : step)), ...(list ? ['*'] : [])].join('.');
  return referencesOf(kind as RecordKind).find((reference) => reference.path.join('.') === wanted)?.target;
}

function ofLibrary(kind: LibraryKind, { library }: Model): readonly MenuChoice[] {
  const held = library[LIBRARY[kind].home.list];
  const records = Array.isArray(held)
    ? (held as readonly { id: string }[])
    : [...(held as ReadonlyMap<string, { id: string }>).values()];
  return records.map((record) => ({ value: record.id, name: shownName(record.id, record) }));
}

/** Those whose papers cover the weld as answered so far come first. */
function welders(data: Data, model: Model): readonly MenuChoice[] {
  const weld = {
    joins: pairsOf(data.joins),
    process: String(data.process ?? ''),
    position: textOf(data.position),
    date: textOf(data.date),
  };
  const people = [...model.library.people.values()].filter(({ qualified: papers }) =>
    papers.some((paper) => paper.process !== undefined),
  );
  const judged = people.map((person) => ({
    person,
    verdict: qualified({ ...weld, welder: person.id } as unknown as Weld, model).verdict,
  }));
  const order = ['qualified', 'not verified', 'not qualified'];
  return judged
    .sort((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict))
    .map(({ person, verdict }) => ({ value: person.id, name: `${person.id}  ${verdict}` }));
}

const textOf = (value: unknown): string | undefined => (value === undefined ? undefined : String(value));
const pairsOf = (joins: unknown): readonly unknown[] => (Array.isArray(joins) ? (Array.isArray(joins[0]) ? joins : [joins]) : []);

/** Where the record in hand is, by what it names. */
function placeOf(data: Data, model: Model): Vec3 | undefined {
  const named = [data.joins, data.from, data.circuit, data.of].flat(2).map((id) => model.shell.byId.get(String(id))?.record);
  return named.map(middleOf).find((place) => place !== undefined);
}

/** As far as a record of any kind says where it is. */
interface Placed {
  readonly at?: Vec3;
  readonly outline?: readonly Vec3[];
  readonly box?: readonly Vec3[];
  readonly along?: readonly Vec3[];
  readonly shape?: { readonly from?: Vec3; readonly to?: Vec3; readonly outline?: readonly Vec3[] };
}

function pointsOf(record: unknown): readonly Vec3[] {
  const { at, outline, box, along, shape } = (record ?? {}) as Placed;
  if (at) return [at];
  return outline ?? box ?? along ?? shape?.outline ?? (shape?.from && shape.to ? [shape.from, shape.to] : []);
}

function middleOf(record: unknown): Vec3 | undefined {
  const points = pointsOf(record);
  if (points.length === 0) return undefined;
  const { min, max } = boundsOf(points);
  return lerp(min, max, 0.5);
}

/** To its bounds: near enough for an order of choices. */
function distanceTo(record: unknown, place: Vec3): number | undefined {
  const points = pointsOf(record);
  if (points.length === 0) return undefined;
  const { min, max } = boundsOf(points);
  const nearest = place.map((value, i) => Math.min(Math.max(value, min[i] as number), max[i] as number)) as unknown as Vec3;
  return distance(place, nearest);
}

function shownName(id: string, record: unknown): string {
  const { name, part } = record as { readonly name?: string; readonly part?: string };
  const word = name ?? part;
  return word === undefined || word === id ? id : `${id}  ${word}`;
}
