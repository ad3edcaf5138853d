import { onlyItems } from '../source/parse.js';
import { roleOf } from '../store/layout.js';
import { type RecordThen, recordsIn } from './records-in.js';
import { plainWord, type TraceQuery, wordsOf } from './trace-query.js';

export interface TraceHit {
  readonly shell: string;
  readonly kind: string;
  readonly id: string;
  readonly file: string;
  readonly line: number;
  /** Where in the record it stands, as `fixing.lot`. */
  readonly field: string;
}

/** Where in a shell’s file any of it stands. Records without the words are not read. */
export function hitsIn(file: string, text: string, sought: readonly TraceQuery[]): readonly TraceHit[] {
  const role = roleOf(file);
  const shell = 'shell' in role ? role.shell : undefined;
  if (shell === undefined) return [];
  const words = wordsOf(sought);
  // What is escaped may hold a word that does not stand there.
  const mayHold = (item: string): boolean => item.includes('\\') || words.some((word) => item.toLowerCase().includes(word));
  return recordsIn(file, onlyItems(text, mayHold)).flatMap((record) => sought.flatMap((one) => hitsOf(record, shell, one)));
}

function hitsOf(record: RecordThen, shell: string, sought: TraceQuery): readonly TraceHit[] {
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

function pathsTo(data: unknown, sought: TraceQuery, path: Path = []): readonly Path[] {
  if (Array.isArray(data)) return data.flatMap((one, i) => pathsTo(one, sought, [...path, i]));
  if (typeof data === 'object' && data !== null)
    return Object.entries(data).flatMap(([key, one]) => pathsTo(one, sought, [...path, key]));
  const key = path.findLast((step) => typeof step === 'string');
  return typeof key === 'string' && sought.keys.has(key) && sought.values.has(plainWord(data)) ? [path] : [];
}
