import {
  copyFileSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { ownFolder } from '../own/folder.js';
import { damaged } from './failed.js';
import { headOf, type Repository } from './repository.js';

/**
 * A repository as we look at it: a folder of our own that has the other's references and objects behind links, and settings of our
 * own. Git is run in it and never in the other, so nothing of the other's settings, attributes, hooks, filters, replacements or
 * submodules is so much as read, whatever the next version of Git may bring. Whose files they are does not matter then either.
 */
export interface GitView {
  readonly folder: string;
  readonly objects: string;
}

const views = new Map<string, { readonly folder: string; head: string }>();

/** The view, made at the first question and set right before each: `HEAD` may have moved. Throws {@link GitFailed}. */
export function viewOf(repository: Repository): GitView {
  const found = headOf(repository);
  const head = `${'ref' in found ? `ref: ${found.ref}` : found.commit}\n`;
  let view = views.get(repository.gitDir);
  if (view === undefined || !existsSync(path.join(view.folder, 'config'))) {
    view = { folder: make(repository, head), head };
    views.set(repository.gitDir, view);
  }
  for (const name of ['shallow', 'packed-refs']) mirror(path.join(repository.commonDir, name), path.join(view.folder, name));
  if (view.head !== head) {
    // At one stroke: another Git may be reading it.
    writeFileSync(path.join(view.folder, 'HEAD.new'), head);
    renameSync(path.join(view.folder, 'HEAD.new'), path.join(view.folder, 'HEAD'));
    view.head = head;
  }
  return { folder: view.folder, objects: path.join(repository.commonDir, 'objects') };
}

function make({ commonDir, top, objects, refs }: Repository, head: string): string {
  for (const needed of ['objects', 'refs'])
    if (!existsSync(path.join(commonDir, needed))) throw damaged(top, `the folder ${needed} is missing`);
  refuseSpecial(commonDir, top);
  const { folder } = ownFolder('git');
  mkdirSync(path.join(folder, 'objects'));
  symlinkSync(path.join(commonDir, 'refs'), path.join(folder, 'refs'), 'junction');
  if (refs === 'reftable') symlinkSync(path.join(commonDir, 'reftable'), path.join(folder, 'reftable'), 'junction');
  const extensions = [
    ...(objects === 'sha256' ? ['\tobjectformat = sha256'] : []),
    ...(refs === 'reftable' ? ['\trefstorage = reftable'] : []),
  ];
  const settings = [
    '[core]',
    `\trepositoryformatversion = ${extensions.length > 0 ? 1 : 0}`,
    '\tbare = true',
    // What was worked out beforehand may have been made up: only the objects themselves count.
    '\tcommitGraph = false',
    '\tmultiPackIndex = false',
    ...(extensions.length > 0 ? ['[extensions]', ...extensions] : []),
  ];
  writeFileSync(path.join(folder, 'HEAD'), head);
  writeFileSync(path.join(folder, 'config'), `${settings.join('\n')}\n`);
  return folder;
}

/** A file that may come and go, shown where it is there; copied where the system makes no links. */
function mirror(from: string, to: string): void {
  if (!existsSync(from)) {
    rmSync(to, { force: true });
    return;
  }
  if (lstatSync(to, { throwIfNoEntry: false })?.isSymbolicLink()) return;
  try {
    symlinkSync(from, to, 'file');
  } catch {
    copyFileSync(from, to);
  }
}

/** A pipe in the place of a pack or a reference would hold Git for ever. Loose objects are many, and are left to Git. */
function refuseSpecial(commonDir: string, top: string): void {
  for (const inside of ['.', 'refs', 'objects/pack', 'objects/info'])
    for (const entry of entriesIn(path.join(commonDir, inside), inside === 'refs'))
      if (!entry.isFile() && !entry.isDirectory() && !entry.isSymbolicLink())
        throw damaged(top, `${path.join(inside, entry.name)} in Git’s folder is not a file`);
}

function entriesIn(folder: string, recursive: boolean) {
  try {
    return readdirSync(folder, { withFileTypes: true, recursive });
  } catch {
    return [];
  }
}
