import { OWN_COLOUR } from './printable.js';

/** Terminal colours by meaning. Without colour every function gives its text back. */
export interface TerminalPaint {
  error(text: string): string;
  warning(text: string): string;
  good(text: string): string;
  strong(text: string): string;
  faint(text: string): string;
}

const sgr =
  (open: number, close: number) =>
  (text: string): string =>
    text === '' ? '' : `${OWN_COLOUR}${open}m${text}${OWN_COLOUR}${close}m`;

const COLOURED: TerminalPaint = {
  error: sgr(31, 39),
  warning: sgr(33, 39),
  good: sgr(32, 39),
  strong: sgr(1, 22),
  faint: sgr(2, 22),
};

const same = (text: string): string => text;
const PLAIN: TerminalPaint = { error: same, warning: same, good: same, strong: same, faint: same };

export const paint = (coloured: boolean): TerminalPaint => (coloured ? COLOURED : PLAIN);
