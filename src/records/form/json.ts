import { z } from 'zod';
import { KIND_NAMES } from '../kinds.js';
import type { KindName } from '../names.js';
import { Schemas } from '../schema.js';

type Json = Readonly<Record<string, unknown>>;

/** JSON Schema (draft 2020-12) of one record of this kind as it is typed, with the help texts. Keys that begin with `x-` are free. */
export function recordSchema(kind: KindName): Json {
  return z.toJSONSchema(new Schemas().of(kind), {
    io: 'input',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => {
      if (jsonSchema.additionalProperties === false) jsonSchema.patternProperties = { '^x-': {} };
    },
  }) as Json;
}

/** The `units:` line at the head of a file. */
export const UNITS_SCHEMA: Json = {
  type: 'object',
  additionalProperties: { type: 'string' },
  description: 'Units of bare numbers, as {length: in, mass: lb}',
};

/** JSON Schema of a file that is a list of such records: bare, or under its name beside `units`. */
export function listSchema(kind: KindName, name: string): Json {
  const { $schema, ...record } = recordSchema(kind);
  const list = { type: ['array', 'null'], items: { $ref: '#/$defs/record' }, description: 'One record after the other' };
  const mapping = {
    type: 'object',
    properties: { units: UNITS_SCHEMA, [name]: list },
    additionalProperties: false,
    patternProperties: { '^x-': {} },
  };
  return { $schema, anyOf: [list, mapping], $defs: { record } };
}

/** Every kind of record that has a form of its own. */
export const SCHEMA_KINDS = KIND_NAMES;
