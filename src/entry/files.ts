import { roleOf } from '../store/layout.js';
import type { ListPlace } from './append.js';
import { type EntryKind, heldList, homeOf, listsOf, usualStyle } from './homes.js';
import type { IndexedRecord, RecordIndex } from './record-index.js';
import type { Data } from './yaml-text.js';

/** Where a new record goes, and why there; or what to say so that it can be known. */
export type Chosen =
  | { readonly place: ListPlace; readonly why: string }
  | { readonly ask: string; readonly files: readonly string[] };

/** The file that a new record belongs to: the one named in `into` (`members-floor`, `dc-house.yaml`); the only one; the one that holds its stage, its service or its neighbours. */
export function chooseFile(kind: EntryKind, data: Data, known: RecordIndex, into?: string): Chosen {
  const folder = folderOf(kind, known);
  const files = filesFor(kind, known);
  if (into !== undefined) return named(kind, `${into.replace(/\.yaml$/u, '')}.yaml`, folder, files);
  const [only, ...others] = files;
  if (only === undefined) return unwritten(kind, folder);
  if (others.length === 0) return at(kind, only, 'the only one');
  const best = bestOf(kind, data, known, files);
  if (best) return best;
  return {
    ask: `several files hold ${kind}s (${files.map(short).join(', ')}): say which, as --into ${short(files[0] as string)}`,
    files,
  };
}

const filesFor = (kind: EntryKind, known: RecordIndex): readonly string[] =>
  [...known.files.keys()].filter((file) => {
    const role = roleOf(file);
    return role.holds !== 'unknown' && listsOf(role).some((list) => list.kind === kind);
  });

function named(kind: EntryKind, wanted: string, folder: string, files: readonly string[]): Chosen {
  const file = wanted.startsWith(folder) ? wanted : folder + wanted;
  const role = roleOf(file);
  if (role.holds !== 'unknown' && listsOf(role).some((list) => list.kind === kind)) {
    const exists = files.includes(file);
    if (homeOf(kind).in === 'service' && !exists)
      return { ask: `there is no service file ${file}: start it: shellbook add service --help`, files };
    return at(kind, file, 'as told');
  }
  return {
    ask: `${short(file)} holds no ${kind}s${files.length > 0 ? `, expected one of ${files.map(short).join(', ')}` : ''}`,
    files,
  };
}

/** No file of this kind yet. */
function unwritten(kind: EntryKind, folder: string): Chosen {
  const home = homeOf(kind);
  if (home.in === 'service')
    return {
      ask: 'there is no file in services/ yet: start one with shellbook add service --id dc-house --service … --medium dc',
      files: [],
    };
  if (home.in === 'head') return { ask: 'there is no shell.yaml yet', files: [] };
  return at(kind, `${folder}${home.list === 'rules' ? 'house' : home.list}.yaml`, 'new');
}

function bestOf(kind: EntryKind, data: Data, known: RecordIndex, files: readonly string[]): Chosen | undefined {
  const records = known.ofKind(kind);
  if (homeOf(kind).in === 'service') {
    const ends = [data.circuit, data.from, data.to, (data.protection as Data | undefined)?.at].map((id) => String(id ?? ''));
    const near = [...known.records].filter(
      (record) => record.id !== undefined && ends.includes(record.id) && files.includes(record.file),
    );
    const file = near.find((record) => record.id === ends[0])?.file ?? near[0]?.file;
    if (file !== undefined) return at(kind, file, `that is where ${near.find((record) => record.file === file)?.id} is`);
  }
  const stage = data.stage === undefined ? undefined : String(data.stage);
  const ofStage = stage === undefined ? undefined : most(records.filter((record) => String(record.data.stage) === stage));
  if (ofStage !== undefined) return at(kind, ofStage, `that is where stage ${stage} is`);
  const id = String(data.id ?? '');
  const close = records
    .map((record) => ({ record, shared: sharedHead(id, record.id ?? '') }))
    .filter(({ shared }) => shared >= 2);
  const longest = Math.max(0, ...close.map(({ shared }) => shared));
  const file = most(close.filter(({ shared }) => shared === longest).map(({ record }) => record));
  return file === undefined ? undefined : at(kind, file, `that is where ids like ${id} are`);
}

/** The file that most of the records are in. */
function most(records: readonly IndexedRecord[]): string | undefined {
  const counts = new Map<string, number>();
  for (const { file } of records) counts.set(file, (counts.get(file) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

function sharedHead(a: string, b: string): number {
  let length = 0;
  while (length < a.length && a[length] === b[length]) length++;
  return length;
}

function folderOf(kind: EntryKind, known: RecordIndex): string {
  const home = homeOf(kind);
  if (home.in === 'library') return home.list === 'rules' ? 'library/rules/' : 'library/';
  const shell = `shells/${known.shell}/`;
  if (home.in === 'service') return `${shell}services/`;
  return home.in === 'shell' && home.list === 'photos' ? `${shell}photos/` : shell;
}

function at(kind: EntryKind, file: string, why: string): Chosen {
  const { path, bare } = heldList(kind);
  return { place: { file, path, bare, usual: usualStyle(kind) }, why };
}

const short = (file: string): string => file.replace(/^shells\/[^/]+\//u, '');
