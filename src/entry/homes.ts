import type { KindName } from '../records/index.js';
import type { FileRole, LibraryList, ShellList } from '../store/layout.js';
import type { Style } from './yaml-text.js';

/** Where records of a kind are typed. */
export type Home =
  | { readonly in: 'library'; readonly list: LibraryList }
  | { readonly in: 'shell'; readonly list: ShellList }
  | { readonly in: 'service'; readonly list: 'circuits' | 'nodes' | 'runs' }
  | { readonly in: 'head'; readonly path: readonly string[] };

const library = (list: LibraryList): Home => ({ in: 'library', list });
const shell = (list: ShellList): Home => ({ in: 'shell', list });
const head = (...path: string[]): Home => ({ in: 'head', path });

/** What is the whole of a file, or a part of its head, and in no list. */
type WholeFile = 'shop' | 'shell' | 'chassis' | 'datum' | 'bare' | 'service';

/** Every kind of record that a list of some file holds. */
export const HOMES = {
  member: shell('members'),
  weld: shell('welds'),
  panel: shell('panels'),
  opening: shell('openings'),
  zone: shell('zones'),
  circuit: { in: 'service', list: 'circuits' },
  node: { in: 'service', list: 'nodes' },
  run: { in: 'service', list: 'runs' },
  component: shell('components'),
  ticket: shell('weights'),
  test: shell('tests'),
  photo: shell('photos'),
  finding: shell('findings'),
  signoff: shell('signoffs'),
  amendment: shell('amendments'),
  declared: shell('declared'),
  clamp: shell('clamps'),
  axle: head('chassis', 'axles'),
  tank: head('tanks'),
  seat: head('seats'),
  bay: head('bays'),
  'loading condition': head('conditions'),
  material: library('materials'),
  certificate: library('certificates'),
  section: library('sections'),
  conductor: library('conductors'),
  procedure: library('procedures'),
  person: library('people'),
  instrument: library('instruments'),
  stage: library('stages'),
  rule: library('rules'),
} as const satisfies Record<Exclude<KindName, WholeFile>, Home>;

export type EntryKind = keyof typeof HOMES;
export const ENTRY_KINDS = Object.keys(HOMES) as readonly EntryKind[];

export const homeOf = (kind: EntryKind): Home => HOMES[kind];

const PLURALS: Readonly<Partial<Record<EntryKind, string>>> = { declared: 'declared ratings', person: 'people' };

/** `3 members`, `1 declared rating`. */
export function countOf(count: number, kind: EntryKind): string {
  const plural = PLURALS[kind] ?? `${kind}s`;
  const one = kind === 'declared' ? 'declared rating' : kind;
  return `${count} ${count === 1 ? one : plural}`;
}

/** Records that people read from top to bottom, a field a line. */
export const usualStyle = (kind: EntryKind): Style => (kind === 'ticket' || kind === 'finding' ? 'block' : 'flow');

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
  const holds = (home: Home): boolean => {
    if (role.holds === 'library') return home.in === 'library' && home.list === role.list;
    if (role.holds === 'list') return home.in === 'shell' && home.list === role.list;
    return (role.holds === 'service' && home.in === 'service') || (role.holds === 'shell' && home.in === 'head');
  };
  return ENTRY_KINDS.filter((kind) => holds(homeOf(kind))).map(heldList);
}
