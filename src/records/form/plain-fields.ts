import { parseAnyQuantity, parseNumber } from '../../quantity/parse.js';
import { found } from '../../source/shown.js';
import type { Read } from './unit-reader.js';

/** What JSON Schema is told of a field beside its help. */
export type JsonHelp = Readonly<Record<string, unknown>>;

export const readText: Read<string> = (typed, say) => {
  if (typeof typed === 'string' && typed.trim() !== '') return typed;
  if (typeof typed === 'number' || typeof typed === 'boolean') return String(typed);
  return void say({ found: found(typed), expected: 'a word or a line of text' });
};

/** A list of texts; a single text stands for a list of one. */
export const readTexts: Read<readonly string[]> = (typed, say) => {
  if (!Array.isArray(typed)) {
    const one = readText(typed, say);
    return one === undefined ? undefined : [one];
  }
  const texts = typed.map((one, i) => readText(one, (fault) => say({ ...fault, path: [i] })));
  return texts.includes(undefined) ? undefined : (texts as readonly string[]);
};

/** What an id may be made of. */
export const ID_PATTERN = /^[\p{L}\p{N}./_-]+$/u;

export const readId: Read<string> = (typed, say) => {
  const text = typeof typed === 'number' ? String(typed) : typed;
  if (typeof text === 'string' && text.length <= 80 && ID_PATTERN.test(text)) return text;
  const allowed = 'an id of letters, digits, `-`, `.`, `/` and `_`';
  const suggestion =
    typeof text === 'string'
      ? text
          .trim()
          .replace(/[^\p{L}\p{N}./_-]+/gu, '-')
          .slice(0, 80)
      : '';
  return void say({
    found: found(typed),
    expected: ID_PATTERN.test(suggestion) && suggestion.length < 40 ? `${allowed}, as \`${suggestion}\`` : allowed,
  });
};

const DATE = /^(\d{4})-(\d{2})-(\d{2})(?:T([01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d+)?)?(?:Z|[+-]\d{2}:\d{2})?)?$/u;

/** ISO 8601: `2026-02-11`, or with a time `2026-02-11T14:30`. */
export const readDate: Read<string> = (typed, say) => {
  const match = typeof typed === 'string' ? DATE.exec(typed.trim()) : null;
  if (match && isDay(Number(match[1]), Number(match[2]), Number(match[3]))) return (typed as string).trim();
  if (match) return void say({ found: `the date ${found(typed)}`, expected: 'a day that the calendar has' });
  return void say({ found: `the date ${found(typed)}`, expected: 'year, month, day as `2026-02-11`' });
};

function isDay(year: number, month: number, day: number): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

const YES: Readonly<Record<string, boolean>> = { yes: true, no: false, true: true, false: false };

export const readYesNo: Read<boolean> = (typed, say) => {
  if (typeof typed === 'boolean') return typed;
  const said = typeof typed === 'string' ? typed.toLowerCase() : '';
  if (Object.hasOwn(YES, said)) return YES[said];
  return void say({ found: found(typed), expected: '`yes` or `no`' });
};

export function readNumber(typed: unknown): number | undefined {
  if (typeof typed === 'number') return typed;
  return typeof typed === 'string' ? parseNumber(typed) : undefined;
}

/** Any quantity; its unit says which. A bare number is a count (of leaks, of drips). */
export const anyQuantity: Read<{ value: number; dimension: string; text: string }> = (typed, say) => {
  const number = readNumber(typed);
  if (number !== undefined) return { value: number, dimension: 'count', text: String(typed) };
  const quantity = parseAnyQuantity(typed);
  if (quantity) return { ...quantity, text: String(typed).trim() };
  return void say({ found: found(typed), expected: 'a quantity with its unit, as `3 psi`, `0.5 ohm` or `12 %`' });
};
