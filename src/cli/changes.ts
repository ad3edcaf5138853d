import { type FieldChange, type RecordChange, recordDifferences } from '../history/differences.js';
import { recordsIn } from '../history/records-in.js';
import type { Person } from '../records/index.js';
import { type Author, changedFiles, type FileChange, lineAuthors } from '../store/changes.js';
import { takenAs } from '../store/taken.js';

/** A record that differs, with who changed it and when, where Git knows. */
export interface SignedChange extends RecordChange {
  readonly by?: Author;
  /** In the order of `fields`. */
  readonly fieldsBy: readonly (Author | undefined)[];
}

/** What differs in a shell’s record, with library and shop, between two commits. */
export async function changesBetween(root: string, from: string, to: string, shell: string): Promise<readonly SignedChange[]> {
  const files = await changedFiles(root, from, to, shell);
  const changes = changesIn(files);
  const touched = [...new Set(changes.flatMap(({ now }) => now?.file ?? []))];
  const authors = new Map<string, readonly (Author | undefined)[]>();
  for (const file of touched) authors.set(file, await lineAuthors(root, from, to, file));
  return changes.map((change) => {
    const at = (path: FieldChange['path']): Author | undefined =>
      change.now && authors.get(change.now.file)?.[change.now.lineOf(path) - 1];
    const fieldsBy = change.fields.map(({ path }) => at(path));
    const by = change.change === 'added' ? at([]) : latest(fieldsBy);
    return { ...change, fieldsBy, ...(by ? { by } : {}) };
  });
}

const latest = (authors: readonly (Author | undefined)[]): Author | undefined =>
  authors.reduce((a, b) => (a === undefined || (b !== undefined && b.date > a.date) ? b : a), undefined);

/** What differs in some files, by record: a record that moved from one to another has not changed. */
function changesIn(files: readonly FileChange[]): readonly RecordChange[] {
  const yaml = files.filter(({ path }) => takenAs(path) === 'yaml');
  const of = (side: 'before' | 'after') =>
    yaml.flatMap((file) => (file[side] === undefined ? [] : recordsIn(file.path, file[side])));
  const pictures = files
    .filter(({ path }) => takenAs(path) === 'photo')
    .map(({ path, before, after }): RecordChange => {
      const change = before === undefined ? 'added' : after === undefined ? 'removed' : 'changed';
      return {
        kind: 'picture',
        id: path.replace(/^shells\/[^/]+\/photos\//u, ''),
        change,
        fields: change === 'changed' ? [{ path: ['contents'], from: 'one', to: 'another' }] : [],
      };
    });
  return [...recordDifferences(of('before'), of('after')), ...pictures];
}

/** `K7` where the library has a person of the author’s name, else the name. */
export function personText(author: string, people: ReadonlyMap<string, Person>): string {
  return [...people.values()].find(({ name }) => name === author)?.id ?? author;
}
