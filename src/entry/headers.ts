import { getOwn } from '../get-own.js';
import { lookUp } from '../quantity/parse.js';
import { SPOKEN } from '../quantity/units.js';
import { nearest } from '../source/nearest.js';
import type { EntryColumn } from './columns.js';
import type { RecordIndex } from './record-index.js';
import { formOfSheet, type SheetForm, type SheetWord } from './sheet-form.js';
import type { LeadWord } from './trade-words.js';

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
  /** Somebody said what it is: to be kept for the next sheet, where that is wanted. */
  readonly mapped?: boolean;
  /** What its head says beside the cell: the method of `VT by`. */
  readonly implied?: { readonly list: string; readonly index: number; readonly key: string; readonly value: string };
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
export function matchHeads(word: SheetWord, heads: readonly string[], mapping: Mapping): readonly SheetHeader[] {
  const form = formOfSheet(word);
  const leads = [...new Set(heads.flatMap((text) => leadOf(form, text)?.word ?? []))];
  const found = heads.map((text, index) => ledHeader(form, text, index, leads, mapping) ?? matchOne(form, text, index, mapping));
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

/** The word before a field, and what follows it. */
function leadOf({ leads }: SheetForm, text: string): (LeadWord & { readonly rest: string }) | undefined {
  const [first = '', ...rest] = text.trim().split(/[\s._-]+/u);
  const lead = leads.get(first.toLowerCase());
  return lead && { ...lead, rest: rest.join(' ') };
}

/** `VT by`, `VT date`, `PT result`: of the inspection with that method, the first such word’s the first. */
function ledHeader(
  form: SheetForm,
  text: string,
  index: number,
  leads: readonly string[],
  { said }: Mapping,
): SheetHeader | undefined {
  const lead = leadOf(form, text);
  if (!lead || said.has(plainHeader(text))) return undefined;
  const at = leads.indexOf(lead.word);
  const rest = plainHeader(lead.rest) || 'result';
  const prefix = `${lead.list}.1.`;
  const word = form.words.get(rest);
  const column =
    form.columnFor(`${lead.list}.${at + 1}.${rest}`) ??
    (word?.startsWith(prefix) ? form.columnFor(`${lead.list}.${at + 1}.${word.slice(prefix.length)}`) : undefined);
  return (
    column && { text, index, column, how: 'close', implied: { list: lead.list, index: at, key: lead.key, value: lead.word } }
  );
}

function matchOne(form: SheetForm, text: string, index: number, { said, own }: Mapping): SheetHeader {
  const base = { text, index };
  if (text === '') return { ...base, how: 'unread' };
  const { name, unit, message } = splitUnit(text, form);
  const key = said.get(plainHeader(text)) ?? said.get(plainHeader(name));
  if (key === UNREAD) return { ...base, how: 'unread', mapped: true };
  if (key !== undefined) {
    const column = form.columnFor(key);
    return column
      ? { ...base, column, ...unitFor(column, unit), how: 'certain', mapped: true }
      : { ...base, how: 'wrong', message: `\`${text}\` is mapped to \`${key}\`, which is not a key of a ${form.word}` };
  }
  const certain =
    form.columnFor(name) ?? form.columns.find((one) => plainHeader(one.key) === plainHeader(name)) ?? dotted(form, name);
  const likely = certain ?? guessed(form, name, own);
  // `Tag (lb)` is the reading of an axle and no number of a record.
  const guess = certain || unit === undefined || (likely && takesUnit(likely)) ? likely : undefined;
  if (!guess) return { ...base, ...(unit ? { unit } : {}), how: 'unknown' };
  if (message) return { ...base, column: guess, how: 'wrong', message };
  const sure = certain !== undefined || (form.sure && wordsFor(name).some((word) => keyOf(form, word) !== undefined));
  return { ...base, column: guess, ...unitFor(guess, unit ?? impliedUnit(name, guess)), how: sure ? 'certain' : 'close' };
}

const unitFor = (column: EntryColumn, unit: string | undefined): { readonly unit?: string } =>
  unit === undefined || !takesUnit(column) ? {} : { unit };

const WITHOUT_UNIT: readonly EntryColumn['form']['as'][] = ['id', 'ids', 'text', 'texts', 'date', 'choice', 'yes or no', 'count'];
const takesUnit = ({ form }: EntryColumn): boolean => !WITHOUT_UNIT.includes(form.as);

/** `Volts`, `Ft`, `Fuse`: a head that says of itself what its numbers are. */
function impliedUnit(name: string, { form }: EntryColumn): string | undefined {
  const unit = unitNamed(name.trim()) ?? getOwn(IMPLIED, plainHeader(name));
  const dimension = unit === undefined ? undefined : lookUp(unit)?.dimension;
  const fits = form.as === 'quantity' ? form.dimension === dimension : form.as === 'other' || form.as === 'any quantity';
  return fits ? unit : undefined;
}

const IMPLIED: Readonly<Record<string, string>> = {
  ...{ fuse: 'A', breaker: 'A', cb: 'A', fusesize: 'A', fuserating: 'A', breakersize: 'A', breakerrating: 'A', fuseamps: 'A' },
  ...{ amperes: 'A', ampere: 'A', current: 'A', loadamps: 'A', voltage: 'V', wattage: 'W', pressurepsi: 'psi' },
};

/** What people call a column that only says its unit: `Ft` is a length. */
const NAMELESS: Readonly<Record<string, string>> = {
  length: 'length',
  mass: 'weight',
  voltage: 'voltage',
  current: 'amps',
  power: 'watts',
  pressure: 'pressure',
};

/** `From X` and `from x` as `from.x`. */
function dotted(form: SheetForm, name: string): EntryColumn | undefined {
  const words = name.split(/[\s._]+/u);
  if (words.length < 2) return undefined;
  return form.columnFor(
    [(words[0] as string).toLowerCase(), ...words.slice(1).map((word) => (word.length === 1 ? word.toLowerCase() : word))].join(
      '.',
    ),
  );
}

function guessed(form: SheetForm, name: string, own: ReadonlyMap<string, string>): EntryColumn | undefined {
  const words = wordsFor(name);
  const one = numbered(form, name);
  if (one) return one;
  const key =
    words.map((word) => own.get(word) ?? keyOf(form, word)).find((one) => one !== undefined) ??
    nearest(
      name,
      form.columns.map((column) => column.key),
      1,
    )[0];
  return key === undefined ? undefined : form.columnFor(key);
}

/** `Corner 1`, `Point 3 X`: of a list of places the one of that number, or a length of it. */
function numbered(form: SheetForm, name: string): EntryColumn | undefined {
  const match = /^(\p{L}[\p{L}\s_]*?)[\s_#.]*(\d{1,2})[\s_.]*([xyz])?$/iu.exec(name.trim());
  const key = match ? keyOf(form, plainHeader(match[1] as string)) : undefined;
  const column = key === undefined ? undefined : form.columnFor(key);
  if (!match || column?.form.as !== 'places') return undefined;
  return form.columnFor(`${key}.${match[2]}${match[3] === undefined ? '' : `.${match[3].toLowerCase()}`}`);
}

const keyOf = (form: SheetForm, word: string): string | undefined =>
  form.words.get(word) ?? form.columns.find(({ key }) => plainHeader(key) === word)?.key;

/** The words that a head may stand for: `Wire #` is a wire’s number; `Ft` alone a length. */
function wordsFor(name: string): readonly string[] {
  const unit = unitNamed(name.trim());
  const nameless = unit === undefined ? undefined : getOwn(NAMELESS, lookUp(unit)?.dimension ?? '');
  const spelled = plainHeader(name.replace(/#/gu, ' no '));
  return [...new Set([spelled, plainHeader(name), ...(nameless === undefined ? [] : [nameless])])];
}

/** `Length (in)`, `Length [mm]`, `Length, in`, `length_mm`: the name, and the unit as this format writes it. */
function splitUnit(
  text: string,
  { columns: known }: SheetForm,
): { readonly name: string; readonly unit?: string; readonly message?: string } {
  const bracketed = /^(.*?\S)\s*[([]\s*([^)\]]*\S)\s*[)\]]$/u.exec(text);
  if (bracketed) {
    const [, name = '', symbol = ''] = bracketed;
    const unit = unitNamed(symbol);
    if (unit !== undefined) return { name, unit };
    // `Date (when cut)` says no unit; `Length (inche)` would.
    const column = known.find((one) => plainHeader(one.key) === plainHeader(name));
    const message = `\`${symbol}\` in \`${text}\` is not a unit, expected one such as \`in\`, \`mm\`, \`lb\` or \`kg\``;
    return column?.form.as === 'quantity' ? { name, message } : { name };
  }
  const trailing = /^(.*\S)(?:,\s*|[\s_]+)(\S+)$/u.exec(text);
  // `Wire #` is a number; a column of pounds is headed `(#)`.
  const unit = trailing === null || trailing[2] === '#' ? undefined : unitNamed(trailing[2] as string);
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
export function unreadMass(kind: SheetWord, heads: readonly SheetHeader[], known: RecordIndex): string | undefined {
  const lost = heads.find(({ how, unit }) => how === 'unknown' && unit !== undefined && lookUp(unit)?.dimension === 'mass');
  if (kind !== 'ticket' || lost === undefined) return undefined;
  const axles = known.ofKind('axle').map(({ id }) => String(id));
  const have =
    axles.length === 0
      ? 'this shell has no axles yet: put them into shell.yaml first, or run `shellbook add chassis`, which asks for them'
      : `this shell has ${axles.join(', ')}: say which with --map '${lost.text}=readings.${axles[0]}'`;
  return `column \`${lost.text}\` fits no axle, and ${have}`;
}

/** Letters and digits alone: `Cut Length` and `cut_length` are one name. */
export const plainHeader = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
