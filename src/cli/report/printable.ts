import { DIRECTION_MARKS } from '../../source/direction-marks.js';

/** Begins a colour of our own until it is printed. Drawn anew in each run: no record can say it, and so colour what it says. */
export const OWN_COLOUR = `\u001b${Math.random().toString(36).slice(2)}[`;

/**
 * Text that may go to a terminal: records are untrusted, so control characters and text-direction marks in them are shown as
 * `\u{…}` and never sent. Line feeds, tabs and this program's own colours pass.
 */
export const printable = (text: string): string => text.split(OWN_COLOUR).map(tamed).join('\u001b[');

/** What was printed before, to be printed again: the only colours in it are our own. */
export const repainted = (text: string): string => text.replaceAll('\u001b[', OWN_COLOUR);

const tamed = (text: string): string => text.replace(UNSAFE, (sign) => `\\u{${(sign.codePointAt(0) as number).toString(16)}}`);

// Everything below space but tab and line feed; C1; marks of direction.
const UNSAFE = new RegExp(`[\\u0000-\\u0008\\u000b-\\u001f\\u007f-\\u009f${DIRECTION_MARKS}]`, 'gu');
