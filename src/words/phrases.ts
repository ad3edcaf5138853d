import type { Reader } from './sentence.js';
import { SPANISH_PATTERNS, SPANISH_TERMS } from './spanish.js';
import { ANSWER_PATTERNS, ANSWER_TERMS } from './spanish-answers.js';

const TERMS: Readonly<Record<string, string>> = { ...ANSWER_TERMS, ...SPANISH_TERMS };

/**
 * A sentence or word of an answer, in the reader's language. Answers are made in English; what stands in this catalogue is put into Spanish, ids,
 * names and figures untouched. What is not in it stays as it is.
 */
export function translated({ language }: Reader, text: string): string {
  if (language !== 'es') return text;
  return (
    wholeOf(text) ??
    text
      .split('; ')
      .map((one) => wholeOf(one) ?? withoutStop(one) ?? parted(one))
      .join('; ')
  );
}

const parted = (text: string): string =>
  text
    .split(', ')
    .map((part) => wholeOf(part) ?? colours(part) ?? part)
    .join(', ');

/** A sentence within a list has no stop of its own. */
const withoutStop = (text: string): string | undefined => (text.endsWith('.') ? undefined : sentenceOf(`${text}.`)?.slice(0, -1));
const sentenceOf = (text: string): string | undefined => {
  const found = wholeOf(text);
  return found?.endsWith('.') && found !== text ? found : undefined;
};

/** `grey/black`, where every part is a word of the catalogue. */
function colours(text: string): string | undefined {
  const parts = text.split('/');
  return parts.length > 1 && parts.every((part) => Object.hasOwn(TERMS, part)) ? parts.map(inner).join('/') : undefined;
}

/** Whether the catalogue has all of a sentence, or every part of a list of places. */
export const isTranslated = (text: string): boolean =>
  wholeOf(text) !== undefined || text.split(', ').every((part) => wholeOf(part) !== undefined);

function wholeOf(text: string): string | undefined {
  if (Object.hasOwn(TERMS, text)) return TERMS[text];
  for (const [pattern, spanish] of READY) {
    const match = pattern.exec(text);
    if (match)
      return spanish.replace(/([%~])(\d)/gu, (_, sign: string, at: string) =>
        (sign === '~' ? inner : same)(match[Number(at)] ?? ''),
      );
  }
  return /^[\d\s.,/()±%−-]*$/u.test(text) ? text : undefined;
}

const same = (text: string): string => text;
/** What fills a blank of `~` may be a word of the catalogue itself; an id or a name never is. */
const inner = (text: string): string => (Object.hasOwn(TERMS, text) ? (TERMS[text] as string) : text);

/** Blanks of a sentence, which has an end, take lists; those of a few words no comma. */
const READY: readonly (readonly [RegExp, string])[] = [...SPANISH_PATTERNS, ...ANSWER_PATTERNS].map(([english, spanish]) => [
  new RegExp(
    `^${english.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&').replaceAll(/[%~]/gu, english.endsWith('.') ? '(.+?)' : '([^,;]+?)')}$`,
    'u',
  ),
  spanish,
]);
