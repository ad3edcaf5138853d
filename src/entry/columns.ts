import { z } from 'zod';
import { getOwn } from '../get-own.js';
import { fieldOf, type Traits } from '../records/field.js';
import { position, quantity } from '../records/fields.js';
import { type FieldForm, formOf } from '../records/form/field-form.js';
import type { KindName } from '../records/index.js';
import { Schemas, schemaOf } from '../records/schema.js';
import { LISTED_FIELDS, SHARED } from '../records/shared.js';
import type { Path } from '../source/source.js';

/** One field of a record kind as a column of a table, an option or a question. */
export interface EntryColumn {
  /** As typed at the head of a sheet: `protection.rating`, `from.x`, `inspections.1.by`. Lists count from 1. */
  readonly key: string;
  /** Within the record's data; lists count from 0. */
  readonly path: Path;
  readonly help: string;
  /** A record without it is not taken. */
  readonly required: boolean;
  readonly form: FieldForm;
  /** Several values: ids, places, or what else stands in `[…]`. */
  readonly list: boolean;
  /** What its field says of itself; nothing of the shop's own. */
  readonly traits: Partial<Traits>;
}

/** Words that every record may carry come last in a table. */
const LAST = [...Object.keys(SHARED).reverse(), ...Object.keys(LISTED_FIELDS)];
const AXES: Readonly<Record<string, number>> = { x: 0, y: 1, z: 2 };

/** Every column of a kind that is known beforehand; blocks are taken apart, lists of blocks are one column each. */
export function columnsOf(kind: KindName): readonly EntryColumn[] {
  const made = COLUMNS.get(kind) ?? makeColumns(kind);
  COLUMNS.set(kind, made);
  return made;
}

/** Schemas and columns of a kind are the same each time: made once. */
const SCHEMAS = new Schemas();
const COLUMNS = new Map<KindName, readonly EntryColumn[]>();

function makeColumns(kind: KindName): readonly EntryColumn[] {
  const columns = flat(SCHEMAS.of(kind), []);
  const rank = ({ path: [key] }: EntryColumn): number => (key === 'id' ? -1 : LAST.indexOf(String(key)) + 1);
  return [...columns].sort((a, b) => rank(a) - rank(b));
}

/** The column of this key, also one that only the records know, as `readings.steer.left`; undefined where the kind has none. */
export function columnFor(kind: KindName, key: string): EntryColumn | undefined {
  if (/^x-\S+$/u.test(key))
    return { key, path: [key], help: 'The shop’s own', required: false, form: { as: 'text' }, list: false, traits: {} };
  const path: (string | number)[] = [];
  let at: z.core.$ZodType | undefined = SCHEMAS.of(kind);
  for (const step of key.split('.')) {
    if (at === undefined || step === '') return undefined;
    const next = into(at, step);
    if (next === undefined) return undefined;
    path.push(next.step);
    at = next.schema;
  }
  return at && columnOf(key, path, at);
}

/** The fields of the block at `index` of a list of blocks, as of `inspections` of a weld; undefined where `path` leads to no such list. */
export function blockColumns(kind: KindName, path: Path, index: number): readonly EntryColumn[] | undefined {
  let at: z.core.$ZodType | undefined = SCHEMAS.of(kind);
  for (const step of path) at = at && into(at, typeof step === 'number' ? String(step + 1) : step)?.schema;
  const list = at && unwrap(at);
  if (!(list instanceof z.ZodArray)) return undefined;
  const element = unwrap(list.element as z.core.$ZodType);
  return shapeOf(element) === undefined || catchallOf(element) !== undefined
    ? undefined
    : flat(element, [...path, index]).map((column) => ({ ...column, key: keyOf(column.path) }));
}

/** `inspections.1.method`: lists count from 1. */
const keyOf = (path: Path): string => path.map((step) => (typeof step === 'number' ? String(step + 1) : step)).join('.');

/** One of the three lengths of a place. */
const lengthSchema = (help: string): z.core.$ZodType => schemaOf(quantity('length', help, 'any'), SCHEMAS.units);

/** One corner or way point of several. */
const placeSchema = (help: string): z.core.$ZodType => schemaOf(position(help), SCHEMAS.units);

/** Keys of blocks and lists of blocks that open here: nothing can be typed for them in one word. */
function flat(schema: z.core.$ZodType, path: Path): readonly EntryColumn[] {
  const shape = shapeOf(unwrap(schema));
  if (shape === undefined || catchallOf(unwrap(schema)) !== undefined) {
    return path.length === 0 ? [] : [columnOf(path.join('.'), path, schema)];
  }
  const required = path.length === 0 || !isOptional(schema);
  return Object.entries(shape).flatMap(([key, field]) =>
    flat(field, [...path, key]).map((column) => (required ? column : { ...column, required: false })),
  );
}

function columnOf(key: string, path: Path, schema: z.core.$ZodType): EntryColumn {
  const inner = unwrap(schema);
  const form = scalarOf(inner);
  const traits = fieldOf(inner)?.traits ?? {};
  return { key, path, help: helpOf(schema) ?? '', required: !isOptional(schema), form, list: isList(inner, form), traits };
}

/** Of a value of several forms (`6980 lb` or `{left: …, right: …}`) the plain one. */
function scalarOf(schema: z.core.$ZodType): FieldForm {
  if (schema instanceof z.ZodLiteral) return { as: 'choice', values: [...schema.values].map(String) };
  if (!(schema instanceof z.ZodUnion)) return formOf(schema);
  const forms = (schema.options as z.core.$ZodType[]).map((one) => scalarOf(unwrap(one)));
  const choices = forms.flatMap((form) => (form.as === 'choice' ? form.values : []));
  if (choices.length > 0) return { as: 'choice', values: choices };
  return forms.find((form) => form.as !== 'other') ?? { as: 'other' };
}

const LISTS: readonly FieldForm['as'][] = ['ids', 'texts', 'place', 'places', 'outlines', 'range'];

function isList(schema: z.core.$ZodType, form: FieldForm): boolean {
  return LISTS.includes(form.as) || schema instanceof z.ZodArray || z.globalRegistry.get(schema)?.type === 'array';
}

function into(schema: z.core.$ZodType, step: string): { step: string | number; schema: z.core.$ZodType } | undefined {
  const plain = unwrap(schema);
  const field = getOwn(shapeOf(plain) ?? {}, step) ?? catchallOf(plain);
  if (field) return { step, schema: field };
  if (plain instanceof z.ZodRecord) return { step, schema: plain.valueType as z.core.$ZodType };
  if (formOf(plain).as === 'places' && /^[1-9]\d?$/u.test(step))
    return { step: Number(step) - 1, schema: placeSchema(helpOf(schema) ?? '') };
  if (plain instanceof z.ZodArray && /^[1-9]\d?$/u.test(step)) return { step: Number(step) - 1, schema: plain.element };
  const axis = getOwn(AXES, step.toLowerCase());
  if (formOf(plain).as === 'place' && axis !== undefined) return { step: axis, schema: lengthSchema(helpOf(schema) ?? '') };
  return undefined;
}

type Shape = Readonly<Record<string, z.core.$ZodType>>;

/** The fields of a block; of a block of several forms those of all. Beside a plain form they can be stepped into. */
function shapeOf(schema: z.core.$ZodType): Shape | undefined {
  if (schema instanceof z.ZodObject) return schema.shape;
  if (!(schema instanceof z.ZodUnion)) return undefined;
  const shapes = (schema.options as z.core.$ZodType[]).map((one) => shapeOf(unwrap(one))).filter((one) => one !== undefined);
  return shapes.length > 1 ? merged(shapes) : shapes[0];
}

/** A field that not every form has is optional; one that each has with a word of its own may have any of them. */
function merged(shapes: readonly Shape[]): Shape {
  const keys = [...new Set(shapes.flatMap((shape) => Object.keys(shape)))];
  return Object.fromEntries(
    keys.map((key) => {
      const fields = shapes.flatMap((shape) => getOwn(shape, key) ?? []);
      const first = fields[0] as z.core.$ZodType;
      const one =
        first instanceof z.ZodLiteral ? z.union(fields as z.ZodLiteral[]).meta({ description: helpOf(first) ?? '' }) : first;
      return [key, fields.length === shapes.length ? one : z.optional(one)];
    }),
  );
}

function catchallOf(schema: z.core.$ZodType): z.core.$ZodType | undefined {
  const catchall = schema instanceof z.ZodObject ? schema.def.catchall : undefined;
  return catchall === undefined || catchall instanceof z.ZodNever ? undefined : catchall;
}

const isOptional = (schema: z.core.$ZodType): boolean => schema instanceof z.ZodOptional;
const unwrap = (schema: z.core.$ZodType): z.core.$ZodType => (schema instanceof z.ZodOptional ? unwrap(schema.unwrap()) : schema);

function helpOf(schema: z.core.$ZodType): string | undefined {
  const own = z.globalRegistry.get(schema)?.description;
  return own ?? (schema instanceof z.ZodOptional ? helpOf(schema.unwrap()) : undefined);
}
