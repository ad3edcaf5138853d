import { KIND_NAMES, kindOf, LIBRARY, LISTED } from './kinds.js';
import type { KindName, LibraryKind, ListedKind } from './names.js';

type Lists<Table> = {
  [K in keyof Table]: Table[K] extends { home: { in: 'library' | 'shell'; list: infer L } } ? L : never;
}[keyof Table];

/** Lists of the library and of a shell, by file name. */
export type LibraryList = Lists<typeof LIBRARY>;
export type ShellList = Lists<typeof LISTED>;

const listOf = (kind: KindName, home: 'library' | 'shell'): readonly string[] => {
  const { home: own } = kindOf(kind);
  return own.in === home ? [own.list] : [];
};

/** Rules of the library lie in a folder of their own. */
export const LIBRARY_LISTS = Object.keys(LIBRARY)
  .flatMap((kind) => listOf(kind as LibraryKind, 'library'))
  .filter((list) => list !== 'rules') as readonly Exclude<LibraryList, 'rules'>[];
/** Photos of a shell lie in a folder of their own. */
export const SHELL_LISTS = Object.keys(LISTED)
  .flatMap((kind) => listOf(kind as ListedKind, 'shell'))
  .filter((list) => list !== 'photos') as readonly Exclude<ShellList, 'photos'>[];

/** Which kind of record a list of the library or of a shell holds, by the list's name. */
export const KIND_IN: Readonly<Record<string, KindName>> = Object.fromEntries(
  [...LIBRARY_LISTS, 'rules', ...SHELL_LISTS, 'photos'].map((list) => [list, KIND_NAMES.find((kind) => holds(kind, list))]),
) as Record<string, KindName>;

function holds(kind: KindName, list: string): boolean {
  const { home } = kindOf(kind);
  return (home.in === 'library' || home.in === 'shell') && home.list === list;
}

export const kindIn = (list: LibraryList | ShellList): KindName => KIND_IN[list] as KindName;

/** The lists of a service. */
export const SERVICE_LISTS = ['circuits', 'nodes', 'runs'] as const;
/** The lists at the head of shell.yaml. */
export const HEAD_LISTS = KIND_NAMES.flatMap((kind) => {
  const { home } = kindOf(kind);
  return home.in === 'head' && home.path.length === 1 ? home.path : [];
});
