import type { AnyField, Fields } from '../records/field.js';
import { kindOf } from '../records/kinds.js';
import { COMMON } from '../records/shared.js';
import type { EntryKind } from './homes.js';

const KNOWN = new Map<EntryKind, ReadonlyMap<string, string>>();

/** What cut lists, wire lists and tickets call things → the key, as each field says. A guess that the shop confirms. */
export function tradeWords(kind: EntryKind): ReadonlyMap<string, string> {
  const words = KNOWN.get(kind) ?? wordsOf(kind);
  KNOWN.set(kind, words);
  return words;
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
