import type { Node } from 'yaml';
import type { StoreText } from '../model/load-types.js';
import { identityOf } from '../records/identity.js';
import { UserError } from '../user-error.js';
import { appendRecords, type Comments, type ListPlace } from './append.js';
import { setValue } from './change.js';
import { type EntryKind, homeOf } from './homes.js';
import { type IndexedFile, type IndexedRecord, RecordIndex } from './record-index.js';
import { sameTyped } from './same.js';
import type { CellChange, SheetPlan } from './sheet-changes.js';
import { isBlank, Splices } from './splices.js';
import type { Data } from './yaml-text.js';

/** What is to be written to one file. */
interface FilePlan {
  readonly added: { readonly place: ListPlace; readonly data: Data }[];
  readonly changed: { readonly record: IndexedRecord; readonly data: Data; readonly changes: readonly CellChange[] }[];
}

/**
 * The new text of every file that a plan changes, by path in the store. Each was read again and holds what was planned and all that
 * it held before. A list that would become larger than `mostBytes` goes on in a further file of its kind. Throws {@link UserError} where a
 * file has a form that cannot be changed without loss.
 */
export function textsOf(
  kind: EntryKind,
  plan: { readonly [Part in 'added' | 'changed']: readonly Omit<SheetPlan[Part][number], 'kind'>[] },
  known: RecordIndex,
  comments?: Comments,
  mostBytes = Number.POSITIVE_INFINITY,
): ReadonlyMap<string, string> {
  const files = new Map<string, FilePlan>();
  const of = (file: string): FilePlan => {
    const one = files.get(file) ?? { added: [], changed: [] };
    files.set(file, one);
    return one;
  };
  for (const one of plan.added) of(one.place.file).added.push(one);
  for (const one of plan.changed) of(one.record.file).changed.push(one);
  const texts = new Map<string, string>();
  for (const [file, wanted] of files) {
    let [name, left]: [string, FilePlan] = [file, wanted];
    for (;;) {
      const text = textOf(kind, name, left, known, comments);
      const fits = fitting(left, text, known.files.get(name)?.text ?? '', mostBytes);
      if (fits === left.added.length) {
        texts.set(name, text);
        break;
      }
      if (fits + left.changed.length > 0)
        texts.set(name, textOf(kind, name, { ...left, added: left.added.slice(0, fits) }, known, comments));
      name = nextName(name, (one) => known.files.has(one) || texts.has(one) || files.has(one));
      const place = { ...(left.added[fits] as FilePlan['added'][number]).place, file: name };
      left = { added: left.added.slice(fits).map(({ data }) => ({ place, data })), changed: [] };
    }
  }
  return texts;
}

const bytesOf = (text: string): number => new TextEncoder().encode(text).length;

/** Of what a file stays below its most, so that the next record of a usual size does not go over it. */
const FULL = 0.9;

/** How many of the records that are to be added a file takes, for lists that may be in several files; all where it is no such list. */
function fitting({ added }: FilePlan, text: string, old: string, mostBytes: number): number {
  const bytes = bytesOf(text);
  if (bytes <= mostBytes || added.length < 2 || !added.every(({ place }) => place.bare)) return added.length;
  const before = bytesOf(old);
  const share = (mostBytes * FULL - before) / Math.max(1, bytes - before);
  return Math.max(before === 0 ? 1 : 0, Math.min(added.length - 1, Math.floor(added.length * share)));
}

/** `members-2.yaml` after `members.yaml`: the first of that row that is not taken. */
function nextName(file: string, isTaken: (name: string) => boolean): string {
  const [, stem = file, number] = /^(.*?)(?:-(\d+))?\.yaml$/u.exec(file) ?? [];
  for (let i = Number(number ?? 1) + 1; ; i++) {
    const name = `${stem}-${i}.yaml`;
    if (!isTaken(name)) return name;
  }
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
function readRoot(old: IndexedFile | undefined): Node | null | undefined {
  const root = old?.open?.document.root;
  return root === undefined || (root !== null && isBlank(root)) ? undefined : root;
}

/** Reads the new text: every record that was there is there, and what was written reads as it was meant. */
function prove(kind: EntryKind, file: string, text: string, written: readonly Data[], known: RecordIndex): void {
  const now = new RecordIndex(textFile(file, text), known.shell, known.linked);
  const before = known.records.filter((record) => record.file === file);
  const after = new Map(now.records.map((record) => [`${record.kind} ${record.id}`, record.data]));
  const meant = new Map(written.map((data) => [`${kind} ${identityOf(kind, data)}`, data]));
  const isLost = (record: IndexedRecord): boolean => {
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
