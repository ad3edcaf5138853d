import type { EntryKind } from './homes.js';
import type { IndexedRecord, RecordIndex } from './record-index.js';

/** How a kind is numbered where a shop has none yet. */
const FIRST: Readonly<Partial<Record<EntryKind, string>>> = {
  weld: 'W-0001',
  ticket: 'T-1',
  test: 'TS-001',
  photo: 'P-0001',
  finding: 'NC-01',
  amendment: 'AM-01',
  component: 'CMP-01',
  panel: 'PN-01',
};

/** What stands before the number of a kind where a shop has none yet. */
export const DEFAULT_HEADS: Readonly<Partial<Record<EntryKind, string>>> = Object.fromEntries(
  Object.entries(FIRST).map(([kind, first]) => [kind, first.replace(/\d+$/u, '')]),
);

/** What stands before the numbers of this kind in this shop; undefined where they follow none. */
export function numberHeadOf(kind: EntryKind, known: RecordIndex): string | undefined {
  const next = nextId(kind, known);
  return next === undefined ? undefined : partsOf(next)?.head;
}

interface Numbered {
  readonly head: string;
  readonly digits: string;
}

/**
 * The next free id in the shop's own numbering: one more than the highest of the series that most of these records are in, with as many
 * digits. Undefined where less than half of them are numbered alike: those ids mean something, and nobody can guess one.
 */
export function nextId(kind: EntryKind, known: RecordIndex, more: ReadonlySet<string> = new Set()): string | undefined {
  const records = known.ofKind(kind);
  const series = records.length === 0 ? numbered(FIRST[kind], 0) : longest(records);
  if (series === undefined) return undefined;
  for (let n = series.last + 1; ; n++) {
    const id = series.head + String(n).padStart(series.width, '0');
    if (known.taken(kind, id) === undefined && !more.has(id)) return id;
  }
}

interface Series {
  readonly head: string;
  readonly width: number;
  readonly last: number;
}

function numbered(first: string | undefined, last: number): Series | undefined {
  const parts = first === undefined ? undefined : partsOf(first);
  return parts && { head: parts.head, width: parts.digits.length, last };
}

function longest(records: readonly IndexedRecord[]): Series | undefined {
  const byHead = new Map<string, Numbered[]>();
  for (const { id } of records) {
    const parts = id === undefined ? undefined : partsOf(id);
    if (parts) byHead.set(parts.head, [...(byHead.get(parts.head) ?? []), parts]);
  }
  const most = [...byHead.values()].reduce<Numbered[]>((best, one) => (one.length > best.length ? one : best), []);
  const [first] = most;
  if (!first || most.length * 2 < records.length) return undefined;
  const width = Math.min(...most.map(({ digits }) => digits.length));
  return { head: first.head, width, last: Math.max(...most.map(({ digits }) => Number(digits))) };
}

/** `W-0112` as `W-` and `0112`. */
function partsOf(id: string): Numbered | undefined {
  const match = /^(.*?)(\d{1,9})$/u.exec(id);
  return match ? { head: match[1] as string, digits: match[2] as string } : undefined;
}
