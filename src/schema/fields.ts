import { z } from 'zod';
import { add, type Vec3 } from '../geometry/vector.js';
import { type FileUnits, parseQuantity } from '../quantity/parse.js';
import { type Dimension, EXAMPLES } from '../quantity/units.js';
import { found } from '../source/shown.js';
import { type Fault, issueOf } from './fault.js';
import { type FieldForm, withForm } from './field-form.js';
import { anyQuantity, type JsonHelp, readDate, readId, readNumber, readText, readTexts, readYesNo } from './plain-fields.js';
import { enumFault, readPipeSize, readThreeLengths, readTwoLengths } from './worded-fields.js';

/** A field that reads whatever was typed and gives `T`, or says what is wrong. */
export type Field<T> = z.ZodPipe<z.ZodUnknown, z.ZodTransform<T, unknown>>;
export type Say = (fault: Fault) => void;
/** Undefined once a fault was said. */
export type Read<T> = (typed: unknown, say: Say) => T | undefined;

/** What a quantity may be: above zero, zero too, or below zero as well. */
export type Least = 'above zero' | 'zero' | 'any';

/** A field of any kind, with the help that a shop administrator reads in an editor. */
export function field<T>(read: Read<T>, help: string, json: JsonHelp = {}, form: FieldForm = { as: 'other' }): Field<T> {
  const made = z
    .unknown()
    .transform((typed, context): T => {
      const value = read(typed, (fault) => void context.issues.push(issueOf(fault, typed)));
      return value === undefined ? z.NEVER : value;
    })
    .meta({ description: help, ...json }) as Field<T>;
  return withForm(made, form);
}

const QUANTITY_JSON = { type: ['string', 'number'] } as const;
const POSITION_JSON = { type: 'array', items: QUANTITY_JSON, minItems: 3, maxItems: 3 } as const;

/** The fields of record files with these units for bare numbers, and this place of the typed origin in the standard datum. */
export class Fields {
  constructor(
    private readonly units: FileUnits = {},
    private readonly origin: Vec3 = [0, 0, 0],
  ) {}

  /** In the unit used inside (see quantity/units.ts). */
  quantity(dimension: Dimension, help: string, least: Least = 'zero'): Field<number> {
    const json = { ...QUANTITY_JSON, examples: [EXAMPLES[dimension]] };
    return field((typed, say) => this.readQuantity(typed, dimension, least, say), help, json, { as: 'quantity', dimension });
  }

  /** A percentage or level, 0 to 1. */
  level(help: string): Field<number> {
    const json = { ...QUANTITY_JSON, examples: ['12 %', '3/4'] };
    return field((typed, say) => this.readLevel(typed, say), help, json, { as: 'level' });
  }

  /** `[x, y, z]` in the standard datum, mm. */
  position(help: string): Field<Vec3> {
    return field((typed, say) => this.readTriple(typed, say, this.origin), help, POSITION_JSON, { as: 'place' });
  }

  /** Corners or way points, at least `least` of them. */
  positions(help: string, least = 0, most = Number.POSITIVE_INFINITY): Field<readonly Vec3[]> {
    const json = { type: 'array', items: POSITION_JSON, minItems: least };
    return field((typed, say) => this.readTriples(typed, say, least, most), help, json, { as: 'places' });
  }

  /** Several outlines. */
  outlines(help: string): Field<readonly (readonly Vec3[])[]> {
    return field(
      (typed, say) => eachOf(typed, say, 'outlines, each a list of corners', (one, sayOne) => this.readTriples(one, sayOne, 3)),
      help,
      {
        type: 'array',
        items: { type: 'array', items: POSITION_JSON },
      },
      { as: 'outlines' },
    );
  }

  /** Three lengths that are no place: no datum shift. */
  offset(help: string): Field<Vec3> {
    return field((typed, say) => this.readTriple(typed, say, [0, 0, 0]), help, POSITION_JSON, { as: 'place' });
  }

  /** `20 in x 12 in x 8 in`, or the three in a list: along, across, up, mm. */
  size(help: string): Field<Vec3> {
    const read: Read<Vec3> = (typed, say) =>
      typeof typed === 'string' ? readThreeLengths(typed, this.units, say) : this.readTriple(typed, say, [0, 0, 0]);
    const json = { ...POSITION_JSON, type: ['array', 'string'], examples: ['20 in x 12 in x 8 in'] };
    return field(read, help, json, { as: 'place' });
  }

  /** Distance rearward, moved with the datum. */
  station(help: string): Field<number> {
    return field(
      (typed, say) => {
        const value = this.readQuantity(typed, 'length', 'any', say);
        return value === undefined ? undefined : value + this.origin[0];
      },
      help,
      { ...QUANTITY_JSON, examples: ['255 in'] },
      { as: 'quantity', dimension: 'length' },
    );
  }

  /** `[least, most]`, in the unit used inside. */
  range(dimension: Dimension, help: string): Field<readonly [number, number]> {
    return field(
      (typed, say) => {
        const values = eachOf(typed, say, `two values as \`[1/8 in, 1/2 in]\``, (one, sayOne) =>
          this.readQuantity(one, dimension, 'zero', sayOne),
        );
        if (!values) return undefined;
        if (values.length !== 2) return void say({ found: `${values.length} values`, expected: 'two, the least and the most' });
        return values as unknown as readonly [number, number];
      },
      help,
      { type: 'array', items: QUANTITY_JSON, minItems: 2, maxItems: 2 },
      { as: 'range', dimension },
    );
  }

  /** `14 in x 18 in`, mm. */
  twoLengths(help: string): Field<readonly [number, number]> {
    const json = { type: 'string', examples: ['14 in x 18 in'] };
    return field((typed, say) => readTwoLengths(typed, this.units, say), help, json, { as: 'two lengths' });
  }

  /** `1/2 in PEX`. */
  pipeSize(help: string): Field<{ text: string; nominalMm: number; material: string }> {
    const json = { type: 'string', examples: ['1/2 in PEX'] };
    return field((typed, say) => readPipeSize(typed, this.units, say), help, json, { as: 'text' });
  }

  /** A quantity whose unit says what it is; a bare number is a count. */
  anyQuantity(help: string): Field<{ value: number; dimension: string; text: string }> {
    return field(anyQuantity, help, QUANTITY_JSON, { as: 'any quantity' });
  }

  text(help: string): Field<string> {
    return field(readText, help, { type: ['string', 'number'] }, { as: 'text' });
  }

  texts(help: string): Field<readonly string[]> {
    return field(readTexts, help, { type: 'array', items: { type: ['string', 'number'] } }, { as: 'texts' });
  }

  /** The record's own id or that of another. */
  id(help: string): Field<string> {
    return field(readId, help, { type: ['string', 'number'], pattern: '^[\\p{L}\\p{N}./_-]+$' }, { as: 'id' });
  }

  ids(help: string): Field<readonly string[]> {
    const read: Read<readonly string[]> = (typed, say) =>
      Array.isArray(typed) ? eachOf(typed, say, 'ids', readId) : oneOf(readId(typed, say));
    return field(read, help, { type: ['array', 'string', 'number'], items: { type: ['string', 'number'] } }, { as: 'ids' });
  }

  date(help: string): Field<string> {
    return field(readDate, help, { type: 'string', examples: ['2026-02-11'] }, { as: 'date' });
  }

  dates(help: string): Field<readonly string[]> {
    const read: Read<readonly string[]> = (typed, say) =>
      Array.isArray(typed) ? eachOf(typed, say, 'dates', readDate) : oneOf(readDate(typed, say));
    return field(read, help, { type: ['array', 'string'], items: { type: 'string' } }, { as: 'texts' });
  }

  yesNo(help: string): Field<boolean> {
    return field(readYesNo, help, { type: ['boolean', 'string'] }, { as: 'yes or no' });
  }

  /** A whole number, `least` or more. */
  count(help: string, least = 1): Field<number> {
    return field(
      (typed, say) => {
        const value = readNumber(typed);
        if (value !== undefined && Number.isInteger(value) && value >= least) return value;
        return void say({ found: found(typed), expected: `a whole number, ${least} or more` });
      },
      help,
      { type: 'integer', minimum: least },
      { as: 'count' },
    );
  }

  oneOf<const V extends string>(values: readonly V[], help: string): Field<V> {
    return field(
      (typed, say) => {
        const text = typeof typed === 'boolean' || typeof typed === 'number' ? String(typed) : typed;
        if (typeof text === 'string' && (values as readonly string[]).includes(text)) return text as V;
        return void say(enumFault(typed, values));
      },
      help,
      { enum: values.flatMap((value) => (String(Number(value)) === value ? [value, Number(value)] : [value])) },
      { as: 'choice', values },
    );
  }

  /** For fields of more than one form: the reader of a quantity with this file's units. */
  readQuantity(typed: unknown, dimension: Dimension, least: Least, say: Say): number | undefined {
    const read = parseQuantity(typed, dimension, this.units);
    if (!read.ok) {
      const rule = read.reason === 'unit missing' ? 'format.unit-missing' : undefined;
      return void say({ ...(rule ? { rule } : {}), found: read.found, expected: read.expected });
    }
    if (least === 'any' || read.value > 0 || (least === 'zero' && read.value === 0)) return read.value;
    return void say({ found: found(typed), expected: least === 'zero' ? 'zero or more' : 'more than zero' });
  }

  readLevel(typed: unknown, say: Say): number | undefined {
    const value = this.readQuantity(typed, 'fraction', 'any', say);
    if (value === undefined || (value >= 0 && value <= 1)) return value;
    const percent =
      value >= 2 && value <= 100 && !String(typed).includes('%') ? `: write \`${String(typed)} %\` for a percentage` : '';
    return void say({ found: found(typed), expected: `a level or share between 0 and 1 (0 % and 100 %)${percent}` });
  }

  /** A place in the standard datum, for fields of more than one form. */
  readPosition(typed: unknown, say: Say): Vec3 | undefined {
    return this.readTriple(typed, say, this.origin);
  }

  private readTriple(typed: unknown, say: Say, origin: Vec3): Vec3 | undefined {
    if (!Array.isArray(typed)) return void say({ found: found(typed), expected: 'three lengths as `[64 in, -48 in, 96 in]`' });
    if (typed.length !== 3) {
      return void say({ found: `list of ${typed.length}`, expected: 'three lengths as `[64 in, -48 in, 96 in]`' });
    }
    const values = typed.map((one, i) =>
      this.readQuantity(one, 'length', 'any', (fault) => say({ ...fault, path: [i, ...(fault.path ?? [])] })),
    );
    const [x, y, z] = values;
    if (x === undefined || y === undefined || z === undefined) return undefined;
    return add([x, y, z], origin);
  }

  private readTriples(typed: unknown, say: Say, least: number, most = Number.POSITIVE_INFINITY): readonly Vec3[] | undefined {
    const read = eachOf(typed, say, 'places, each as `[64 in, -48 in, 96 in]`', (one, sayOne) =>
      this.readTriple(one, sayOne, this.origin),
    );
    if (!read) return undefined;
    if (read.length < least) return void say({ found: `list of ${read.length}`, expected: `at least ${least} places` });
    if (read.length > most) return void say({ found: `list of ${read.length}`, expected: `${most} places` });
    return read;
  }
}

/** Reads each item of a list; undefined once a fault was said of one of them. */
export function eachOf<T>(typed: unknown, say: Say, wanted: string, read: Read<T>): readonly T[] | undefined {
  if (!Array.isArray(typed)) return void say({ found: found(typed), expected: `a list of ${wanted}` });
  const values = typed.map((one, i) => read(one, (fault) => say({ ...fault, path: [i, ...(fault.path ?? [])] })));
  return values.includes(undefined) ? undefined : (values as readonly T[]);
}

const oneOf = <T>(value: T | undefined): readonly T[] | undefined => (value === undefined ? undefined : [value]);
