import stringWidth from 'string-width';
import { OWN_COLOUR } from './printable.js';

/** Everything printed fits this many columns. */
export const WIDTH = 80;

/** Columns that a text takes on a terminal: two for a sign of Chinese, none for a mark that combines (Unicode Standard Annex 11). */
export function widthOf(text: string): number {
  const plain = text.replace(COLOUR, '');
  return PLAIN_COLUMNS.test(plain) ? plain.length : stringWidth(plain);
}

/** Most of what is printed: a column each, alone and beside each other, without a look into the tables of Unicode. */
export const PLAIN_COLUMNS =
  /^[\x20-\x7e\xa0-\xac\xae-\xff\u2013\u2014\u2018-\u201f\u2026\u2032\u2033\u2190-\u2193\u2212\u2248\u2264\u2265\u2580-\u259fΔ-Ωα-ω]*$/u;

/** They take no column. */
const COLOUR = new RegExp(`${OWN_COLOUR.replace('[', '\\[')}\\d+m`, 'gu');

/** Breaks a text at spaces into lines of at most `width` columns; a longer word stays whole. */
export function wrapLines(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/u)) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines;
}

/** A paragraph with `first` before its first line and as many spaces before the others. */
export function paragraph(text: string, first = ''): string {
  const indent = ' '.repeat(widthOf(first));
  return wrapLines(text, WIDTH - indent.length)
    .map((line, i) => (i === 0 ? first : indent) + line)
    .join('\n');
}

/** One bulleted paragraph each. */
export const bullets = (texts: readonly string[]): string => texts.map((text) => paragraph(text, '  - ')).join('\n');

/** `1 error`, `3 errors`. */
export const counted = (count: number, noun: string, plural = `${noun}s`): string => `${count} ${count === 1 ? noun : plural}`;
