import stringWidth from 'string-width';
import { OWN_COLOUR } from './printable.js';

/** Everything printed fits this many columns. */
export const WIDTH = 80;

/** Columns that a text takes on a terminal: two for a sign of Chinese, none for a mark that combines (Unicode Standard Annex 11). */
export function widthOf(text: string): number {
  const plain = text.replace(COLOUR, '');
  return PLAIN.test(plain) ? plain.length : stringWidth(plain);
}

/** Most of what is printed: a column each, without a look into the tables of Unicode. */
const PLAIN = /^[\x20-\x7e]*$/u;

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
