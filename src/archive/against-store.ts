import type { Model } from '../model/shell.js';
import { canonicalRecords } from './canonical.js';
import type { Manifest } from './manifest.js';
import { type BookDifference, photoHashesOf } from './verify.js';

/** One side of a comparison: a shell's record, and the hashes of its photos by path. */
export interface ComparedSide {
  readonly model: Model;
  readonly photoHashes: ReadonlyMap<string, string>;
}

/** The records that a book carries, as one side. */
export const sideOfBook = (model: Model, manifest: Manifest): ComparedSide => ({ model, photoHashes: photoHashesOf(manifest) });

/** By record and field what of two records differs; empty where they are the same. */
export function storeDifferences(book: ComparedSide, store: ComparedSide): readonly BookDifference[] {
  const [inBook, inStore] = [keyed(book), keyed(store)];
  const keys = [...new Set([...inBook.keys(), ...inStore.keys()])].sort();
  return keys.flatMap((key): readonly BookDifference[] => {
    const [a, b] = [inBook.get(key), inStore.get(key)];
    if (a?.text === b?.text) return [];
    const { kind, id } = (a ?? b) as Entry;
    const how = !b ? 'is in the book and not in the store' : !a ? 'is in the store and not in the book' : fieldWords(a, b);
    return [{ part: 'record', name: id, message: `${kind === id ? kind : `${kind} ${id}`}: ${how}.` }];
  });
}

interface Entry {
  readonly kind: string;
  readonly id: string;
  readonly text: string;
}

/** By kind and id; of several alike each by its place among them. */
function keyed({ model, photoHashes }: ComparedSide): ReadonlyMap<string, Entry> {
  const entries = new Map<string, Entry>();
  for (const { kind, id, text } of canonicalRecords(model, photoHashes)) {
    let key = `${kind}\u0000${id}`;
    while (entries.has(key)) key += '\u0000';
    entries.set(key, { kind, id, text });
  }
  return entries;
}

/** `size: 3/16 in in the book, 1/4 in in the store`. */
function fieldWords(a: Entry, b: Entry): string {
  const [book, store] = [dataOf(a), dataOf(b)];
  if (!book || !store) return a.kind === 'picture' ? 'the photo file is another one' : 'differs';
  return fieldsApart(book, store, '').join('; ');
}

type Plain = Readonly<Record<string, unknown>>;

/** Down to the field that differs: of a customer, the place. */
function fieldsApart(book: Plain, store: Plain, above: string): readonly string[] {
  return [...new Set([...Object.keys(book), ...Object.keys(store)])].flatMap((key) => {
    const [a, b] = [book[key], store[key]];
    if (JSON.stringify(a) === JSON.stringify(b)) return [];
    if (isPlain(a) && isPlain(b)) return fieldsApart(a, b, `${above}${key}.`);
    return [`${above}${key} is ${shown(a)} in the book, ${shown(b)} in the store`];
  });
}

function dataOf({ text }: Entry): Plain | undefined {
  const { data } = JSON.parse(text) as { data: unknown };
  return isPlain(data) ? data : undefined;
}

const isPlain = (value: unknown): value is Plain => typeof value === 'object' && value !== null && !Array.isArray(value);
const LONGEST = 60;

function shown(value: unknown): string {
  if (value === undefined) return 'absent';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return `\`${text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text}\``;
}
