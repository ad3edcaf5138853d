import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { eachBlob } from './git/blobs.js';
import { askGit, requireRepository } from './git/look.js';
import { textOf } from './git/repository.js';
import { listTree, type TreeFile } from './git/tree.js';
import { takenAs } from './taken.js';

/** What is laid out of a store. */
export interface LaidOutStore {
  readonly commit: string;
  /** Of other shells no photos are laid out. */
  readonly shell: string;
  /** Whether tags on that very commit count: they may be younger than what was printed from it. */
  readonly withTag: boolean;
}

/**
 * Lays a store out in an empty folder as it stood at a commit, with the history that led there: its files out of Git's objects, and beside
 * them a repository of our own that borrows those objects, stands on that commit and has the tags. Nothing of the other's settings, hooks
 * or filters takes part. Gives the store's folder in it.
 * @throws UserError where the commit is not there, or something in it cannot be laid out
 */
export async function laidOutAt(root: string, { commit, shell, withTag }: LaidOutStore, folder: string): Promise<string> {
  const { prefix, commonDir, objects } = requireRepository(root);
  const store = path.join(folder, prefix);
  const files = (await listTree(root, commit)).filter((file) => isWanted(file, shell));
  const targets = new Map<string, string[]>();
  for (const file of files) targets.set(file.blob, [...(targets.get(file.blob) ?? []), placeOf(store, file)]);
  for (const dir of new Set([...targets.values()].flat().map((one) => path.dirname(one)))) await mkdir(dir, { recursive: true });
  const writing: Promise<void>[] = [];
  await eachBlob(root, [...targets.keys()], (blob, bytes) => {
    for (const target of targets.get(blob) ?? []) writing.push(writeFile(target, bytes));
  });
  await Promise.all(writing);
  const git = path.join(folder, '.git');
  for (const inside of ['objects/info', 'refs']) await mkdir(path.join(git, inside), { recursive: true });
  const extension = objects === 'sha256' ? '[extensions]\n\tobjectformat = sha256\n' : '';
  const shallow = textOf(path.join(commonDir, 'shallow'));
  await Promise.all([
    writeFile(path.join(git, 'objects', 'info', 'alternates'), `${path.join(commonDir, 'objects')}\n`),
    writeFile(path.join(git, 'HEAD'), `${commit}\n`),
    writeFile(path.join(git, 'config'), `[core]\n\trepositoryformatversion = ${extension === '' ? 0 : 1}\n${extension}`),
    writeFile(path.join(git, 'packed-refs'), await tagsOf(root, commit, withTag)),
    ...(shallow === undefined ? [] : [writeFile(path.join(git, 'shallow'), shallow)]),
  ]);
  return store;
}

function isWanted({ path: file, link }: TreeFile, shell: string): boolean {
  const taken = takenAs(file);
  return !link && taken !== undefined && (taken === 'yaml' || file.startsWith(`shells/${shell}/`));
}

/** A tree of Git's may be made by hand: what leads out of the folder, or into Git's own, is not followed. */
function placeOf(store: string, { path: file }: TreeFile): string {
  const target = path.resolve(store, file);
  const inside = path.relative(store, target).split(path.sep);
  if (inside.some((part) => part === '..' || part === '' || /^\.git$/iu.test(part)) || path.isAbsolute(inside.join(path.sep)))
    throw new UserError(`the store holds a file \`${file}\`, which leads out of its folder`);
  return target;
}

/** As Git packs its references (`git help pack-refs`). */
async function tagsOf(root: string, commit: string, withTag: boolean): Promise<string> {
  const format = ['%(objectname)', '%(*objectname)', '%(refname)'].join('%09');
  const told = await askGit(root, ['for-each-ref', '--sort=refname', `--format=${format}`, 'refs/tags/']);
  const lines = told.split('\n').flatMap((line) => {
    const [object = '', peeled = '', name = ''] = line.split('\t');
    const standsOn = peeled === '' ? object : peeled;
    if (name === '' || (!withTag && standsOn === commit)) return [];
    return [`${object} ${name}`, ...(peeled === '' ? [] : [`^${peeled}`])];
  });
  return `# pack-refs with: peeled fully-peeled sorted \n${lines.map((line) => `${line}\n`).join('')}`;
}
