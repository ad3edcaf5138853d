import type { Vec3 } from '../geometry/vector.js';
import { type Dimension, EXAMPLES } from '../quantity/units.js';
import { found } from '../source/shown.js';
import { CLOSED_LISTS, type ClosedList } from './closed-lists.js';
import { type AnyField, Field, type FieldShape, type Fields } from './field.js';
import type { FieldForm } from './form/field-form.js';
import { anyQuantity, type JsonHelp, readDate, readId, readNumber, readText, readTexts, readYesNo } from './form/plain-fields.js';
import { eachOf, type Least, oneOrMore, type Read, type UnitReader } from './form/unit-reader.js';
import { enumFault, readPipeSize, readThreeLengths, readTwoLengths } from './form/worded-fields.js';
import type { ModelOf, ReadOf } from './types.js';

/** What follows a quantity's name in the model: its unit inside. */
export const SUFFIX = {
  length: 'Mm',
  area: 'Mm2',
  inertia: 'Mm4',
  mass: 'Kg',
  force: 'N',
  pressure: 'Pa',
  time: 'S',
  temperature: 'K',
  volume: 'M3',
  voltage: 'V',
  current: 'A',
  power: 'W',
  resistance: 'Ohm',
  torque: 'Nm',
  density: 'KgM3',
  lineMass: 'KgM',
  angle: 'Deg',
  fraction: '',
  stiffness: 'NM',
  flow: 'M3S',
  conductorArea: 'Mm2',
} as const satisfies Record<Dimension, string>;
export type SuffixOf<D extends Dimension> = (typeof SUFFIX)[D];

const QUANTITY_JSON = { type: ['string', 'number'] } as const;
const TRIPLE_JSON = { type: 'array', items: QUANTITY_JSON, minItems: 3, maxItems: 3 } as const;
/** Three lengths, or a phrase an axis: `{x: 24 in aft of P-L-06, y: on SK-L-03, z: 40 in}`. */
const POSITION_JSON = {
  anyOf: [
    TRIPLE_JSON,
    {
      type: 'object',
      properties: {
        x: { ...QUANTITY_JSON, description: 'Rearward, or as 24 in aft of P-L-06' },
        y: { ...QUANTITY_JSON, description: 'To the right, or as 1 in inboard of SK-L-03' },
        z: { ...QUANTITY_JSON, description: 'Up, or as 14 in above FB-L' },
      },
      required: ['x', 'y', 'z'],
      additionalProperties: false,
    },
    { type: 'string' },
  ],
} as const;

/** A field whose reading may depend on the file's units and datum. `idsAt`: see `Shape`. */
export function measured<T, S extends string = ''>(
  read: (units: UnitReader) => Read<T>,
  help: string,
  json: JsonHelp = {},
  form: FieldForm = { as: 'other' },
  more: { readonly suffix?: S; readonly idsAt?: readonly string[] } = {},
): Field<T, T, S> {
  const shape: FieldShape = { is: 'value', read, json, form, idsAt: more.idsAt ?? [] };
  return new Field(shape, { help, presence: 'optional', suffix: more.suffix ?? '' });
}

/** A field that reads the same in every file. */
export const plainField = <T>(
  read: Read<T>,
  help: string,
  json: JsonHelp = {},
  form: FieldForm = { as: 'other' },
  idsAt: readonly string[] = [],
): Field<T> => measured(() => read, help, json, form, { idsAt });

/** In the unit used inside (see quantity/units.ts). */
export const quantity = <const D extends Dimension>(
  dimension: D,
  help: string,
  least: Least = 'zero',
): Field<number, number, SuffixOf<D>> =>
  measured(
    (units) => (typed, say) => units.quantity(typed, dimension, least, say),
    help,
    { ...QUANTITY_JSON, examples: [EXAMPLES[dimension]] },
    { as: 'quantity', dimension },
    { suffix: SUFFIX[dimension] },
  );

/** A temperature that the model has in °C: rounded, so that 105 C typed is 105 °C read. */
export const celsius = (help: string, least: Least = 'zero'): Field<number, number, 'C'> =>
  quantity('temperature', help, least).model((kelvin) => Math.round((kelvin - 273.15) * 1e6) / 1e6, 'C');

/** A percentage or level, 0 to 1. */
export const level = (help: string): Field<number> =>
  measured(
    (units) => (typed, say) => units.level(typed, say),
    help,
    { ...QUANTITY_JSON, examples: ['12 %', '3/4'] },
    { as: 'level' },
  );

/** `[x, y, z]` in the standard datum, mm. */
export const position = (help: string): Field<Vec3> =>
  measured((units) => (typed, say) => units.position(typed, say), help, POSITION_JSON, { as: 'place' });

/** Corners or way points, at least `least` of them. */
export const positions = (help: string, least = 0, most = Number.POSITIVE_INFINITY): Field<readonly Vec3[]> =>
  measured(
    (units) => (typed, say) => units.positions(typed, say, least, most),
    help,
    { type: 'array', items: POSITION_JSON, minItems: least },
    { as: 'places' },
  );

/** Several outlines. */
export const outlines = (help: string): Field<readonly (readonly Vec3[])[]> =>
  measured(
    (units) => (typed, say) =>
      eachOf(typed, say, 'outlines, each a list of corners', (one, sayOne) => units.positions(one, sayOne, 3)),
    help,
    { type: 'array', items: { type: 'array', items: POSITION_JSON } },
    { as: 'outlines' },
  );

/** Three lengths that are no place: no datum shift. */
export const offset = (help: string): Field<Vec3> =>
  measured((units) => (typed, say) => units.offset(typed, say), help, TRIPLE_JSON, { as: 'place' });

/** `20 in x 12 in x 8 in`, or the three in a list: along, across, up, mm. */
export const size = (help: string): Field<Vec3, Vec3, 'Mm'> =>
  measured(
    (units) => (typed, say) => (typeof typed === 'string' ? readThreeLengths(typed, units.units, say) : units.offset(typed, say)),
    help,
    { ...TRIPLE_JSON, type: ['array', 'string'], examples: ['20 in x 12 in x 8 in'] },
    { as: 'place' },
    { suffix: 'Mm' },
  );

/** Distance rearward, moved with the datum. */
export const station = (help: string): Field<number, number, 'Mm'> =>
  measured(
    (units) => (typed, say) => units.station(typed, say),
    help,
    { ...QUANTITY_JSON, examples: ['255 in'] },
    { as: 'quantity', dimension: 'length' },
    { suffix: 'Mm' },
  );

/** `[least, most]`, in the unit used inside. */
export const range = <const D extends Dimension>(
  dimension: D,
  help: string,
): Field<readonly [number, number], readonly [number, number], SuffixOf<D>> =>
  measured(
    (units) => (typed, say) => {
      const values = eachOf(typed, say, `two values as \`[1/8 in, 1/2 in]\``, (one, sayOne) =>
        units.quantity(one, dimension, 'zero', sayOne),
      );
      if (!values) return undefined;
      if (values.length !== 2) return void say({ found: `${values.length} values`, expected: 'two, the least and the most' });
      return values as unknown as readonly [number, number];
    },
    help,
    { type: 'array', items: QUANTITY_JSON, minItems: 2, maxItems: 2 },
    { as: 'range', dimension },
    { suffix: SUFFIX[dimension] },
  );

/** `14 in x 18 in`, mm. */
export const twoLengths = (help: string): Field<readonly [number, number], readonly [number, number], 'Mm'> =>
  measured(
    (units) => (typed, say) => readTwoLengths(typed, units.units, say),
    help,
    { type: 'string', examples: ['14 in x 18 in'] },
    { as: 'two lengths' },
    { suffix: 'Mm' },
  );

/** `1/2 in PEX` taken apart: nominal size and material word(s). */
export interface PipeSize {
  readonly text: string;
  readonly nominalMm: number;
  readonly material: string;
}

export const pipeSize = (help: string): Field<PipeSize> =>
  measured(
    (units) => (typed, say) => readPipeSize(typed, units.units, say),
    help,
    { type: 'string', examples: ['1/2 in PEX'] },
    {
      as: 'text',
    },
  );

/** A quantity whose dimension depends on its record: value in SI (mm for lengths) with its dimension's name. */
export interface Quantity {
  readonly value: number;
  readonly dimension: string;
  /** As typed, for printing. */
  readonly text: string;
}

/** A quantity whose unit says what it is; a bare number is a count. */
export const quantityOfAnyKind = (help: string): Field<Quantity> =>
  plainField(anyQuantity, help, QUANTITY_JSON, { as: 'any quantity' });

/** Amperes or watts: the model has whichever was typed. */
export function load(help: string): Field<{ readonly a?: number; readonly w?: number }, number, 'A' | 'W'> {
  const made = measured(
    (units) => (typed, say) => {
      if (/W\s*$/u.test(String(typed))) {
        const w = units.quantity(typed, 'power', 'zero', say);
        return w === undefined ? undefined : { w };
      }
      const a = units.quantity(typed, 'current', 'zero', say);
      return a === undefined ? undefined : { a };
    },
    help,
    { type: ['string', 'number'], examples: ['6 A', '25 W'] },
  );
  return new Field(made.shape, { ...made.traits, parts: { a: 'A', w: 'W' } });
}

/** A word or a name. */
export const text = (help: string): Field<string> => plainField(readText, help, { type: ['string', 'number'] }, { as: 'text' });

/** A word that answers stand on. Another reads, and a rule warns of it: old records stay readable. */
export const listed = (list: ClosedList, help: string): Field<string> => {
  const words = CLOSED_LISTS[list];
  const json = { type: ['string', 'number'], examples: words };
  const made = plainField(readText, `${help}: ${words.join(', ')}`, json, { as: 'choice', values: words });
  return new Field(made.shape, { ...made.traits, listed: true });
};

/** Free text, in which a person may be named among other words. */
export function prose(help: string): Field<string> {
  const made = text(help);
  return new Field(made.shape, { ...made.traits, prose: true });
}

export const texts = (help: string): Field<readonly string[]> =>
  plainField(readTexts, help, { type: 'array', items: { type: ['string', 'number'] } }, { as: 'texts' });

/** The record's own id or that of another. */
export const id = (help: string): Field<string> =>
  plainField(readId, help, { type: ['string', 'number'], pattern: '^[\\p{L}\\p{N}./_-]+$' }, { as: 'id' }, ['']);

export const ids = (help: string): Field<readonly string[]> =>
  plainField(
    oneOrMore('ids', readId),
    help,
    { type: ['array', 'string', 'number'], items: { type: ['string', 'number'] } },
    { as: 'ids' },
    ['*'],
  );

export const date = (help: string): Field<string> =>
  plainField(readDate, help, { type: 'string', examples: ['2026-02-11'] }, { as: 'date' });

export const dates = (help: string): Field<readonly string[]> =>
  plainField(oneOrMore('dates', readDate), help, { type: ['array', 'string'], items: { type: 'string' } }, { as: 'texts' });

export const yesNo = (help: string): Field<boolean> =>
  plainField(readYesNo, help, { type: ['boolean', 'string'] }, { as: 'yes or no' });

/** A whole number, `least` or more. */
export const count = (help: string, least = 1): Field<number> =>
  plainField(
    (typed, say) => {
      const value = readNumber(typed);
      if (value !== undefined && Number.isInteger(value) && value >= least) return value;
      return void say({ found: found(typed), expected: `a whole number, ${least} or more` });
    },
    help,
    { type: 'integer', minimum: least },
    { as: 'count' },
  );

export const oneOf = <const V extends string>(values: readonly V[], help: string): Field<V> =>
  plainField(
    (typed, say) => {
      const word = typeof typed === 'boolean' || typeof typed === 'number' ? String(typed) : typed;
      if (typeof word === 'string' && (values as readonly string[]).includes(word)) return word as V;
      return void say(enumFault(typed, values));
    },
    help,
    { enum: values.flatMap((value) => (String(Number(value)) === value ? [value, Number(value)] : [value])) },
    { as: 'choice', values },
  );

/** Some of a closed list of words. */
export const someOf = <const V extends string>(values: readonly V[], what: string, help: string): Field<readonly V[]> =>
  plainField(
    (typed, say) =>
      eachOf(typed, say, what, (one, sayOne) => values.find((value) => value === one) ?? void sayOne(enumFault(one, values))),
    help,
    { type: 'array', items: { type: 'string', enum: values } },
  );

const built = (shape: FieldShape, help: string): never => new Field(shape, { help, presence: 'optional', suffix: '' }) as never;

/** A block of keys. */
export const block = <F extends Fields>(fields: F, help = ''): Field<ReadOf<F>, ModelOf<F>> =>
  built({ is: 'block', fields }, help);

type Of<F extends AnyField, Key extends 'read' | 'model'> = F['types'][Key];

/** A list of blocks or values; `size`: least and most of them. */
export const list = <F extends AnyField>(
  each: F,
  help = '',
  size?: readonly [number, number],
): Field<readonly Of<F, 'read'>[], readonly Of<F, 'model'>[]> => built({ is: 'list', each, ...(size ? { size } : {}) }, help);

/** Values by an id or a word of the shop's own. */
export const keyed = <F extends AnyField>(
  value: F,
  help = '',
): Field<Readonly<Record<string, Of<F, 'read'>>>, Readonly<Record<string, Of<F, 'model'>>>> =>
  built({ is: 'table', value }, help);

/** A value that may take one of several forms. */
export const either = <const F extends readonly AnyField[]>(
  forms: F,
  help = '',
): Field<Of<F[number], 'read'>, Of<F[number], 'model'>> => built({ is: 'either', forms }, help);

/** A block that may have further keys, each read as `rest`. */
export const open = <F extends Fields, Rest extends AnyField>(
  fields: F,
  rest: Rest,
  help = '',
): Field<ReadOf<F> & Readonly<Record<string, unknown>>, ModelOf<F>> => built({ is: 'open', fields, rest }, help);
