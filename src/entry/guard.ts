/**
 * Spreadsheets take a cell that begins with `=`, `+`, `-`, `@`, their wide forms, a tab or a line's end for a formula, some with blanks
 * before it, and run it. An apostrophe before it makes it text again; plain numbers need none. Source: OWASP, CSV Injection.
 */
const FORMULA = /^'*(?:[\t\r\n]|\s*[=+\-@\uff1d\uff0b\uff0d\uff20])/u;
const NUMBER = /^[+-]?\d+(?:\.\d+)?$/u;

export const guarded = (cell: string): string => (FORMULA.test(cell) && !NUMBER.test(cell) ? `'${cell}` : cell);

/** In a workbook a text is no formula; only what would be taken for guarded is. */
export const guardedText = (cell: string): string => (cell.startsWith("'") ? guarded(cell) : cell);

/** What {@link guarded} was given. */
export const unguarded = (cell: string): string => (cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell);
