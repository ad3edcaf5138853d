import { readFileSync } from 'node:fs';
import path from 'node:path';
import { DIRECTION_MARKS } from '../source/direction-marks.js';
import { packageFolder } from './print/packaged.js';

/**
 * A browser shows an empty box for a sign that its fonts lack, or takes a font of the machine that another machine has not. The book
 * does neither: such a sign stands as its code, and the printer says so.
 */

/** Ranges that the typeface's subsets claim, but fill in part only. */
const THIN: readonly (readonly [number, number])[] = [
  [0x1d00, 0x1dbf],
  [0x2c60, 0x2c7f],
  [0xa720, 0xa7ff],
];
/** Marks that turn the direction of what follows, to the end of the page if nobody stops them: never printed. */
const TURNS = new RegExp(`[${DIRECTION_MARKS}]`, 'gu');
/** Controls that no text needs; a line's end is white space. */
const CONTROLS = /(?![\t\n\r])[\p{Cc}\ufeff\u2028\u2029]/gu;
/** The sign of resistance, which the typeface lacks: `42 Mohm`. A letter among Greek ones is none. */
const OHM = /(?<!\p{Script=Greek})\u03a9(?!\p{Script=Greek})/gu;
/** Codes that stand in one place before the rest is only counted. */
const MOST_CODES = 4;

let ranges: readonly (readonly [number, number])[] | undefined;

function isPrinted(code: number): boolean {
  ranges ??= readRanges();
  const within = ([from, to]: readonly [number, number]) => code >= from && code <= to;
  return ranges.some(within) && !THIN.some(within);
}

function readRanges(): readonly (readonly [number, number])[] {
  const folder = packageFolder('@fontsource/atkinson-hyperlegible-next');
  if (folder === undefined) return [[0x20, 0x7e]];
  const subsets = JSON.parse(readFileSync(path.join(folder, 'unicode.json'), 'utf8')) as Record<string, string>;
  return [subsets.latin, subsets['latin-ext']]
    .flatMap((list) => list?.split(',') ?? [])
    .map((range): readonly [number, number] => {
      const [from = 0, to = from] = range
        .trim()
        .replace('U+', '')
        .split('-')
        .map((end) => Number.parseInt(end, 16));
      return [from, to];
    });
}

const codeOf = (sign: string): string => `U+${(sign.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`;

/** A text, or a page's markup, with nothing in it that the typeface lacks. */
export interface Printable {
  readonly text: string;
  /** Signs that stand as codes, each once, in the order met. */
  readonly lacking: readonly string[];
}

export function withGlyphs(given: string): Printable {
  const lacking = new Set<string>();
  // Never across a tag's end: with a stroke put over it (U+0338) it would be another sign, and the tag would go on.
  const composed = given.replace(/[^<>]+/gu, (words) => words.normalize('NFC'));
  const plain = composed.replace(TURNS, '').replace(CONTROLS, ' ').replace(OHM, 'ohm');
  const text = plain.replace(/[^\u0020-\u00ff\s](?:[^\u0020-\u00ff]*[^\u0020-\u00ff\s])?/gu, (run) =>
    [...run].every((sign) => isPrinted(sign.codePointAt(0) as number)) ? run : coded(run, lacking),
  );
  return { text, lacking: [...lacking] };
}

/** Signs one after the other that the typeface lacks become one bracket of codes; what it has stays. */
function coded(run: string, lacking: Set<string>): string {
  let text = '';
  let codes: string[] = [];
  const close = (): void => {
    const more = codes.length - MOST_CODES;
    if (codes.length > 0) text += `[${codes.slice(0, MOST_CODES).join(' ')}${more > 0 ? ` and ${more} more signs` : ''}]`;
    codes = [];
  };
  for (const sign of run) {
    if (isPrinted(sign.codePointAt(0) as number) || /\s/u.test(sign)) {
      close();
      text += sign;
    } else {
      lacking.add(sign);
      codes.push(codeOf(sign));
    }
  }
  close();
  return text;
}

/** Raised figures that the typeface lacks, as markup: in words between tags only. */
export const raised = (html: string): string =>
  html.replace(/>[^<]*\u2074[^<]*/gu, (words) => words.replaceAll('\u2074', '<sup>4</sup>'));

/** What the one who prints is told of signs that stand as codes. */
export function lackingWords(lacking: readonly string[]): readonly string[] {
  if (lacking.length === 0) return [];
  const shown = lacking.slice(0, 6).map((sign) => `${sign} ${codeOf(sign)}`);
  const more = lacking.length - shown.length;
  return [
    `The book's typeface lacks ${lacking.length} ${lacking.length === 1 ? 'sign' : 'signs'} of this record, printed as codes: ${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}. Write what a reader needs in Latin letters as well.`,
  ];
}
