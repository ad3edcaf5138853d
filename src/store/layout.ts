import { LIBRARY_LISTS, type LibraryList, SHELL_LISTS, type ShellList } from '../records/lists.js';

export { LIBRARY_LISTS, type LibraryList, SHELL_LISTS, type ShellList } from '../records/lists.js';

import { nearest } from '../source/nearest.js';

/** What the shop's sheets call things: no record, and never looked at but to read a sheet. */
export const COLUMNS_FILE = 'import.yaml';

/** Keys that the shop signs with: no record, so that a new key leaves every shell's record as it was. */
export const KEYS_FILE = 'keys.yaml';

/** What a file of the store holds. */
export type FileRole =
  | { readonly holds: 'shop' }
  | { readonly holds: 'columns' }
  | { readonly holds: 'keys' }
  | { readonly holds: 'library'; readonly list: LibraryList }
  | { readonly holds: 'shell'; readonly shell: string }
  | { readonly holds: 'service'; readonly shell: string }
  | { readonly holds: 'list'; readonly shell: string; readonly list: ShellList };

/** Role of a file by its path in the store, or what to call it instead. */
export function roleOf(
  path: string,
): FileRole | { readonly holds: 'unknown'; readonly message: string; readonly shell?: string } {
  if (path === 'shop.yaml') return { holds: 'shop' };
  if (path === COLUMNS_FILE) return { holds: 'columns' };
  if (path === KEYS_FILE) return { holds: 'keys' };
  const [top = '', second = '', ...rest] = path.split('/');
  if (top === 'library') return libraryRole(path, second, rest);
  if (top === 'shells' && rest.length > 0) return shellRole(path, second, rest);
  return unknown(path, ['shop.yaml'], 'shop.yaml, library/ and shells/<shell>/');
}

function libraryRole(path: string, name: string, rest: readonly string[]): ReturnType<typeof roleOf> {
  if (name === 'rules' && rest.length === 1 && stemOf(rest[0] as string) !== undefined)
    return { holds: 'library', list: 'rules' };
  const list = rest.length === 0 ? listOf(name, LIBRARY_LISTS) : undefined;
  if (list) return { holds: 'library', list };
  const known = LIBRARY_LISTS.map((one) => `library/${one}.yaml`);
  return unknown(path, known, `${namesOf(LIBRARY_LISTS)} or rules/*.yaml in library/`);
}

function shellRole(path: string, shell: string, rest: readonly string[]): ReturnType<typeof roleOf> {
  const [name = '', inner = ''] = rest;
  if (rest.length === 1) {
    if (name === 'shell.yaml') return { holds: 'shell', shell };
    const list = listOf(name, SHELL_LISTS);
    if (list) return { holds: 'list', shell, list };
  }
  if (rest.length === 2 && name === 'services' && stemOf(inner) !== undefined) return { holds: 'service', shell };
  if (rest.length === 2 && name === 'photos' && listOf(inner, ['photos'])) return { holds: 'list', shell, list: 'photos' };
  const folder = `shells/${shell}/`;
  const known = ['shell', ...SHELL_LISTS, 'photos/photos'].map((one) => `${folder}${one}.yaml`);
  const wanted = `shell.yaml, ${namesOf(SHELL_LISTS)}, services/*.yaml or photos/photos.yaml in ${folder}`;
  return { ...unknown(path, known, wanted), shell };
}

/** `members-floor.yaml` is one of the `members` files. */
function listOf<List extends string>(name: string, lists: readonly List[]): List | undefined {
  const stem = stemOf(name);
  return stem === undefined ? undefined : lists.find((list) => stem === list || new RegExp(`^${list}[^a-z]`, 'u').test(stem));
}

/** Name without `.yaml`; undefined where it ends otherwise. */
export const stemOf = (name: string): string | undefined => (name.endsWith('.yaml') ? name.slice(0, -5) : undefined);

const namesOf = (lists: readonly string[]): string => lists.map((list) => `${list}.yaml`).join(', ');

function unknown(
  path: string,
  known: readonly string[],
  wanted: string,
): { readonly holds: 'unknown'; readonly message: string } {
  const asYaml = path.replace(/\.yml$/u, '.yaml');
  const renamed = asYaml !== path && roleOf(asYaml).holds !== 'unknown' ? asYaml : nearest(asYaml, known, 1)[0];
  const advice = renamed === undefined ? `expected ${wanted}` : `expected \`${renamed}\`: rename it`;
  return { holds: 'unknown', message: `Found the file name \`${path}\`, which is not read: ${advice}` };
}
