import { z } from 'zod';
import type { Vec3 } from '../geometry/vector.js';
import type { FileUnits } from '../quantity/parse.js';
import { type AnyField, type Fields, ofField } from './field.js';
import { issueOf } from './form/fault.js';
import { withForm } from './form/field-form.js';
import { UnitReader } from './form/unit-reader.js';
import { type Form, kindOf } from './kinds.js';
import type { KindName } from './names.js';

/** The schema of a field, without whether it must be typed. */
export function schemaOf(field: AnyField, units: UnitReader): z.ZodType {
  const { shape, traits } = field;
  const described = <S extends z.ZodType>(made: S): S =>
    ofField(traits.help === '' ? made : (made.meta({ description: traits.help }) as S), field);
  switch (shape.is) {
    case 'value': {
      const read = shape.read(units);
      const made = z
        .unknown()
        .transform((typed, context): unknown => {
          const value = read(typed, (fault) => void context.issues.push(issueOf(fault, typed)));
          return value === undefined ? z.NEVER : value;
        })
        .meta({ description: traits.help, ...shape.json });
      return ofField(withForm(made, shape.form), field);
    }
    case 'block':
      return described(z.strictObject(shapeOf(shape.fields, units)));
    case 'list': {
      const list = z.array(schemaOf(shape.each, units));
      return described(shape.size ? list.min(shape.size[0]).max(shape.size[1]) : list);
    }
    case 'table':
      return described(z.record(z.string(), schemaOf(shape.value, units)));
    case 'either':
      return described(z.union(shape.forms.map((one) => schemaOf(one, units))));
    case 'open':
      return described(z.object(shapeOf(shape.fields, units)).catchall(schemaOf(shape.rest, units)));
  }
}

/** Each field under its key; one that need not be typed is optional. */
const shapeOf = (fields: Fields, units: UnitReader): Record<string, z.ZodType> =>
  Object.fromEntries(
    Object.entries(fields).map(([key, field]) => {
      const made = schemaOf(field, units);
      return [key, field.traits.presence === 'required' ? made : made.optional()];
    }),
  );

/** The schema of a whole record as it is typed. */
function recordSchema(name: KindName, units: UnitReader): z.ZodType {
  const { fields, variants } = kindOf(name);
  if (!variants) return z.strictObject(shapeOf(fields, units));
  const words = Object.keys(variants.forms);
  const forms = Object.entries(variants.forms).map(([word, own]) => {
    const { id, ...shared } = shapeOf(fields, units);
    const key = z.literal(word).meta({ description: `one of ${words.join(', ')}` });
    return z.strictObject({ id: id as z.ZodType, ...shared, [variants.key]: key, ...shapeOf(own, units) });
  });
  return z.discriminatedUnion(variants.key, forms as never);
}

/** Every shell may set its datum elsewhere. */
const MOST_SHARED = 64;
const SHARED = new Map<string, Schemas>();

/** The schemas of files that share units and datum: each is built once, at the first record of its kind. */
export class Schemas {
  readonly units: UnitReader;
  private readonly built = new Map<KindName, z.ZodType>();

  constructor(units: FileUnits = {}, origin: Vec3 = [0, 0, 0]) {
    this.units = new UnitReader(units, origin);
  }

  /** The same for the same units and datum: a schema costs more to build than a small shell to check. */
  static for(units: FileUnits, origin: Vec3): Schemas {
    const key = JSON.stringify([units, origin]);
    const found = SHARED.get(key) ?? new Schemas(units, origin);
    if (SHARED.size >= MOST_SHARED) SHARED.clear();
    SHARED.set(key, found);
    return found;
  }

  of<K extends KindName>(kind: K): z.ZodType<Form<K>> {
    const schema = this.built.get(kind) ?? recordSchema(kind, this.units);
    this.built.set(kind, schema);
    return schema as z.ZodType<Form<K>>;
  }
}
