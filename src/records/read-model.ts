import type { AnyField, Fields, Given } from './field.js';
import { kindOf, type RecordNamed } from './kinds.js';
import type { KindName, PartKind } from './names.js';
import type { Source } from './types.js';

type Values = Readonly<Record<string, unknown>>;

/** How one field of a block goes into the model. */
interface Step {
  readonly key: string;
  readonly name: string;
  readonly field: AnyField;
}

const STEPS = new WeakMap<Fields, readonly Step[]>();

/** `cut_length` → `cutLength` */
const camel = (key: string): string => key.replace(/_([a-z0-9])/gu, (_, letter: string) => letter.toUpperCase());

/** The field's name in the model: `cutLengthMm`. */
export const fieldNameOf = (key: string, { traits }: AnyField): string => traits.name ?? camel(key) + traits.suffix;

function stepsOf(fields: Fields): readonly Step[] {
  const steps =
    STEPS.get(fields) ?? Object.entries(fields).map(([key, field]) => ({ key, name: fieldNameOf(key, field), field }));
  STEPS.set(fields, steps);
  return steps;
}

/** The fields of a record or block as the model has them. */
export function fieldsInModel(fields: Fields, read: Values, given: Given): Record<string, unknown> {
  const made: Record<string, unknown> = {};
  for (const { key, name, field } of stepsOf(fields)) {
    const { parts, usual } = field.traits;
    const value = read[key];
    if (parts !== undefined) {
      for (const [part, suffix] of Object.entries(parts)) made[camel(key) + suffix] = (value as Values | undefined)?.[part];
    } else if (value !== undefined) made[name] = valueInModel(field, value, given, key);
    else made[name] = typeof usual === 'function' ? (usual as (of: Given) => unknown)({ ...given, read }) : usual;
  }
  return made;
}

function valueInModel(field: AnyField, value: unknown, given: Given, key: string): unknown {
  const { convert } = field.traits;
  if (convert) return convert(value as never, given, key);
  if (!isBuilt(field)) return value;
  const { shape } = field;
  if (shape.is === 'block') return fieldsInModel(shape.fields, value as Values, given);
  if (shape.is === 'list') return (value as readonly unknown[]).map((one) => valueInModel(shape.each, one, given, key));
  if (shape.is === 'table') {
    const entries = Object.entries(value as Values);
    return Object.fromEntries(entries.map(([id, one]) => [id, valueInModel(shape.value, one, given, key)]));
  }
  return value;
}

const BUILT = new WeakMap<AnyField, boolean>();

/** A block within, or a value that the model has otherwise: else it goes in as it was read. */
function isBuilt(field: AnyField): boolean {
  const known = BUILT.get(field);
  if (known !== undefined) return known;
  const { shape } = field;
  const inside = (one: AnyField): boolean => one.traits.convert !== undefined || isBuilt(one);
  const built =
    shape.is === 'block' || (shape.is === 'list' && inside(shape.each)) || (shape.is === 'table' && inside(shape.value));
  BUILT.set(field, built);
  return built;
}

/** A record whose form is right. */
export interface ReadRecord {
  readonly id: string;
  readonly form: unknown;
  readonly typed: Values;
  readonly source: Source;
}

/** A record as the model has it; undefined where it is not whole, which its kind's check has told. */
export function inModel<K extends KindName>(
  name: K,
  record: ReadRecord,
  more: Omit<Given, 'id' | 'read' | 'path'> & { readonly path?: Given['path']; readonly service?: string } = {},
): RecordNamed<K> | undefined {
  const { home, fields, variants, more: kind } = kindOf(name);
  const { service, path = [], ...rest } = more;
  const read = record.form as Values;
  const given: Given = { ...rest, id: record.id, read, path };
  const base = home.in === 'head' ? { id: record.id, source: record.source } : { source: record.source, typed: record.typed };
  const own = fieldsInModel(fields, read, given);
  const of = home.in === 'service' ? { service, medium: rest.medium } : {};
  const finish = kind.finish as ((one: unknown, given: Given) => RecordNamed<K> | undefined) | undefined;
  if (variants) {
    const word = read[variants.key] as string;
    const dimensions = { [variants.key]: word, ...fieldsInModel(variants.forms[word] as Fields, read, given) };
    return finish?.({ base: { ...base, ...own }, own: dimensions }, given);
  }
  const made = { ...base, ...of, ...own };
  return finish ? finish(made, given) : (made as RecordNamed<K>);
}

/** A whole file or a part of its head. */
export const partInModel = <K extends PartKind>(name: K, form: object, given: Omit<Given, 'read'>): RecordNamed<K> =>
  fieldsInModel(kindOf(name).fields, form as Values, { ...given, read: form as Values }) as RecordNamed<K>;
