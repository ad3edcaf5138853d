import type { Bounds } from '../../geometry/box.js';
import { nearest, slipsBetween } from '../../source/nearest.js';
import { placeWord } from '../place-words.js';
import type { Findable } from './records.js';
import type { MatchQuality } from './types.js';

/** Letter case, and one or more blanks, do not count. */
const plain = (text: string): string => {
  const low = text.toLowerCase();
  return UNEVEN.test(low) ? low.trim().replace(/\s+/gu, ' ') : low;
};
const UNEVEN = /^\s|\s\s|[^\S ]|\s$/u;
/** Nor do hyphens, slashes and dots: `dc12` is `DC-12`. Of a plain text. */
const squeezed = (text: string): string => text.replace(/[\s\-./_]+/gu, '');

/** Whether a plain text begins with another once both are squeezed; most differ in their first sign, and are never squeezed. */
function beginsSqueezed(text: string, short: string, whole: boolean): boolean {
  let first = 0;
  while (' -./_'.includes(text.charAt(first)) && first < text.length) first += 1;
  if (text.charAt(first) !== short.charAt(0)) return false;
  const all = squeezed(text);
  return whole ? all === short : all.startsWith(short);
}

interface Words {
  readonly names: readonly string[];
  /** All of it, colours too, for words in any order. */
  readonly text: string;
}

const kept = new WeakMap<Findable, Words>();

function wordsOf(one: Findable): Words {
  let words = kept.get(one);
  if (!words) {
    const names: string[] = [];
    for (const word of [one.id, one.marking, one.name]) if (word) names.push(plain(word));
    const text = `${names.join(' ')}${one.colour ? ` ${plain(one.colour)}` : ''}`;
    words = { names, text };
    kept.set(one, words);
  }
  return words;
}

/** What was asked, taken apart once for all records. */
interface Query {
  readonly text: string;
  readonly short: string;
  readonly parts: readonly string[];
}

function qualityOf({ text, short, parts }: Query, one: Findable, bounds: Bounds | undefined): MatchQuality | undefined {
  const words = wordsOf(one);
  const begins = (word: string, whole: boolean): boolean => beginsSqueezed(word, short, whole);
  if (words.names.some((word) => word === text || begins(word, true))) return 'exact';
  if (words.names.some((word) => word.startsWith(text) || begins(word, false))) return 'prefix';
  const all = parts.every((part) => holdsWord(part, one, words) || liesIn(part, one, bounds));
  return all && parts.some((part) => holdsWord(part, one, words)) ? 'contains' : undefined;
}

/** Colours in any order: `black/red` is `red/black`. */
const holdsWord = (part: string, { colour }: Findable, { text }: Words): boolean =>
  text.includes(part) || (colour !== undefined && part.includes('/') && part.split('/').every((one) => text.includes(one)));

function liesIn(word: string, one: Findable, bounds: Bounds | undefined): boolean {
  const says = placeWord(word);
  if (!says || !bounds) return false;
  return [...(one.position ? [one.position] : []), ...one.path].some((at) => says(at, bounds));
}

const ORDER: readonly MatchQuality[] = ['exact', 'prefix', 'contains'];

/**
 * Records whose id, name or marking is, starts with or contains what was asked (every word of it, a word for a part of the coach
 * counting where the record lies there), in that order; where there is none, those that differ by a slip or two, as a whole or word
 * by word. Within a quality, ids before names, then the order of `all`.
 */
export function matching(
  asked: string,
  all: readonly Findable[],
  bounds?: Bounds,
): readonly (readonly [Findable, MatchQuality])[] {
  const query = plain(asked);
  if (query === '') return [];
  const parts = query.split(' ');
  const asking: Query = { text: query, short: squeezed(query), parts };
  const found: (readonly [Findable, MatchQuality])[] = [];
  for (const one of all) {
    const quality = qualityOf(asking, one, bounds);
    if (quality) found.push([one, quality]);
  }
  if (found.length === 0) return closeTo(query, all, bounds).map((one) => [one, 'close'] as const);
  // What is so called goes before what only lies there.
  const isNamed = (one: Findable): boolean => parts.every((part) => holdsWord(part, one, wordsOf(one)));
  const rank = ([one, quality]: readonly [Findable, MatchQuality]): number =>
    ORDER.indexOf(quality) * 3 + (plain(one.id).includes(query) ? 0 : quality === 'contains' && !isNamed(one) ? 2 : 1);
  return [...found].sort((a, b) => rank(a) - rank(b));
}

function closeTo(query: string, all: readonly Findable[], bounds: Bounds | undefined): readonly Findable[] {
  const close = new Set(nearest(query, new Set(all.flatMap((one) => wordsOf(one).names)), 5));
  const whole = all.filter((one) => wordsOf(one).names.some((word) => close.has(word)));
  if (whole.length > 0) return whole;
  const parts = query.split(' ');
  return all.filter((one) => {
    const words = wordsOf(one).text.split(/[\s/,]+/u);
    const isNear = (part: string): boolean => words.some((word) => slipsBetween(part, word) <= (part.length < 5 ? 0 : 1));
    return parts.every((part) => isNear(part) || liesIn(part, one, bounds)) && parts.some(isNear);
  });
}
