import { slipsBetween } from '../../source/nearest.js';
import type { SearchEntry } from '../pocket-data.js';
import { KNOWN_WORDS, meaning } from './synonyms.js';

/** What was found, best first; `close` where only nearly that is there. */
export interface Found {
  readonly hits: readonly SearchEntry[];
  readonly close: boolean;
}

export interface Finder {
  find(asked: string): Found;
  /** Reads so many more of the cards ahead of a question; whether all are read. */
  read(count: number): boolean;
}

/** Small letters without marks. */
export const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
const squeezed = (text: string): string => plain(text).replace(/[\s\-./_]/gu, '');
const wordsOf = (text: string): readonly string[] =>
  plain(text)
    .split(/[\s,;:()“”"'·=]+/u)
    .filter(Boolean);

/** Words around the one that matters. */
const FILLER = new Set(
  'a an any are at by can de del do does el en es esta for how i in is it la las lo los mi my of off on or que the there to un una what where which with'.split(
    ' ',
  ),
);

interface Indexed {
  readonly entry: SearchEntry;
  readonly id: string;
  readonly names: readonly string[];
  readonly more: readonly string[];
}

/**
 * Finds things by id, marking, color and place, by everyday words in two languages, by parts of words, and with slips. `cardText` gives
 * the words of a card's first list: place, service, protection, zones.
 */
export function searchIn(entries: readonly SearchEntry[], cardText: (id: string) => string): Finder {
  const index: Indexed[] = [];
  const read = (count: number): boolean => {
    for (const entry of entries.slice(index.length, index.length + count)) index.push(indexed(entry, cardText(entry.id)));
    return index.length === entries.length;
  };
  const made = (): readonly Indexed[] => {
    read(entries.length);
    return index;
  };
  const find = (asked: string): Found => {
    const typed = wordsOf(asked);
    const told = typed.filter((word) => !FILLER.has(word));
    const words = told.length > 0 ? told : typed;
    const short = squeezed(asked);
    if (short === '') return { hits: [], close: false };
    const exact = ranked(made(), (one) => scoreOf(one, words, short, false));
    if (exact.length > 0) return { hits: exact, close: false };
    return { hits: ranked(made(), (one) => scoreOf(one, words, short, true)), close: true };
  };
  return { find, read };
}

const indexed = (entry: SearchEntry, text: string): Indexed => ({
  entry,
  id: squeezed(entry.id),
  names: parted(wordsOf(`${entry.id} ${entry.title} ${entry.names}`)),
  more: [...new Set(parted(wordsOf(`${entry.kind} ${entry.more} ${text}`)))],
});

/** `grey/black` is found by either colour, `DC-12/S1` by its parts. */
const parted = (words: readonly string[]): readonly string[] => [
  ...new Set(words.flatMap((word) => (/[/-]/u.test(word) ? [word, ...word.split(/[/-]/u).filter(Boolean)] : [word]))),
];

function ranked(index: readonly Indexed[], score: (one: Indexed) => number): readonly SearchEntry[] {
  return index
    .map((one, at) => ({ one, at, score: score(one) }))
    .filter((each) => each.score > 0)
    .sort((a, b) => b.score - a.score || a.at - b.at)
    .map(({ one }) => one.entry);
}

/** Nothing where any word of the question has no match. */
function scoreOf(one: Indexed, words: readonly string[], short: string, slips: boolean): number {
  if (one.id === short) return 1000;
  let sum = one.id.startsWith(short) ? 300 - one.id.length : 0;
  let named = sum > 0;
  for (const word of words) {
    const found = wordScore(one, word, slips);
    if (found === 0) return sum;
    sum += found;
    named = true;
  }
  return named ? sum : 0;
}

function wordScore(one: Indexed, word: string, slips: boolean): number {
  const own = Math.max(fitOf(word, one.names, slips) * 10, fitOf(word, one.more, slips) * 3);
  // What is so called goes before what only means the same.
  const alike = meaningOf(word, slips)
    .slice(1)
    .reduce((best, other) => Math.max(best, whole(other, one.names) * 8, whole(other, one.more) * 2), 0);
  const colours = word.includes('/')
    ? word
        .split('/')
        .filter(Boolean)
        .every((part) => meaning(part).some((each) => whole(each, one.names) > 0))
    : false;
  return Math.max(own, alike, colours ? 25 : 0);
}

/** A slip in an everyday word is mended first: `tial` is `tail`. */
function meaningOf(word: string, slips: boolean): readonly string[] {
  if (!slips || KNOWN_WORDS.has(word) || word.length < 4) return meaning(word);
  for (const known of KNOWN_WORDS) if (isSlip(word, known)) return ['', known, ...meaning(known)];
  return [word];
}

const isNumber = (word: string): boolean => /^\d+$/u.test(word);

function fitOf(word: string, words: readonly string[], slips: boolean): number {
  let best = 0;
  for (const one of words) {
    if (one === word) return 3;
    if (one.startsWith(word) && !(isNumber(word) && /^\d/u.test(one.slice(word.length)))) best = Math.max(best, 2);
    else if (word.length > 2 && !isNumber(word) && one.includes(word)) best = Math.max(best, 1);
    else if (slips && isSlip(word, one)) best = Math.max(best, 0.5);
  }
  return best;
}

const whole = (word: string, words: readonly string[]): number => (words.includes(word) ? 2 : 0);

/** One slip in a word of four letters, two in one of eight. */
const isSlip = (a: string, b: string): boolean =>
  a.length >= 4 &&
  b.length >= 4 &&
  Math.abs(a.length - b.length) <= 2 &&
  slipsBetween(a, b) <= (Math.min(a.length, b.length) >= 8 ? 2 : 1);
