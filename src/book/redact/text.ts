import type { Hidden, HiddenName } from './hidden.js';
import { isPublic } from './public-words.js';
import { isName, type Word, wordsIn } from './words.js';

/** What may stand between two words of one name: blanks, a comma, a line's end, a hyphen. */
const BETWEEN = /^[\s,.;:@_/+()<>"'’-]{0,4}$/u;
/** A run of signs that ids are made of. */
const TOKEN = /[\p{L}\p{M}\p{N}._/-]+/gu;

/** A text without what is hidden: whole words in any case and with endings, never a part of another word, never within an id. */
export function cleanText(text: string, hidden: Hidden): string {
  if (hidden.names.size === 0 && hidden.stamps.size === 0) return text;
  const found = [...namesIn(text, hidden), ...hiddenIdsIn(text, hidden)];
  if (found.length === 0) return text;
  const kept = idsIn(text, hidden);
  const out: string[] = [];
  let here = 0;
  const replace = (from: number, to: number, instead: string): void => {
    if (from < here) return;
    out.push(text.slice(here, from), instead);
    here = to;
  };
  for (const { from, to, instead } of found.sort((a, b) => a.from - b.from || b.to - a.to)) {
    if (!kept.some((id) => from >= id.from && to <= id.to)) replace(from, to, instead);
  }
  return here === 0 ? text : out.join('') + text.slice(here);
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}
interface Instead extends Stretch {
  readonly instead: string;
}

/** Public ids stand as they are, whatever they are made of: a label on the coach bears them. */
function idsIn(text: string, { ids }: Hidden): readonly Stretch[] {
  return tokensIn(text).flatMap(({ token, from, to }) => (ids.has(token) ? [{ from, to }] : []));
}

function hiddenIdsIn(text: string, { stamps }: Hidden): readonly Instead[] {
  if (stamps.size === 0) return [];
  return tokensIn(text).flatMap(({ token, from, to }) => {
    const instead = stamps.get(token.toLowerCase());
    if (instead !== undefined) return [{ from, to, instead }];
    // `K7-made`, `K7/J2`: a stamp between signs that part.
    let at = from;
    return token.split(/([._/-]+)/u).flatMap((part) => {
      const start = at;
      at += part.length;
      const own = stamps.get(part.toLowerCase());
      return own === undefined ? [] : [{ from: start, to: at, instead: own }];
    });
  });
}

/** Without the stops and dashes that a sentence puts around them. */
export function tokensIn(text: string): readonly (Stretch & { readonly token: string })[] {
  return [...text.matchAll(TOKEN)].map((match) => {
    const lead = /^[._/-]*/u.exec(match[0])?.[0].length ?? 0;
    const token = match[0].slice(lead).replace(/[._/-]+$/u, '');
    return { token, from: match.index + lead, to: match.index + lead + token.length };
  });
}

function namesIn(text: string, { names }: Hidden): readonly Instead[] {
  const words = wordsIn(text);
  const found: Instead[] = [];
  for (let i = 0; i < words.length; i++) {
    const name = nameAt(text, words, i, names);
    if (!name) continue;
    const last = words[i + name.words.length - 1] as Word;
    found.push({ from: (words[i] as Word).from, to: withGenitive(text, last.to), instead: name.instead });
    i += name.words.length - 1;
  }
  return found;
}

function nameAt(text: string, words: readonly Word[], at: number, names: Hidden['names']): HiddenName | undefined {
  for (const name of startingWith((words[at] as Word).folded, names)) {
    const fits = name.words.every((part, i) => {
      const word = words[at + i];
      if (!word) return false;
      const isLast = i === name.words.length - 1;
      if (!(isLast ? isName(word.folded, part) : word.folded === part)) return false;
      const before = words[at + i - 1];
      return i === 0 || (before !== undefined && BETWEEN.test(text.slice(before.to, word.from)));
    });
    if (
      fits &&
      !(name.words.length === 1 && (words[at] as Word).folded !== name.words[0] && isPublic((words[at] as Word).folded))
    )
      return name;
  }
  return undefined;
}

/** Names whose first word this is; of a single word also with an ending. */
function startingWith(word: string, names: Hidden['names']): readonly HiddenName[] {
  const found = [...(names.get(word) ?? [])];
  for (let length = word.length - 1; length >= Math.max(2, word.length - 5); length--) {
    for (const name of names.get(word.slice(0, length)) ?? []) if (name.words.length === 1) found.push(name);
  }
  return found;
}

/** `’s` belongs to the name; the words in its place keep it out. */
const withGenitive = (text: string, to: number): number =>
  to + (/^['’]s(?!\p{L})/u.exec(text.slice(to, to + 3))?.[0].length ?? 0);
