import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { UserError } from '../user-error.js';
import { startRepository } from './git/new.js';
import { repositoryOf } from './git/repository.js';
import { layDown, type NewFile } from './lay-down.js';
import { roleOf } from './layout.js';
import { underLock } from './lock.js';
import { placeOf } from './place.js';
import { reason } from './read.js';
import { replaceFile } from './replace.js';

/** The starter files, which lie beside src/ and dist/ alike. */
const STARTERS = fileURLToPath(new URL('../../templates/', import.meta.url));

/** A shell number is a folder's name: the shop's own signs, none that a file system or a command line reads otherwise. */
const SHELL_NAME = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/u;

export interface Laid {
  readonly dir: string;
  /** Files written, relative to `dir`. */
  readonly files: readonly string[];
}

/** What a start that was broken off may have left: it is made anew. */
const STARTED = /^(?:\.git|\.gitignore|\.gitattributes|library|shells|import\.yaml|\.[^/]+\.new)$/u;

/**
 * Lays a store down: shop file, library, an empty shells folder. Git is started where `dir` lies in no work tree yet.
 * Throws {@link UserError} where `dir` is a store already or has anything in it.
 */
export async function layStore(
  dir: string,
  /** Done with the new repository, where one is started. */
  started: (dir: string) => Promise<unknown> = async () => {},
): Promise<Laid & { readonly gitStarted: boolean }> {
  const begin = async (folder: string): Promise<boolean> => {
    if (repositoryOf(folder) !== undefined || !(await startRepository(folder))) return false;
    await started(folder);
    return true;
  };
  if (!existsSync(dir)) return atOneStroke(dir, begin);
  const held = await contentsOf(dir);
  const strange = held.filter((name) => !STARTED.test(name));
  if (strange.length > 0 || held.includes(SHOP_FILE)) {
    throw new UserError(
      `${dir} is not empty (${held.slice(0, 3).join(', ')}): nothing was written. Name a new or an empty folder.`,
    );
  }
  const files = await layStarter(dir);
  return { dir, files, gitStarted: await begin(dir) };
}

/** A folder that is not there yet comes whole, with its repository, or not at all. */
async function atOneStroke(
  dir: string,
  begin: (folder: string) => Promise<boolean>,
): Promise<Laid & { readonly gitStarted: boolean }> {
  const files = await newStoreFiles();
  let gitStarted = false;
  await layDown(
    dir,
    files.map(([name, text]) => ({ path: name, bytes: Buffer.from(text) })),
    async (folder) => {
      gitStarted = await begin(folder);
    },
  );
  return { dir, files: files.map(([name]) => name).sort(), gitStarted };
}

const newStoreFiles = async (): Promise<readonly (readonly [string, string])[]> => [
  ...(await starterFiles('store', {})),
  ['shells/.gitkeep', ''],
];

/** Where a CI job lies that checks the records at every push. */
const CI_FILE = 'check-records.sh';

/** Lays a script down in a new store that checks the records on any machine that builds. */
export async function layCiJob(dir: string): Promise<string> {
  const text = await readFile(path.join(STARTERS, 'ci', path.basename(CI_FILE)), 'utf8');
  await writeFile(path.join(dir, CI_FILE), text, { flag: 'wx', mode: 0o755 });
  return CI_FILE;
}

/**
 * Lays a shell's files down in a store; those in `instead`, by name in its folder, take the place of starter files that hold the same.
 * Throws {@link UserError} where its number cannot be a folder's name, or is taken. */
export async function layShell(root: string, shell: string, instead: ReadonlyMap<string, string> = new Map()): Promise<Laid> {
  if (!SHELL_NAME.test(shell)) {
    throw new UserError(
      `Found the shell number \`${shell}\`, expected letters, digits, \`-\`, \`.\` and \`_\`, beginning with a letter or digit, as QF-007`,
    );
  }
  const dir = path.join(root, 'shells', shell);
  return underLock(root, async () => {
    if (existsSync(dir))
      throw new UserError(`Shell ${shell} is there already, in ${dir}: nothing was written. Choose another number.`);
    const held = new Set([...instead.keys()].map((name) => heldIn(shell, name)));
    const files = await starterFiles('shell', { SHELL: shell }, (name) => !held.has(heldIn(shell, name)));
    for (const [name, text] of instead) files.set(name, text);
    // No link in the place of shells/ leads out of the store.
    await layDown(await placeOf(root, `shells/${shell}`), laidOut(files));
    return { dir, files: [...files.keys()].sort() };
  });
}

const laidOut = (files: ReadonlyMap<string, string>): readonly NewFile[] =>
  [...files].map(([name, text]) => ({ path: name, bytes: Buffer.from(text) }));

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

/** The files of a new store and shell with their examples taken out of the comments, by path in a store. */
export async function exampleTexts(shell: string): Promise<ReadonlyMap<string, string>> {
  const typed = (text: string): string => text.replace(/^# (?=(-| {2,}|[a-z_]+: ?[^A-Z]*$|[a-z_]+:$))/gmu, '');
  const of = async (kind: 'store' | 'shell', folder: string) =>
    [...(await starterFiles(kind, { SHELL: shell }))].map(([name, text]) => [`${folder}${name}`, typed(text)] as const);
  return new Map(
    [...(await of('store', '')), ...(await of('shell', `shells/${shell}/`))].filter(([name]) => name.endsWith('.yaml')),
  );
}

/** Name of each starter file, from its folder, with forward slashes → its text. */
async function starterFiles(
  kind: 'store' | 'shell',
  words: Readonly<Record<string, string>>,
  wanted: (name: string) => boolean = () => true,
): Promise<Map<string, string>> {
  const from = path.join(STARTERS, kind);
  const found = await readdir(from, { recursive: true, withFileTypes: true });
  const files = new Map<string, string>();
  for (const entry of found.filter((one) => one.isFile())) {
    const source = path.join(entry.parentPath ?? entry.path, entry.name);
    // Packages lose files called .gitignore, so the starter has another name.
    const name = path
      .relative(from, source)
      .replace(/^git(?:ignore|attributes)$/u, '.$&')
      .split(path.sep)
      .join('/');
    if (!wanted(name)) continue;
    const text = await readFile(source, 'utf8');
    files.set(
      name,
      text.replace(/\{\{([A-Z]+)\}\}/gu, (whole, word: string) => words[word] ?? whole),
    );
  }
  return files;
}

/** Into a folder that may have a `.git` already. The shop file comes last: without it a folder is no store, and may be tried again. */
async function layStarter(dir: string): Promise<readonly string[]> {
  const files = await newStoreFiles();
  const inOrder = [...files].sort(([a], [b]) => Number(a === SHOP_FILE) - Number(b === SHOP_FILE));
  try {
    await mkdir(dir, { recursive: true });
    for (const [name, text] of inOrder) await replaceFile(await placeOf(dir, name), Buffer.from(text));
  } catch (error) {
    if (error instanceof UserError) throw error;
    throw new UserError(`${dir} cannot be written: ${reason(error)}. No store was started; run the same command again.`);
  }
  return files.map(([name]) => name).sort();
}

const SHOP_FILE = 'shop.yaml';
