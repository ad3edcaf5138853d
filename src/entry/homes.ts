import type { HeadKind, LibraryKind, ListedKind } from '../records/index.js';
import type { Home as KindHome } from '../records/kind.js';
import { HEAD, kindOf, LIBRARY, LISTED } from '../records/kinds.js';
import type { FileRole } from '../store/layout.js';
import type { Style } from './yaml-text.js';

export type EntryKind = LibraryKind | ListedKind | HeadKind | 'loading condition';
/** Every kind of record that a list of some file holds. */
export const ENTRY_KINDS = [
  ...Object.keys(LISTED),
  ...Object.keys(HEAD),
  'loading condition',
  ...Object.keys(LIBRARY),
] as readonly EntryKind[];

/** Where records of a kind are typed. */
export type RecordHome = Exclude<KindHome, { readonly in: 'part' }>;
export const homeOf = (kind: EntryKind): RecordHome => kindOf(kind).home as RecordHome;

/** `3 members`, `1 declared rating`. */
export function countOf(count: number, kind: EntryKind): string {
  const [one, many] = kindOf(kind).more.counted ?? [kind, `${kind}s`];
  return `${count} ${count === 1 ? one : many}`;
}

/** Records that people read from top to bottom, a field a line. */
export const usualStyle = (kind: EntryKind): Style => (kindOf(kind).more.block ? 'block' : 'flow');

/** `member`, `members` and the file’s name stand for the same kind; undefined for what is none. */
export function kindNamed(word: string): EntryKind | undefined {
  const plain = word.toLowerCase().replace(/[-_]/gu, ' ');
  return ENTRY_KINDS.find((kind) => {
    const home = homeOf(kind);
    const list = home.in === 'head' ? home.path.at(-1) : home.list;
    return [kind, `${kind}s`, list].includes(plain);
  });
}

/** A list of records in a file. */
export interface HeldList {
  readonly kind: EntryKind;
  /** Keys down to it. */
  readonly path: readonly string[];
  /** The file may be the list itself. */
  readonly bare: boolean;
}

export const heldList = (kind: EntryKind): HeldList => {
  const home = homeOf(kind);
  return { kind, path: home.in === 'head' ? home.path : [home.list], bare: home.in === 'library' || home.in === 'shell' };
};

/** The lists that a file of this role holds. */
export function listsOf(role: FileRole): readonly HeldList[] {
  const holds = (home: RecordHome): boolean => {
    if (role.holds === 'library') return home.in === 'library' && home.list === role.list;
    if (role.holds === 'list') return home.in === 'shell' && home.list === role.list;
    return (role.holds === 'service' && home.in === 'service') || (role.holds === 'shell' && home.in === 'head');
  };
  return ENTRY_KINDS.filter((kind) => holds(homeOf(kind))).map(heldList);
}
