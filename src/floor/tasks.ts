import type { EntryColumn } from '../entry/columns.js';
import { blockColumns, columnFor, columnsOf } from '../entry/columns.js';
import type { EntryKind } from '../entry/homes.js';
import { kindOf } from '../records/kinds.js';
import type { FloorEntry } from './hand-over.js';

/** What is entered at the coach, each a large button. */
export const TASKS = ['weld', 'look', 'node', 'run', 'bond', 'test', 'ticket', 'finding', 'closed', 'photo'] as const;
export type TaskName = (typeof TASKS)[number];

interface Task {
  readonly kind: EntryKind;
  readonly does: FloorEntry['does'];
  /** The list of blocks that is appended to. */
  readonly list?: string;
  /** Blocks and fields that are asked for; without it all of the kind. */
  readonly only?: readonly string[];
  /** Those of them that stand first. */
  readonly first?: readonly string[];
}

const TASK: Readonly<Record<TaskName, Task>> = {
  weld: { kind: 'weld', does: 'add' },
  look: { kind: 'weld', does: 'append', list: 'inspections' },
  node: { kind: 'node', does: 'add', first: ['id', 'kind', 'circuit', 'at', 'name'] },
  run: { kind: 'run', does: 'add', first: ['circuit', 'from', 'to', 'zones', 'date'] },
  bond: {
    kind: 'panel',
    does: 'set',
    only: ['bond', 'fixing'],
    first: [
      ...['fixing.adhesive', 'fixing.lot', 'fixing.expires', 'fixing.applied', 'bond.surface', 'bond.air', 'bond.humidity'],
      ...['bond.open_time_limit', 'bond.open_time'],
    ],
  },
  test: { kind: 'test', does: 'add' },
  ticket: { kind: 'ticket', does: 'add' },
  finding: { kind: 'finding', does: 'add' },
  closed: { kind: 'panel', does: 'set', only: ['date', 'by', 'stage', 'note', 'fixing'], first: ['date', 'by', 'stage'] },
  photo: { kind: 'photo', does: 'add', first: ['of', 'caption', 'taken', 'stage'] },
};

export const taskOf = (name: TaskName): Task => TASK[name];

/** The fields of a form: those that are asked for first, and the others of its kind. A field that a kind gains stands among them by itself. */
export interface FormFields {
  readonly first: readonly EntryColumn[];
  readonly more: readonly EntryColumn[];
}

/** What the page itself fills in. */
const BY_ITSELF: ReadonlySet<string> = new Set([
  ...['id', 'file', 'sha256', 'seen', 'vouched.by', 'vouched.date', 'vouched.why'],
  // Read, and no longer offered: `insulator` is its word.
  'isolator',
]);

/** `keys`: of fields that hang on this coach, as the reading of each of its axles; they are asked for after the first. */
export function formFields(name: TaskName, keys: readonly string[] = []): FormFields {
  const { kind, does, list, only, first } = TASK[name];
  if (list !== undefined) {
    return { first: blockColumns(kind, [list], 0) ?? [], more: [] };
  }
  const all = columnsOf(kind).filter(({ key, path, traits }) => {
    if (BY_ITSELF.has(key) && !(name === 'node' && key === 'id')) return false;
    return traits.private !== true && (only === undefined || only.includes(String(path[0])));
  });
  const asked = new Set<string>(first ?? [...(kindOf(kind).more.asked ?? [])]);
  const { first: found, more } = split(
    all,
    (column) =>
      (column.form.as !== 'other' || column.required) &&
      (asked.has(column.key) || (does === 'add' && column.required && !isInner(column))),
  );
  const rank = [...asked];
  const own = keys.flatMap((key) => columnFor(kind, key) ?? []).map((column) => ({ ...column, required: false }));
  const whole = new Set(own.map(({ path }) => String(path[0])));
  return {
    first: [...[...found].sort((a, b) => rank.indexOf(a.key) - rank.indexOf(b.key)), ...own],
    more: more.filter(({ key }) => !whole.has(key)),
  };
}

const isInner = ({ path }: EntryColumn): boolean => path.length > 1;

function split(columns: readonly EntryColumn[], isFirst: (column: EntryColumn) => boolean): FormFields {
  return { first: columns.filter(isFirst), more: columns.filter((column) => !isFirst(column)) };
}
