import type { AnyField, Fields } from '../records/field.js';
import { kindOf } from '../records/kinds.js';
import { COMMON } from '../records/shared.js';
import { columnsOf, type EntryColumn } from './columns.js';
import type { EntryKind } from './homes.js';

const KNOWN = new Map<EntryKind, ReadonlyMap<string, string>>();

/** What cut lists, wire lists and tickets call things → the key, as each field says. A guess that the shop confirms. */
export function tradeWords(kind: EntryKind): ReadonlyMap<string, string> {
  const words = KNOWN.get(kind) ?? wordsOf(kind);
  KNOWN.set(kind, words);
  return words;
}

/** A word that stands before a field at the head of a column, as `VT` in `VT by`: the list whose items have both, and what it fills there. */
export interface LeadWord {
  readonly list: string;
  readonly key: string;
  readonly word: string;
}

/** Such words of a kind, in small letters. */
export function leadWords(kind: EntryKind): ReadonlyMap<string, LeadWord> {
  return new Map(
    Object.entries(kindOf(kind).fields as Fields).flatMap(([list, { shape }]) => {
      const inner = shape.is === 'list' && shape.each.shape.is === 'block' ? shape.each.shape.fields : {};
      return Object.entries(inner).flatMap(([key, { traits }]) =>
        (traits.leads ?? []).map((word) => [word.toLowerCase(), { list, key, word }] as const),
      );
    }),
  );
}

/** Its name for itself, what only one of its fields is called, and its help where that is a name. */
function ownNames(kind: EntryKind, words: ReadonlyMap<string, string>): readonly (readonly [string, string])[] {
  const columns = columnsOf(kind);
  const plain = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  const once = (word: (column: EntryColumn) => string): readonly (readonly [string, string])[] => {
    const counts = new Map<string, number>();
    for (const column of columns) counts.set(word(column), (counts.get(word(column)) ?? 0) + 1);
    return columns.flatMap((column) =>
      word(column) !== '' && counts.get(word(column)) === 1 ? [[word(column), column.key] as const] : [],
    );
  };
  const self = columns.some(({ key }) => key === 'id')
    ? ['', 'id', 'no', 'number', 'mark'].map((end) => [plain(kind) + end, 'id'] as const)
    : [];
  const keys = new Set(columns.map(({ key }) => plain(key)));
  const help = once(({ help: text }) => (text.split(' ').length <= 4 ? plain(text) : ''));
  return [...self, ...once(({ path }) => plain(String(path.at(-1)))), ...help].filter(
    ([word]) => !words.has(word) && !keys.has(word),
  );
}

/** A kind's own words before those that every record has. */
function wordsOf(kind: EntryKind): ReadonlyMap<string, string> {
  const { fields, variants, more } = kindOf(kind);
  const own = Object.fromEntries(Object.entries(fields).filter(([key, field]) => (COMMON as Fields)[key] !== field));
  const shared = Object.fromEntries(Object.entries(fields).filter(([key]) => !(key in own)));
  const words = new Map([...calledIn(shared), ...calledIn(own)]);
  for (const form of Object.values(variants?.forms ?? {})) for (const [word, key] of calledIn(form)) words.set(word, key);
  for (const word of variants?.keyCalled ?? []) words.set(word, (variants as { readonly key: string }).key);
  for (const [word, key] of Object.entries(more.called ?? {})) words.set(word, key);
  for (const [word, key] of ownNames(kind, words)) if (!words.has(word)) words.set(word, key);
  return words;
}

function calledIn(fields: Fields, path: readonly string[] = []): readonly (readonly [string, string])[] {
  return Object.entries(fields).flatMap(([key, field]) => called(field, [...path, key]));
}

/** The words of a field and of what is within it; of a list its first item's, of a place each axis’s behind it: `startx`. */
function called({ shape, traits }: AnyField, path: readonly string[]): readonly (readonly [string, string])[] {
  const key = path.join('.');
  const own = (traits.called ?? []).flatMap((word): readonly (readonly [string, string])[] => {
    const axes = shape.is === 'value' && shape.form.as === 'place' ? ['x', 'y', 'z'] : [];
    return [...(word === '' ? [] : [[word, key] as const]), ...axes.map((axis) => [`${word}${axis}`, `${key}.${axis}`] as const)];
  });
  if (shape.is === 'block') return [...own, ...calledIn(shape.fields, path)];
  if (shape.is === 'list') return [...own, ...called(shape.each, [...path, '1'])];
  return own;
}
