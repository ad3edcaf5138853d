import type { Finding } from '../finding.js';
import type { KindName, Library, LibraryKind, RecordKind, Source } from '../records/index.js';
import { kindOf } from '../records/kinds.js';
import { didYouMean } from '../source/nearest.js';
import { shown } from '../source/shown.js';
import type { Path } from '../source/source.js';
import type { Register } from './register.js';

export type LibraryRegisters = Readonly<Record<LibraryKind, Register>>;

/** Where a reference was typed. */
export interface From {
  readonly id?: string;
  readonly source: Source;
}

/** Where records of a kind are typed, for advice: a list of a kind's own, or what it is part of. */
function fileOf(kind: KindName): string | undefined {
  const { home } = kindOf(kind);
  if (home.in === 'library') return `library/${home.list}${home.list === 'rules' ? '/' : '.yaml'}`;
  if (home.in === 'service') return 'services/';
  if (home.in === 'head') return 'shell.yaml';
  return home.in === 'shell' ? `${home.list === 'photos' ? 'photos/' : ''}${home.list}.yaml` : undefined;
}

/** Checks that what records name is there, and of the right kind. Every miss is a finding with the nearest known id. */
export class Links {
  constructor(
    private readonly shell: Register<RecordKind>,
    private readonly library: LibraryRegisters,
    private readonly say: (finding: Finding) => void,
  ) {}

  /** A record of this shell of one of `kinds`. */
  to(from: From, kinds: readonly RecordKind[], id: string, path: Path): void {
    const kind = this.shell.kindOf(id);
    if (kind === 'any' || (kind !== undefined && kinds.includes(kind))) return;
    const wanted = orOf(kinds);
    if (kind !== undefined) this.wrongKind(from, id, kind, wanted, path);
    else this.miss(from, id, wanted, this.shell.idsOf(kinds), fileOf(kinds[0] as RecordKind), path);
  }

  /** Any record of this shell. */
  toAny(from: From, id: string, path: Path): void {
    if (this.shell.kindOf(id) === undefined)
      this.miss(from, id, 'the id of a record of this shell', this.shell.ids(), undefined, path);
  }

  toLibrary(from: From, kind: LibraryKind, id: string, path: Path): void {
    if (this.library[kind].kindOf(id) !== undefined) return;
    this.miss(from, id, orOf([kind]), this.library[kind].ids(), fileOf(kind), path);
  }

  private wrongKind(from: From, id: string, kind: string, wanted: string, path: Path): void {
    const message = `Found \`${shown(id)}\`${forKey(path, id)}, which is a ${kind}, expected ${wanted}`;
    this.unknown(message, from, path);
  }

  private miss(from: From, id: string, wanted: string, known: Iterable<string>, file: string | undefined, path: Path): void {
    const close = didYouMean(id, known);
    const advice = close !== '' || file === undefined ? close : `: add \`${shown(id)}\` to ${file}, or correct it here`;
    const message = `Found \`${shown(id)}\`${forKey(path, id)}, which is nowhere in the records, expected ${wanted}${advice}`;
    this.unknown(message, from, path);
  }

  private unknown(message: string, from: From, path: Path): void {
    const place = from.source.place(...path);
    this.say({ rule: 'format.unknown-reference', severity: 'error', message, ids: idsOf(from), place });
  }
}

const idsOf = (from: From): readonly string[] => (from.id === undefined ? [] : [from.id]);

/** Where an id is itself the key (`readings: {tag: …}`), the block that it stands in. */
function forKey(path: Path, id: string): string {
  const keys = path.filter((step) => typeof step === 'string');
  const key = keys.at(-1);
  if (key === id && keys.length > 1) return ` in \`${keys.at(-2)}\``;
  return key === undefined ? '' : ` for \`${key}\``;
}

const articleOf = (kind: string): string => `${/^[aeiou]/u.test(kind) ? 'an' : 'a'} ${kind}`;

/** `the id of a member or panel` */
const orOf = (kinds: readonly string[]): string => `the id of ${articleOf(kinds.join(' or '))}`;

/** The library's registers and records together, for the shells that stand on them. */
export interface LinkedLibrary {
  readonly library: Library;
  readonly registers: LibraryRegisters;
}
