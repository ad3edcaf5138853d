import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { UserError } from '../user-error.js';
import { startRepository } from './git/new.js';
import { repositoryOf } from './git/repository.js';
import { roleOf } from './layout.js';

/** The starter files, which lie beside src/ and dist/ alike. */
const STARTERS = fileURLToPath(new URL('../../templates/', import.meta.url));

/** A shell number is a folder's name: the shop's own signs, none that a file system or a command line reads otherwise. */
const SHELL_NAME = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/u;

export interface Laid {
  readonly dir: string;
  /** Files written, relative to `dir`. */
  readonly files: readonly string[];
}

/**
 * Lays a store down: shop file, library, an empty shells folder. Git is started where `dir` lies in no work tree yet.
 * Throws {@link UserError} where `dir` is a store already or has anything in it.
 */
export async function layStore(dir: string): Promise<Laid & { readonly gitStarted: boolean }> {
  const held = await contentsOf(dir);
  if (held.some((name) => name !== '.git')) {
    throw new UserError(
      `${dir} is not empty (${held.slice(0, 3).join(', ')}): nothing was written. Name a new or an empty folder.`,
    );
  }
  const files = await copyStarter('store', dir, {});
  await mkdir(path.join(dir, 'shells'), { recursive: true });
  await writeFile(path.join(dir, 'shells', '.gitkeep'), '');
  const gitStarted = repositoryOf(dir) === undefined && (await startRepository(dir));
  return { dir, files: [...files, 'shells/.gitkeep'], gitStarted };
}

/** Where a CI job lies that checks the records at every push. */
const CI_FILE = '.github/workflows/check-records.yml';

/** Lays the CI job down in a new store, which must be the top of its repository for the job to run. */
export async function layCiJob(dir: string): Promise<string> {
  const text = await readFile(path.join(STARTERS, 'ci', path.basename(CI_FILE)), 'utf8');
  await mkdir(path.dirname(path.join(dir, CI_FILE)), { recursive: true });
  await writeFile(path.join(dir, CI_FILE), text, { flag: 'wx' });
  return CI_FILE;
}

/**
 * Lays a shell's files down in a store; those in `instead`, by name in its folder, take the place of starter files that hold the same.
 * Throws {@link UserError} where its number cannot be a folder's name, or is taken. */
export async function layShell(root: string, shell: string, instead: ReadonlyMap<string, string> = new Map()): Promise<Laid> {
  if (!SHELL_NAME.test(shell)) {
    throw new UserError(
      `Unexpected shell number \`${shell}\`, expected letters, digits, \`-\`, \`.\` and \`_\`, beginning with a letter or digit, as QF-007`,
    );
  }
  const dir = path.join(root, 'shells', shell);
  if (existsSync(dir))
    throw new UserError(`Shell ${shell} is there already, in ${dir}: nothing was written. Choose another number.`);
  const held = new Set([...instead.keys()].map((name) => heldIn(shell, name)));
  const files = await copyStarter('shell', dir, { SHELL: shell }, (name) => !held.has(heldIn(shell, name)));
  for (const [name, text] of instead) {
    await mkdir(path.dirname(path.join(dir, name)), { recursive: true });
    await writeFile(path.join(dir, name), text, { flag: 'wx' });
  }
  return { dir, files: [...files, ...instead.keys()].sort() };
}

/** `members.yaml` and `members-floor.yaml` hold the same. */
function heldIn(shell: string, name: string): string {
  const role = roleOf(`shells/${shell}/${name}`);
  return role.holds === 'list' ? role.list : role.holds;
}

async function contentsOf(dir: string): Promise<readonly string[]> {
  try {
    return await readdir(dir);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return [];
    if (code === 'ENOTDIR') throw new UserError(`${dir} is a file, expected a new or an empty folder`);
    throw error;
  }
}

async function copyStarter(
  kind: 'store' | 'shell',
  dir: string,
  words: Readonly<Record<string, string>>,
  wanted: (name: string) => boolean = () => true,
): Promise<readonly string[]> {
  const from = path.join(STARTERS, kind);
  const found = await readdir(from, { recursive: true, withFileTypes: true });
  const files: string[] = [];
  for (const entry of found.filter((one) => one.isFile())) {
    const source = path.join(entry.parentPath ?? entry.path, entry.name);
    // Packages lose files called .gitignore, so the starter has another name.
    const name = path.relative(from, source).replace(/^gitignore$/u, '.gitignore');
    if (!wanted(name.split(path.sep).join('/'))) continue;
    const text = await readFile(source, 'utf8');
    await mkdir(path.dirname(path.join(dir, name)), { recursive: true });
    const filled = text.replace(/\{\{([A-Z]+)\}\}/gu, (whole, word: string) => words[word] ?? whole);
    await writeFile(path.join(dir, name), filled, { flag: 'wx' });
    files.push(name.split(path.sep).join('/'));
  }
  return files.sort();
}
