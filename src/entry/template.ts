import { BUILT_KINDS } from '../model/planned.js';
import type { KindName } from '../records/index.js';
import { kindOf } from '../records/kinds.js';
import { roleOf } from '../store/layout.js';
import { columnFor } from './columns.js';
import { type EntryKind, type HeldList, listsOf } from './homes.js';
import type { IndexedFile, IndexedRecord, RecordIndex } from './record-index.js';
import { type Data, field, flow, isData, item } from './yaml-text.js';

/**
 * Files of a new shell with the structure of another: name within the shell’s folder → text. Without heats, dates, readings, photos,
 * the chassis’s ratings, VIN and customer; without comments, which speak of the other coach.
 */
export function templateTexts(known: RecordIndex, shell: string): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const file of known.files.values()) {
    const role = roleOf(file.path);
    if (role.holds === 'unknown' || !file.path.startsWith(`shells/${known.shell}/`)) continue;
    const name = file.path.slice(`shells/${known.shell}/`.length);
    const lists = listsOf(role).filter(({ kind }) => kindOf(kind).more.structure);
    const text =
      lists.length === 0 ? undefined : role.holds === 'shell' ? headText(file, shell, known) : listText(file, lists, known);
    if (text !== undefined) texts.set(name, text);
  }
  return texts;
}

/** Undefined where nothing of a structure stands in the file. */
function listText(file: IndexedFile, lists: readonly HeldList[], known: RecordIndex): string | undefined {
  const data = file.open?.document.data;
  const held = lists
    .map((list) => ({ list, records: recordsIn(file, list.kind, known) }))
    .filter(({ records }) => records.length > 0);
  if (held.length === 0) return undefined;
  const from = `# From ${known.shell}: what is to be built. Put in what was built as it is done.\n`;
  const [first] = held;
  if (first?.list.bare && Array.isArray(data)) return from + itemsText(first.records, '');
  const head = isData(data)
    ? Object.entries(data).filter(([key]) => !held.some(({ list }) => list.path[0] === key) && !isOfOne('service', key))
    : [];
  const heads = head.map(([key, value]) => `${field(key, value, '  ')}\n`).join('');
  return from + heads + held.map(({ list, records }) => `${list.path[0]}:\n${itemsText(records, '  ')}`).join('');
}

function headText(file: IndexedFile, shell: string, known: RecordIndex): string {
  const data = file.open?.document.data;
  const head: Data = isData(data) ? data : {};
  const chassis = isData(head.chassis) ? withoutOwn('chassis', head.chassis) : {};
  const lines = [
    `# From ${known.shell}. Ratings are those of one chassis: copy gvwr, gcwr, gawr and tyres from the papers of this one.`,
    `shell: ${flow(shell)}`,
    `title: ${flow(`after ${known.shell}`)}`,
    ...['units', 'datum', 'envelope'].filter((key) => head[key] !== undefined).map((key) => field(key, head[key], '  ')),
    'chassis:',
    ...Object.entries(chassis)
      .filter(([key]) => columnFor('chassis', key) !== undefined)
      .map(([key, value]) => `  ${field(key, value, '    ')}`),
  ];
  const axles = recordsIn(file, 'axle', known);
  const lists = (['tank', 'seat', 'bay', 'loading condition'] as const).map(
    (kind) => [kind === 'loading condition' ? 'conditions' : `${kind}s`, recordsIn(file, kind, known)] as const,
  );
  const blocks = lists
    .filter(([, records]) => records.length > 0)
    .map(([name, records]) => `${name}:\n${itemsText(records, '  ')}`);
  return `${lines.join('\n')}\n${axles.length > 0 ? `  axles:\n${itemsText(axles, '    ')}` : ''}${blocks.join('')}`;
}

const recordsIn = (file: IndexedFile, kind: EntryKind, known: RecordIndex): readonly IndexedRecord[] =>
  known.records.filter((record) => record.file === file.path && record.kind === kind);

const itemsText = (records: readonly IndexedRecord[], indent: string): string =>
  records.map(({ kind, data }) => item(bared(kind, data), 'flow', indent)).join('');

/** A mass that was weighed was that of another piece. */
function bared(kind: EntryKind, data: Data): Data {
  const plain = withoutOwn(kind, data);
  const estimated = kind === 'component' && plain.basis === 'weighed' ? { ...plain, basis: 'estimated' } : plain;
  return BUILT.has(kind) ? { ...estimated, planned: 'yes' } : estimated;
}

const BUILT: ReadonlySet<EntryKind> = new Set<EntryKind>(BUILT_KINDS);

function withoutOwn(kind: KindName, data: Data, path: readonly string[] = []): Data {
  const kept = Object.entries(data).flatMap(([key, value]): readonly (readonly [string, unknown])[] => {
    const column = columnFor(kind, [...path, key].join('.'));
    if (isOfOne(kind, [...path, key].join('.')) || value === null || column?.form.as === 'date') return [];
    if (!isData(value)) return [[key, value]];
    const inner = withoutOwn(kind, value, [...path, key]);
    return Object.keys(inner).length > 0 ? [[key, inner]] : [];
  });
  return Object.fromEntries(kept);
}

/** Of one vehicle only: evidence, readings, lots, and what its papers rate. Dates go by their form. */
const isOfOne = (kind: KindName, key: string): boolean =>
  key.split('.').some((step) => step.startsWith('x-')) || columnFor(kind, key)?.traits.ofOne === true;
