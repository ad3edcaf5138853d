import { getOwn } from '../get-own.js';
import { type Dimension, EXAMPLES, SPOKEN, UNITS } from './units.js';

/** Units that bare numbers are read in, from a file's `units:` line. */
export type FileUnits = Readonly<Partial<Record<Dimension, string>>>;

export type ParsedQuantity =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false;
      readonly reason: 'unit missing' | 'not a quantity' | 'wrong unit' | 'unknown unit';
      /** `the bare number \`5.25\``: what stands there, to follow `Found`. */
      readonly found: string;
      /** `a length with a unit, as \`5.25 in\``: to follow `expected`. */
      readonly expected: string;
      /** Both in one sentence. */
      readonly message: string;
    };

const fail = (reason: Extract<ParsedQuantity, { ok: false }>['reason'], found: string, expected: string): ParsedQuantity => ({
  ok: false,
  reason,
  found,
  expected,
  message: `Found ${found}, expected ${expected}`,
});

const notOne = (found: string, dimension: Dimension): ParsedQuantity =>
  fail('not a quantity', found, `${aQuantity(dimension)} as \`${EXAMPLES[dimension]}\``);

/** `1,234.5`, `5-1/4`, `1/2`, `.5`, `-3`; thousands commas only in groups of three. */
const NUMBER = String.raw`[+-]?(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+-\d+\/\d+|\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const TERM = new RegExp(String.raw`^(${NUMBER})\s*(.*)$`, 'u');
const FEET_INCHES =
  /^([+-]?)(\d+(?:\.\d+)?|\d{1,3}(?:,\d{3})+)\s*(?:ft|')\s*-?\s*(\d+-\d+\/\d+|\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d*)?|\.\d+)\s*(?:in|")$/u;

/** A plain or mixed number as typed: `5-1/4` is 5.25, `-1/2` is −0.5. */
export function parseNumber(text: string): number | undefined {
  const match = /^([+-]?)(?:(\d+)[- ])?(\d+)\/(\d+)$/u.exec(text.trim());
  if (match) {
    const denominator = Number(match[4]);
    if (denominator === 0) return undefined;
    const size = Number(match[2] ?? 0) + Number(match[3]) / denominator;
    return match[1] === '-' ? -size : size;
  }
  const plain = text.trim().replace(/(?<=\d),(?=\d{3}(?:\D|$))/gu, '');
  if (!/^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/u.test(plain)) return undefined;
  const value = Number(plain);
  return Number.isFinite(value) ? value : undefined;
}

/**
 * Reads a quantity of the wanted dimension as typed in a record, in the unit used inside (see units.ts).
 * A bare number is read in the file's unit for that dimension, and refused without one. Zero lengths and masses need no unit's
 * guess either way: a bare 0 is 0 in every unit of a dimension without offset.
 */
export function parseQuantity(typed: unknown, dimension: Dimension, fileUnits: FileUnits = {}): ParsedQuantity {
  const read = readQuantity(typed, dimension, fileUnits);
  if (!read.ok || Math.abs(read.value) <= MOST) return read;
  return notOne(`\`${clip(String(typed))}\`, which is too large`, dimension);
}

/** In any unit used inside: no figure of a coach comes near, and products of a few such still are numbers. */
const MOST = 1e15;

function readQuantity(typed: unknown, dimension: Dimension, fileUnits: FileUnits): ParsedQuantity {
  if (typeof typed === 'number') {
    if (!Number.isFinite(typed)) return notOne(`\`${typed}\``, dimension);
    return bare(typed, String(typed), dimension, fileUnits);
  }
  if (typeof typed !== 'string') return notOne(describe(typed), dimension);
  const text = typed.trim();
  if (dimension === 'length') {
    const value = feetAndInches(text);
    if (value !== undefined) return { ok: true, value };
  }
  const match = TERM.exec(text);
  const number = match ? parseNumber(match[1] as string) : undefined;
  if (!match || number === undefined) return notOne(`\`${clip(text)}\``, dimension);
  const symbol = (match[2] as string).trim();
  if (symbol === '') return bare(number, text, dimension, fileUnits);
  const unit = lookUp(symbol);
  if (!unit) return unknownUnit(symbol, text, dimension);
  if (unit.dimension !== dimension && !(dimension === 'conductorArea' && unit.dimension === 'area')) {
    const found = `${WORDS[unit.dimension]} \`${clip(text)}\``;
    return fail('wrong unit', found, `${aQuantity(dimension)} as \`${EXAMPLES[dimension]}\``);
  }
  return { ok: true, value: number * unit.factor + (unit.offset ?? 0) };
}

function feetAndInches(text: string): number | undefined {
  const feet = FEET_INCHES.exec(text);
  if (!feet) return undefined;
  const whole = parseNumber(feet[2] as string);
  const inches = parseNumber(feet[3] as string);
  if (whole === undefined || inches === undefined) return undefined;
  const value = (whole * 12 + inches) * 25.4;
  return feet[1] === '-' ? -value : value;
}

function bare(number: number, text: string, dimension: Dimension, fileUnits: FileUnits): ParsedQuantity {
  if (dimension === 'fraction') return { ok: true, value: number };
  if (dimension === 'angle') return { ok: true, value: number };
  const symbol = fileUnits[dimension];
  if (symbol !== undefined) {
    const unit = lookUp(symbol);
    if (unit && unit.dimension === dimension) return { ok: true, value: number * unit.factor + (unit.offset ?? 0) };
  }
  if (number === 0 && dimension !== 'temperature') return { ok: true, value: 0 };
  const unitExample = EXAMPLES[dimension].split(' ').slice(1).join(' ');
  return fail('unit missing', `the bare number \`${clip(text)}\``, `a quantity with a unit, as \`${clip(text)} ${unitExample}\``);
}

function unknownUnit(symbol: string, text: string, dimension: Dimension): ParsedQuantity {
  const known = Object.keys(UNITS).filter((name) => UNITS[name]?.dimension === dimension && name !== symbol);
  const spoken = getOwn(SPOKEN, symbol.toLowerCase().replace(/\.$/u, ''));
  const sameLetters = known.find((name) => name === spoken || name.toLowerCase() === symbol.toLowerCase());
  const expected = sameLetters
    ? `\`${clip(text.replace(symbol, sameLetters))}\``
    : `${aQuantity(dimension)} as \`${EXAMPLES[dimension]}\``;
  return fail('unknown unit', `the unit \`${clip(symbol)}\` in \`${clip(text)}\``, expected);
}

/** The unit of a symbol, tolerant of `sq` marks and the middle dot, never of case where it matters. */
export function lookUp(symbol: string): (typeof UNITS)[string] | undefined {
  const plain = symbol.replace(/²/gu, '2').replace(/³/gu, '3').replace(/⁴/gu, '4').replace(/Ω/gu, 'ohm');
  return getOwn(UNITS, plain);
}

/** Reads a quantity of any dimension; the unit says which. For fields whose dimension depends on the record. */
export function parseAnyQuantity(typed: unknown): { readonly value: number; readonly dimension: Dimension } | undefined {
  if (typeof typed !== 'string') return undefined;
  const feet = parseQuantity(typed, 'length');
  if (feet.ok && /[a-z"']/u.test(typed)) return { value: feet.value, dimension: 'length' };
  const match = TERM.exec(typed.trim());
  const unit = match && lookUp((match[2] as string).trim());
  if (!unit) return undefined;
  const parsed = parseQuantity(typed, unit.dimension);
  return parsed.ok ? { value: parsed.value, dimension: unit.dimension } : undefined;
}

const WORDS: Readonly<Record<Dimension, string>> = {
  length: 'length',
  area: 'area',
  inertia: 'second moment of area',
  mass: 'mass',
  force: 'force',
  pressure: 'pressure',
  time: 'time',
  temperature: 'temperature',
  volume: 'volume',
  voltage: 'voltage',
  current: 'current',
  power: 'power',
  resistance: 'resistance',
  torque: 'torque',
  density: 'density',
  lineMass: 'mass per length',
  angle: 'angle',
  fraction: 'percentage or level',
  stiffness: 'stiffness',
  flow: 'flow',
  conductorArea: 'conductor area',
};

const clip = (text: string): string => (text.length > 40 ? `${text.slice(0, 37)}…` : text);

function describe(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a block';
  return `\`${String(value)}\``;
}

/** `a length`, `an area`. */
const aQuantity = (dimension: Dimension): string => `${/^[aeiou]/u.test(WORDS[dimension]) ? 'an' : 'a'} ${WORDS[dimension]}`;
