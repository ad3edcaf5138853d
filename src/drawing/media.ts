import { MEDIA, type Medium } from '../records/index.js';
import type { Pen } from './pen.js';

export interface MediumStyle {
  readonly medium: Medium;
  /** As a reader says it. */
  readonly name: string;
  readonly letter: string;
  readonly colour: string;
  /** Line type number of ISO 128-2, unverified citation; the duct is a double line 01. */
  readonly lineType: number;
  readonly pen: Pen;
}

/** Line elements of ISO 128-2, unverified citation: long dash 24 d, dash 12 d, short dash 6 d, gap 3 d, dot at most 0.5 d. */
const D = 0.25;
const LONG = 24 * D;
const DASH = 12 * D;
const SHORT = 6 * D;
const GAP = 3 * D;
/** Drawn longer than the standard's, so that a wide line still shows a dot. */
const DOT = 2 * D;

const PATTERNS: Readonly<Record<number, readonly number[] | undefined>> = {
  1: undefined,
  2: [DASH, GAP],
  4: [LONG, GAP, DOT, GAP],
  5: [LONG, GAP, DOT, GAP, DOT, GAP],
  7: [DOT, GAP],
  8: [LONG, GAP, SHORT, GAP],
  9: [LONG, GAP, SHORT, GAP, SHORT, GAP],
  10: [DASH, GAP, DOT, GAP],
  11: [DASH, GAP, DASH, GAP, DOT, GAP],
  12: [DASH, GAP, DOT, GAP, DOT, GAP],
};

/** Colours: 3:1 and more on white, and far apart for red-blind and green-blind readers too; tests/drawing/palette.test.ts measures it. */
const TABLE: Readonly<Record<Medium, readonly [name: string, letter: string, colour: string, lineType: number]>> = {
  dc: ['Direct current', 'D', '#b6270c', 1],
  ac: ['Alternating current', 'A', '#ad47d1', 2],
  data: ['Data and signals', 'I', '#058364', 7],
  water: ['Fresh water', 'W', '#033a82', 4],
  drain: ['Drains and waste', 'S', '#522e17', 5],
  gas: ['Gas', 'G', '#c28605', 8],
  air: ['Compressed air', 'P', '#12677d', 10],
  hydraulic: ['Hydraulics', 'H', '#f33db5', 11],
  duct: ['Air ducts', 'V', '#30393f', 1],
  refrigerant: ['Refrigerant', 'R', '#38984c', 12],
  fuel: ['Fuel', 'F', '#2828f8', 9],
};

function style(medium: Medium): MediumStyle {
  const [name, letter, colour, lineType] = TABLE[medium];
  const dash = PATTERNS[lineType];
  const pen: Pen =
    medium === 'duct'
      ? { widthMm: 0.7, colour, core: { colour: '#ffffff', widthMm: 0.25 } }
      : { widthMm: 0.35, colour, ...(dash ? { dash } : {}) };
  return { medium, name, letter, colour, lineType, pen };
}

/** Letter, colour, pattern and name of each medium: a black-and-white copy is read by letter and pattern. */
export const MEDIUM_STYLES: Readonly<Record<Medium, MediumStyle>> = Object.fromEntries(
  MEDIA.map((medium) => [medium, style(medium)]),
) as Record<Medium, MediumStyle>;
