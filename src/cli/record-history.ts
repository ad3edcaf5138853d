import { type FieldChange, fieldChanges } from '../history/differences.js';
import { type RecordThen, recordsIn } from '../history/records-in.js';
import { recordSlice, sliceData } from '../history/slice.js';
import { dayOf } from '../quantity/day.js';
import { type CommitChange, commitChanges, type RawChange } from '../store/changes.js';
import { eachBlob, readBlobs } from '../store/git/blobs.js';
import { takenAs } from '../store/taken.js';
import type { SignedChange } from './changes.js';

/** What became of one record, newest first: each commit in which it came, changed or went. */
export async function historyOf(root: string, shell: string, id: string): Promise<readonly SignedChange[]> {
  const commits = (await commitChanges(root, shell)).map((commit) => ({ ...commit, files: commit.files.filter(isRecordFile) }));
  const slices = await slicesOf(root, commits, shell, id);
  const steps: SignedChange[] = [];
  for (const commit of commits) {
    const side = (key: 'before' | 'after') => commit.files.find((file) => slices.has(file[key] ?? ''));
    const [old, now] = [side('before'), side('after')];
    if ((!old && !now) || slices.get(old?.before ?? '') === slices.get(now?.after ?? '')) continue;
    const step = await stepOf(root, id, commit, { old, now, slices });
    if (step) steps.push(step);
  }
  // Only its coming and going is read whole; between them it was of the same kind.
  const kind = steps.find((step) => step.kind !== 'part')?.kind ?? 'part';
  return steps.map((step) => ({ ...step, kind }));
}

const isRecordFile = ({ path }: RawChange): boolean => takenAs(path) === 'yaml';

/** Git’s id of each version of a file that has the record → the record in it, as text. */
async function slicesOf(
  root: string,
  commits: readonly CommitChange[],
  shell: string,
  id: string,
): Promise<ReadonlyMap<string, string>> {
  const paths = new Map<string, string>();
  for (const { files } of commits)
    for (const { path, before, after } of files)
      for (const blob of [before, after]) if (blob !== undefined) paths.set(blob, path);
  const idBytes = bytesAsText(Buffer.from(id, 'utf8'));
  // Ids that are not typed: the shell’s own, a sign-off’s.
  const made = id === shell || id.includes('/');
  const slices = new Map<string, string>();
  await eachBlob(root, [...paths.keys()], (blob, bytes) => {
    const found = id === shell ? undefined : recordSlice(bytesAsText(bytes), idBytes);
    const record = found === undefined && made ? recordOf(paths.get(blob) as string, bytes, id) : undefined;
    const slice = found === undefined ? record && JSON.stringify(record.data) : Buffer.from(found, 'latin1').toString('utf8');
    if (slice !== undefined) slices.set(blob, slice);
  });
  return slices;
}

/** A sign a byte: thousands of versions are looked through without reading them as text. */
const bytesAsText = (bytes: Buffer): string => bytes.toString('latin1');

const recordOf = (path: string, bytes: Buffer | undefined, id: string): RecordThen | undefined =>
  bytes && recordsIn(path, bytes.toString('utf8')).find((one) => one.id === id && one.kind !== 'file');

interface Sides {
  readonly old: RawChange | undefined;
  readonly now: RawChange | undefined;
  readonly slices: ReadonlyMap<string, string>;
}

async function stepOf(
  root: string,
  id: string,
  commit: CommitChange,
  { old, now, slices }: Sides,
): Promise<SignedChange | undefined> {
  const read = (blob: string | undefined): unknown => sliceData(slices.get(blob ?? '') ?? '');
  let [from, to] = [read(old?.before), read(now?.after)];
  let kind = 'part';
  if (!old || !now || from === undefined || to === undefined) {
    const blobs = await readBlobs(
      root,
      [old?.before, now?.after].filter((blob) => blob !== undefined),
    );
    const [was, is] = [
      recordOf(old?.path ?? '', blobs.get(old?.before ?? ''), id),
      recordOf(now?.path ?? '', blobs.get(now?.after ?? ''), id),
    ];
    kind = (is ?? was)?.kind ?? kind;
    [from, to] = [was?.data, is?.data];
  }
  const fields: readonly FieldChange[] = old && now ? fieldChanges(from, to) : [];
  if (old && now && fields.length === 0) return undefined;
  const by = { commit: commit.commit, author: commit.author, date: dayOf(commit.date) };
  return { kind, id, change: !old ? 'added' : !now ? 'removed' : 'changed', fields, by, fieldsBy: fields.map(() => by) };
}
