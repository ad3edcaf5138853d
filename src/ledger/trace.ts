import { onlyItems } from '../source/parse.js';
import { roleOf } from '../store/layout.js';
import { recordsIn, type TypedRecord } from './records-in.js';

/** What a recall may ask for → the keys of a record that hold it. */
export const TRACE_KEYS = {
  heat: ['heat'],
  lot: ['lot'],
  welder: ['welder'],
  procedure: ['procedure'],
  instrument: ['instrument', 'scale'],
  part: ['part', 'section', 'type', 'name', 'serial'],
  certificate: ['certificate', 'document'],
} as const satisfies Record<string, readonly string[]>;

export type TraceKey = keyof typeof TRACE_KEYS;

export interface TraceHit {
  readonly shell: string;
  readonly kind: string;
  readonly id: string;
  readonly file: string;
  readonly line: number;
  /** Where in the record it stands, as `fixing.lot`. */
  readonly field: string;
}

/** What is sought: any of some values under any of some keys. */
export interface Sought {
  readonly keys: ReadonlySet<string>;
  /** Lower case. */
  readonly values: ReadonlySet<string>;
  /** Kinds of record that are looked at; all where absent. */
  readonly kinds?: ReadonlySet<string>;
}

/** A part is a thing; the name of a circuit, a panel or a test is none. */
const PART_KINDS: ReadonlySet<string> = new Set(['member', 'component', 'run', 'circuit', 'clamp', 'node']);

/** `heats`: of a certificate, the heats that the library says it is of. */
export function soughtFor(key: TraceKey, value: string, heats: readonly string[] = []): readonly Sought[] {
  const one: Sought = {
    keys: new Set<string>(TRACE_KEYS[key]),
    values: new Set([plain(value)]),
    ...(key === 'part' ? { kinds: PART_KINDS } : {}),
  };
  return heats.length === 0 ? [one] : [one, { keys: new Set(['heat', 'lot']), values: new Set(heats.map(plain)) }];
}

const plain = (value: unknown): string => String(value).trim().replace(/\s+/gu, ' ').toLowerCase();

/** Where in a shell’s file any of it stands. Records without the words are not read. */
export function hitsIn(file: string, text: string, sought: readonly Sought[]): readonly TraceHit[] {
  const role = roleOf(file);
  const shell = 'shell' in role ? role.shell : undefined;
  if (shell === undefined) return [];
  const words = wordsOf(sought);
  // What is escaped may hold a word that does not stand there.
  const mayHold = (item: string): boolean => item.includes('\\') || words.some((word) => item.toLowerCase().includes(word));
  return recordsIn(file, onlyItems(text, mayHold)).flatMap((record) => sought.flatMap((one) => hitsOf(record, shell, one)));
}

function hitsOf(record: TypedRecord, shell: string, sought: Sought): readonly TraceHit[] {
  if (record.kind === 'file' || (sought.kinds && !sought.kinds.has(record.kind))) return [];
  return pathsTo(record.data, sought).map((path) => ({
    shell,
    kind: record.kind,
    id: record.id,
    file: record.file,
    line: record.lineOf(path),
    field: path.join('.'),
  }));
}

type Path = readonly (string | number)[];

function pathsTo(data: unknown, sought: Sought, path: Path = []): readonly Path[] {
  if (Array.isArray(data)) return data.flatMap((one, i) => pathsTo(one, sought, [...path, i]));
  if (typeof data === 'object' && data !== null)
    return Object.entries(data).flatMap(([key, one]) => pathsTo(one, sought, [...path, key]));
  const key = path.findLast((step) => typeof step === 'string');
  return typeof key === 'string' && sought.keys.has(key) && sought.values.has(plain(data)) ? [path] : [];
}

/** Words of which one must stand in a file for it to have a hit; a value of several words may be broken over lines, so its longest. */
export const wordsOf = (sought: readonly Sought[]): readonly string[] =>
  sought.flatMap(({ values }) => [...values].map((value) => value.split(' ').reduce((a, b) => (b.length > a.length ? b : a))));
