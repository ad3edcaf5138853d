import { DIRECTION_MARKS } from '../../source/direction-marks.js';

/**
 * Text that may go to a terminal: records are untrusted, so control characters and text-direction marks in them are shown as
 * `\u{…}` and never sent. Line feeds, tabs and this program's own colours pass.
 */
export function printable(text: string): string {
  return text.replace(UNSAFE, (sign) => `\\u{${(sign.codePointAt(0) as number).toString(16)}}`);
}

// Everything below space but tab and line feed; ESC unless it opens one of our own colour or clear-line sequences; C1; marks of direction.
const UNSAFE = new RegExp(
  `[\\u0000-\\u0008\\u000b-\\u001a\\u001c-\\u001f\\u007f-\\u009f${DIRECTION_MARKS}]|\\u001b(?!\\[(?:31|33|32|39|1|2|22)m)`,
  'gu',
);
