import type { z } from 'zod';
import type { Dimension } from '../../quantity/units.js';

/** How a field is typed: what a cell of a table may hold for it, and how a person is asked for it. */
export type FieldForm =
  | { readonly as: 'quantity' | 'range'; readonly dimension: Dimension }
  | { readonly as: 'choice'; readonly values: readonly string[] }
  | { readonly as: Plain };

type Plain =
  | 'text'
  | 'texts'
  | 'id'
  | 'ids'
  | 'date'
  | 'yes or no'
  | 'count'
  | 'level'
  | 'place'
  | 'places'
  | 'outlines'
  | 'two lengths'
  | 'any quantity'
  | 'other';

const FORMS = new WeakMap<z.core.$ZodType, FieldForm>();

/** Remembers the form of a field beside its schema; JSON Schema and messages do not know it. */
export function withForm<S extends z.core.$ZodType>(schema: S, form: FieldForm): S {
  FORMS.set(schema, form);
  return schema;
}

/** Form of a field; `other` for one that is a block, a list of blocks or of more than one form. */
export const formOf = (schema: z.core.$ZodType): FieldForm => FORMS.get(schema) ?? { as: 'other' };
