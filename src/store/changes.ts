import { type Day, dayOf } from '../quantity/day.js';
import { readBlobs } from './git/blobs.js';
import { gitText, inTop, requireRepository } from './git/look.js';
import { isUnborn } from './git/repository.js';
import { pathsOf } from './history.js';
import { decode, takenAs } from './taken.js';

/** A file of the store that differs between two trees; its text absent where it was not there, or is no record file. */
export interface FileChange {
  /** Relative to the store. */
  readonly path: string;
  readonly before?: string;
  readonly after?: string;
}

/** A commit with what it changed. */
export interface CommitChange {
  readonly commit: string;
  /** ISO 8601, of the author. */
  readonly date: string;
  readonly author: string;
  readonly subject: string;
  readonly files: readonly RawChange[];
}

/** A file that a commit changed, by Git’s ids of its contents. */
export interface RawChange {
  readonly path: string;
  readonly before?: string;
  readonly after?: string;
}

/** Record files and pictures of a shell, with library and shop, that differ between two commits. */
export async function changedFiles(root: string, from: string, to: string, shell: string): Promise<readonly FileChange[]> {
  const raw = rawChanges(
    await gitText(root, [
      'diff-tree',
      '-r',
      '-z',
      '--raw',
      '--no-abbrev',
      '--no-renames',
      ...relative(root),
      from,
      to,
      '--',
      ...inTop(root, pathsOf(shell)),
    ]),
  );
  const taken = raw.filter(({ path }) => takenAs(path) !== undefined);
  const texts = await textsOf(
    root,
    taken.filter(({ path }) => takenAs(path) === 'yaml'),
  );
  return taken.map(({ path, before, after }) => ({ path, ...textIn('before', before, texts), ...textIn('after', after, texts) }));
}

const textIn = (key: 'before' | 'after', blob: string | undefined, texts: ReadonlyMap<string, string>) => {
  const text = blob === undefined ? undefined : (texts.get(blob) ?? blob);
  return text === undefined ? {} : { [key]: text };
};

/** Commits that touched a shell’s record, newest first, with the files that each changed. Of a merge, its branches tell. */
export async function commitChanges(root: string, shell: string): Promise<readonly CommitChange[]> {
  if (isUnborn(requireRepository(root))) return [];
  const format = '--format=%x1e%H%x1f%aI%x1f%an%x1f%s%x1f';
  const told = await gitText(root, [
    'log',
    '-z',
    '--raw',
    '--no-abbrev',
    '--no-renames',
    ...relative(root),
    format,
    'HEAD',
    '--',
    ...inTop(root, pathsOf(shell)),
  ]);
  return told.split('\u001e').flatMap((part) => {
    const [commit, date, author, subject, files] = part.split('\u001f');
    if (!commit || date === undefined) return [];
    return [{ commit, date, author: author ?? '', subject: subject ?? '', files: rawChanges(files ?? '') }];
  });
}

/** Paths from the store. */
function relative(root: string): readonly string[] {
  const { prefix } = requireRepository(root);
  return prefix === '' ? [] : [`--relative=${prefix}`];
}

const NOTHING = /^0+$/u;

/** `:100644 100644 OLD NEW M\0path\0…` */
function rawChanges(text: string): readonly RawChange[] {
  const parts = text.split('\0').filter((part) => part.trim() !== '');
  const changes: RawChange[] = [];
  for (let i = 0; i + 1 < parts.length; i += 2) {
    const [, before = '', after = ''] = /:\d+ \d+ ([0-9a-f]+) ([0-9a-f]+) \w+$/u.exec(parts[i]?.trim() ?? '') ?? [];
    if (before === '') continue;
    changes.push({
      path: parts[i + 1] as string,
      ...(NOTHING.test(before) ? {} : { before }),
      ...(NOTHING.test(after) ? {} : { after }),
    });
  }
  return changes;
}

/** Texts by Git’s id; one that is no UTF-8 is left out. */
async function textsOf(root: string, changes: readonly RawChange[]): Promise<ReadonlyMap<string, string>> {
  const blobs = changes.flatMap(({ before, after }) => [before, after]).filter((blob) => blob !== undefined);
  const texts = new Map<string, string>();
  for (const [blob, bytes] of await readBlobs(root, blobs)) {
    const text = decode(bytes);
    if (text.refused === undefined) texts.set(blob, text.text);
  }
  return texts;
}

/** Who wrote a line, and when. */
export interface Author {
  readonly commit: string;
  readonly author: string;
  /** ISO 8601 day. */
  readonly date: string;
}

/** Author of each line of a file as it stands at `to`, from line 1; of lines that were there at `from`, nobody. */
export async function lineAuthors(
  root: string,
  from: string,
  to: string,
  file: string,
): Promise<readonly (Author | undefined)[]> {
  const told = await gitText(root, ['blame', '--porcelain', `${from}..${to}`, '--', ...inTop(root, [file])]);
  const commits = new Map<string, { author: string; time: number; zone: string; old: boolean }>();
  const lines: (Author | undefined)[] = [];
  let current: { author: string; time: number; zone: string; old: boolean } | undefined;
  let at: { commit: string; line: number } | undefined;
  for (const line of told.split('\n')) {
    const head = /^([0-9a-f]{40,64}) \d+ (\d+)/u.exec(line);
    if (head) {
      at = { commit: head[1] as string, line: Number(head[2]) };
      current = commits.get(at.commit) ?? { author: '', time: 0, zone: '+0000', old: false };
      commits.set(at.commit, current);
    } else if (line.startsWith('\t') && at && current) {
      if (!current.old)
        lines[at.line - 1] = { commit: at.commit, author: current.author, date: dayThere(current.time, current.zone) };
    } else if (current) {
      const [key, ...rest] = line.split(' ');
      if (key === 'author') current.author = rest.join(' ');
      else if (key === 'author-time') current.time = Number(rest[0]);
      else if (key === 'author-tz') current.zone = rest[0] ?? '+0000';
      else if (key === 'boundary') current.old = true;
    }
  }
  return lines;
}

/** The day by the author’s own calendar. */
function dayThere(seconds: number, zone: string): Day {
  const [, sign, hours, minutes] = /^([+-])(\d\d)(\d\d)$/u.exec(zone) ?? [];
  const offset = (Number(hours ?? 0) * 60 + Number(minutes ?? 0)) * (sign === '-' ? -60 : 60);
  return dayOf(new Date((seconds + offset) * 1000).toISOString());
}
