import { z } from 'zod';
import { readCell } from '../entry/cells.js';
import { withValue } from '../entry/change.js';
import type { EntryColumn } from '../entry/columns.js';
import { type Data, isData } from '../entry/yaml-text.js';
import type { Fields } from '../records/field.js';
import { kindOf } from '../records/kinds.js';
import { fieldsInModel } from '../records/read-model.js';
import { Schemas } from '../records/schema.js';
import { type TaskName, taskOf } from './tasks.js';

const SCHEMAS = new Schemas();

/** What is filled in so far, as the model has it: a field that cannot be read yet is left out. Quantities in SI. */
export function formDraft(name: TaskName, columns: readonly EntryColumn[], typed: (key: string) => string): object {
  const { kind, list } = taskOf(name);
  let data: Data = {};
  for (const column of columns) {
    const text = typed(column.key).trim();
    const read = text === '' ? undefined : readCell(text, column);
    if (read?.ok) data = withValue(data, column.path, read.value) as Data;
  }
  const form = readable(SCHEMAS.of(kind), data) as Readonly<Record<string, unknown>>;
  const made = fieldsInModel(kindOf(kind).fields as Fields, form, { id: '', read: form, path: [] });
  const record = list === undefined ? made : ((made[list] as readonly object[] | undefined)?.[0] ?? {});
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined));
}

/** The parts of a typed value that its schema can read. */
function readable(schema: z.core.$ZodType, typed: unknown): unknown {
  const inner = schema instanceof z.ZodOptional ? schema.unwrap() : schema;
  if (inner instanceof z.ZodObject && isData(typed)) {
    const { shape } = inner as { shape: Readonly<Record<string, z.core.$ZodType>> };
    return Object.fromEntries(
      Object.entries(typed).flatMap(([key, value]) => {
        const read = Object.hasOwn(shape, key) ? readable(shape[key] as z.core.$ZodType, value) : undefined;
        return read === undefined ? [] : [[key, read]];
      }),
    );
  }
  if (inner instanceof z.ZodArray && Array.isArray(typed)) return typed.map((one) => readable(inner.element, one));
  const read = z.safeParse(inner, typed);
  return read.success ? read.data : undefined;
}
