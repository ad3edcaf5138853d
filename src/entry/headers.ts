import { getOwn } from '../get-own.js';
import { lookUp } from '../quantity/parse.js';
import { SPOKEN } from '../quantity/units.js';
import { nearest } from '../source/nearest.js';
import { columnFor, columnsOf, type EntryColumn } from './columns.js';
import type { EntryKind } from './homes.js';
import type { RecordIndex } from './record-index.js';
import { tradeWords } from './trade-words.js';

/** What a column of a sheet is read as. */
export interface SheetHeader {
  readonly text: string;
  readonly index: number;
  /** Undefined where it is not read. */
  readonly column?: EntryColumn;
  readonly unit?: string;
  /** certain: the key itself, or mapped by the shop. close: a guess that somebody must confirm. unread: left out on purpose. */
  readonly how: 'certain' | 'close' | 'unread' | 'unknown' | 'wrong';
  /** For `wrong`: what is amiss. */
  readonly message?: string;
}

/** The word in a mapping for a column that is not read. */
export const UNREAD = 'skip';

export interface Mapping {
  /** Heads of columns → keys, as the shop keeps them and as they were said at the prompt. */
  readonly said: ReadonlyMap<string, string>;
  /** Words that this shell knows, as its axles’ ids → keys. */
  readonly own: ReadonlyMap<string, string>;
}

/** Finds the key of every column: as mapped, by its own name, by a word of the trade, by a close name. */
export function matchHeads(kind: EntryKind, heads: readonly string[], mapping: Mapping): readonly SheetHeader[] {
  const known = columnsOf(kind);
  const found = heads.map((text, index) => matchOne(kind, known, text, index, mapping));
  return found.map((head, i) => {
    const first = found.findIndex((one) => one.column?.key === head.column?.key);
    if (head.column === undefined || first === i) return head;
    const other = heads[first] as string;
    // A guess gives way to a column that says it itself; two that say it are a mistake.
    if (head.how === 'close') return { text: head.text, index: head.index, how: 'unknown' };
    return {
      ...head,
      how: 'wrong',
      message: `columns \`${other}\` and \`${head.text}\` are both \`${head.column.key}\`, expected one`,
    };
  });
}

function matchOne(
  kind: EntryKind,
  known: readonly EntryColumn[],
  text: string,
  index: number,
  { said, own }: Mapping,
): SheetHeader {
  const base = { text, index };
  if (text === '') return { ...base, how: 'unread' };
  const { name, unit, message } = splitUnit(text, known);
  const key = said.get(plainHeader(text)) ?? said.get(plainHeader(name));
  if (key === UNREAD) return { ...base, how: 'unread' };
  if (key !== undefined) {
    const column = columnFor(kind, key);
    return column
      ? { ...base, column, ...(unit ? { unit } : {}), how: 'certain' }
      : { ...base, how: 'wrong', message: `\`${text}\` is mapped to \`${key}\`, which is no key of a ${kind}` };
  }
  const certain = columnFor(kind, name) ?? known.find((one) => plainHeader(one.key) === plainHeader(name)) ?? dotted(kind, name);
  const likely = certain ?? guessed(kind, known, name, own);
  // `Tag (lb)` is the reading of an axle and no number of a record.
  const guess = certain || unit === undefined || (likely && takesUnit(likely)) ? likely : undefined;
  if (!guess) return { ...base, ...(unit ? { unit } : {}), how: 'unknown' };
  if (message) return { ...base, column: guess, how: 'wrong', message };
  return { ...base, column: guess, ...(unit ? { unit } : {}), how: certain ? 'certain' : 'close' };
}

const WITHOUT_UNIT: readonly EntryColumn['form']['as'][] = ['id', 'ids', 'text', 'texts', 'date', 'choice', 'yes or no', 'count'];
const takesUnit = ({ form }: EntryColumn): boolean => !WITHOUT_UNIT.includes(form.as);

/** `From X` and `from x` as `from.x`. */
function dotted(kind: EntryKind, name: string): EntryColumn | undefined {
  const words = name.split(/[\s._]+/u);
  if (words.length < 2) return undefined;
  return columnFor(
    kind,
    [(words[0] as string).toLowerCase(), ...words.slice(1).map((word) => (word.length === 1 ? word.toLowerCase() : word))].join(
      '.',
    ),
  );
}

function guessed(
  kind: EntryKind,
  known: readonly EntryColumn[],
  name: string,
  own: ReadonlyMap<string, string>,
): EntryColumn | undefined {
  const word = plainHeader(name);
  const key =
    own.get(word) ??
    tradeWords(kind).get(word) ??
    nearest(
      name,
      known.map((column) => column.key),
      1,
    )[0];
  return key === undefined ? undefined : columnFor(kind, key);
}

/** `Length (in)`, `Length [mm]`, `Length, in`, `length_mm`: the name, and the unit as this format writes it. */
function splitUnit(
  text: string,
  known: readonly EntryColumn[],
): { readonly name: string; readonly unit?: string; readonly message?: string } {
  const bracketed = /^(.*?\S)\s*[([]\s*([^)\]]*\S)\s*[)\]]$/u.exec(text);
  if (bracketed) {
    const [, name = '', symbol = ''] = bracketed;
    const unit = unitNamed(symbol);
    if (unit !== undefined) return { name, unit };
    // `Date (when cut)` says no unit; `Length (inche)` would.
    const column = known.find((one) => plainHeader(one.key) === plainHeader(name));
    const message = `\`${symbol}\` in \`${text}\` is no unit, expected one as \`in\`, \`mm\`, \`lb\` or \`kg\``;
    return column?.form.as === 'quantity' ? { name, message } : { name };
  }
  const trailing = /^(.*\S)(?:,\s*|[\s_]+)(\S+)$/u.exec(text);
  const unit = trailing === null ? undefined : unitNamed(trailing[2] as string);
  if (!trailing || unit === undefined || known.some((one) => plainHeader(one.key) === plainHeader(text))) return { name: text };
  return { name: trailing[1] as string, unit };
}

const unitNamed = (symbol: string): string | undefined => {
  const spoken = getOwn(SPOKEN, symbol.toLowerCase());
  return lookUp(symbol)
    ? symbol
    : spoken !== undefined && lookUp(spoken)
      ? spoken
      : lookUp(symbol.toLowerCase())
        ? symbol.toLowerCase()
        : undefined;
};

/** A ticket’s column with a unit of mass that fits no axle: left out, it would be a ticket without its reading. */
export function unreadMass(kind: EntryKind, heads: readonly SheetHeader[], known: RecordIndex): string | undefined {
  const lost = heads.find(({ how, unit }) => how === 'unknown' && unit !== undefined && lookUp(unit)?.dimension === 'mass');
  if (kind !== 'ticket' || lost === undefined) return undefined;
  const axles = known.ofKind('axle').map(({ id }) => String(id));
  const have =
    axles.length === 0
      ? 'this shell has no axles yet: put them into shell.yaml first'
      : `this shell has ${axles.join(', ')}: say which with --map '${lost.text}=readings.${axles[0]}'`;
  return `column \`${lost.text}\` fits no axle, and ${have}`;
}

/** Letters and digits alone: `Cut Length` and `cut_length` are one name. */
export const plainHeader = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
