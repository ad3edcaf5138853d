import type { Node } from 'yaml';
import type { StoreText } from '../model/load-types.js';
import { UserError } from '../user-error.js';
import { appendRecords, type Comments, type ListPlace } from './append.js';
import { setValue } from './change.js';
import { type EntryKind, homeOf } from './homes.js';
import type { Change, Plan } from './plan.js';
import { identity, type KnownFile, type KnownRecord, RecordIndex } from './record-index.js';
import { sameTyped } from './same.js';
import { isBlank, Splices } from './splices.js';
import type { Data } from './yaml-text.js';

/** What is to be written to one file. */
interface FilePlan {
  readonly added: { readonly place: ListPlace; readonly data: Data }[];
  readonly changed: { readonly record: KnownRecord; readonly data: Data; readonly changes: readonly Change[] }[];
}

/**
 * The new text of every file that a plan changes, by path in the store. Each was read again and holds what was planned and all that
 * it held before. Throws {@link UserError} where a file has a form that cannot be changed without loss.
 */
export function textsOf(
  kind: EntryKind,
  plan: Pick<Plan, 'added' | 'changed'>,
  known: RecordIndex,
  comments?: Comments,
): ReadonlyMap<string, string> {
  const files = new Map<string, FilePlan>();
  const of = (file: string): FilePlan => {
    const one = files.get(file) ?? { added: [], changed: [] };
    files.set(file, one);
    return one;
  };
  for (const one of plan.added) of(one.place.file).added.push(one);
  for (const one of plan.changed) of(one.record.file).changed.push(one);
  return new Map([...files].map(([file, wanted]) => [file, textOf(kind, file, wanted, known, comments)]));
}

function textOf(kind: EntryKind, file: string, { added, changed }: FilePlan, known: RecordIndex, comments?: Comments): string {
  const old = known.files.get(file);
  if (old && old.open === undefined)
    throw new UserError(`${file} is not whole YAML, so nothing was written to it. See: shellbook check`);
  const splices = new Splices(old?.text ?? '');
  for (const { record, changes } of changed)
    for (const change of changes) setValue(splices, record.node, change.path, change.new);
  const [first] = added;
  const edited = splices.apply();
  const text = first
    ? appendRecords(
        first.place,
        old || edited !== '' ? edited : null,
        added.map(({ data }) => data),
        comments,
        splices.any ? undefined : readRoot(old),
      )
    : edited;
  prove(
    kind,
    file,
    text,
    [...added, ...changed].map(({ data }) => data),
    known,
  );
  return text;
}

/** The file’s outermost node as it was read; undefined where it must be read again. */
function readRoot(old: KnownFile | undefined): Node | null | undefined {
  const root = old?.open?.document.root;
  return root === undefined || (root !== null && isBlank(root)) ? undefined : root;
}

/** Reads the new text: every record that was there is there, and what was written reads as it was meant. */
function prove(kind: EntryKind, file: string, text: string, written: readonly Data[], known: RecordIndex): void {
  const now = new RecordIndex(textFile(file, text), known.shell, known.linked);
  const before = known.records.filter((record) => record.file === file);
  const after = new Map(now.records.map((record) => [`${record.kind} ${record.id}`, record.data]));
  const meant = new Map(written.map((data) => [`${kind} ${identity(kind, data)}`, data]));
  const isLost = (record: KnownRecord): boolean => {
    const key = `${record.kind} ${record.id}`;
    return !meant.has(key) && !sameTyped(record.data, after.get(key));
  };
  const wrong = [...meant].find(([key, data]) => !sameTyped(data, after.get(key)))?.[0] ?? before.find(isLost)?.id;
  if (wrong === undefined) return;
  const where = homeOf(kind).in === 'library' ? 'the library' : 'the shell';
  throw new UserError(
    `${file} has a form that cannot be changed without loss at ${wrong}: nothing was written. Change it by hand, then check ${where}`,
  );
}

const textFile = (file: string, text: string): StoreText => ({ root: '', files: new Map([[file, text]]), photos: new Map() });
