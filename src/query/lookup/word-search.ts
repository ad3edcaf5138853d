import { slipsBetween } from '../../source/nearest.js';
import { KNOWN_WORDS, meaning } from './synonyms.js';

/** One thing that somebody may look for, and the words that find it beside those of its card. */
export interface SearchEntry {
  readonly id: string;
  readonly title: string;
  /** Kind, in the reader's language. */
  readonly kind: string;
  /** Marking and color: what it is called besides its id and title. */
  readonly names: string;
  /** What kind of thing it is, in English words of the record, whatever language the reader has. */
  readonly more: string;
}

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
    const sought = words.map(soughtWord);
    const exact = ranked(made(), (one) => scoreOf(one, sought, short));
    if (exact.length > 0) return { hits: exact, close: false };
    const slipped = words.map(slippedWord);
    const nearly = ranked(made(), (one) => scoreOf(one, slipped, short));
    // Where nothing has every word, what has the most of them.
    const hits =
      nearly.length > 0 ? nearly : ranked(made(), (one) => slipped.reduce((sum, word) => sum + wordScore(one, word), 0));
    return { hits, close: true };
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

/** A word of a question: how well another fits it, and what means the same. */
interface SoughtWord {
  readonly word: string;
  /** What it may mean; what is so called goes before that. */
  readonly alike: readonly string[];
  /** Of `grey/black`, what each part may mean. */
  readonly parts: readonly (readonly string[])[];
  fits(other: string): number;
}

function soughtWord(word: string): SoughtWord {
  const parts = word.includes('/') ? word.split('/').filter(Boolean).map(meaning) : [];
  return { word, alike: meaning(word).slice(1), parts, fits: (other) => fitOf(word, other) };
}

/** With slips. A coach has a few thousand different words, each on many cards: each is compared once. */
function slippedWord(word: string): SoughtWord {
  const known = new Map<string, number>();
  const fits = (other: string): number => {
    const before = known.get(other);
    if (before !== undefined) return before;
    const found = fitOf(word, other) || (isSlip(word, other) ? 0.5 : 0);
    known.set(other, found);
    return found;
  };
  return { ...soughtWord(word), alike: mended(word), fits };
}

/** A slip in an everyday word is mended first: `tial` is `tail`. */
function mended(word: string): readonly string[] {
  if (KNOWN_WORDS.has(word) || word.length < 4) return meaning(word).slice(1);
  for (const known of KNOWN_WORDS) if (isSlip(word, known)) return [known, ...meaning(known)];
  return [];
}

/** Nothing where any word of the question has no match. */
function scoreOf(one: Indexed, words: readonly SoughtWord[], short: string): number {
  if (one.id === short) return 1000;
  const byId = one.id.startsWith(short) ? 300 - one.id.length : 0;
  let sum = byId;
  for (const word of words) {
    const found = wordScore(one, word);
    if (found === 0) return byId;
    sum += found;
  }
  return sum;
}

function wordScore(one: Indexed, { alike, parts, fits }: SoughtWord): number {
  const own = Math.max(best(fits, one.names) * 10, best(fits, one.more) * 3);
  const same = alike.reduce((most, other) => Math.max(most, whole(other, one.names) * 8, whole(other, one.more) * 2), 0);
  const colours = parts.length > 0 && parts.every((part) => part.some((each) => whole(each, one.names) > 0));
  return Math.max(own, same, colours ? 25 : 0);
}

function best(fits: SoughtWord['fits'], words: readonly string[]): number {
  let most = 0;
  for (const word of words) most = Math.max(most, fits(word));
  return most;
}

const isNumber = (word: string): boolean => /^\d+$/u.test(word);

/** The same; its beginning, where no other number begins so; a part of it. */
function fitOf(word: string, other: string): number {
  if (other === word) return 3;
  if (other.startsWith(word) && !(isNumber(word) && /^\d/u.test(other.slice(word.length)))) return 2;
  return word.length > 2 && !isNumber(word) && other.includes(word) ? 1 : 0;
}

const whole = (word: string, words: readonly string[]): number => (words.includes(word) ? 2 : 0);

/** One slip in a word of four letters, two in one of eight. */
const isSlip = (a: string, b: string): boolean =>
  a.length >= 4 &&
  b.length >= 4 &&
  Math.abs(a.length - b.length) <= 2 &&
  slipsBetween(a, b) <= (Math.min(a.length, b.length) >= 8 ? 2 : 1);
