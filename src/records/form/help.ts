import { z } from 'zod';
import { getOwn } from '../../get-own.js';
import type { Path } from '../../source/source.js';

/** The help text of a field, found by walking the schema; only where something is amiss. */
export function helpOf(schema: z.ZodType, path: Path, data: unknown): string | undefined {
  const at = walk(schema, path, data);
  return at && descriptionOf(at);
}

function descriptionOf(schema: z.core.$ZodType): string | undefined {
  const own = z.globalRegistry.get(schema)?.description;
  if (own !== undefined) return own;
  return schema instanceof z.ZodOptional ? descriptionOf(schema.unwrap()) : undefined;
}

/** The keys that a mapping may have there. */
export function keysOf(schema: z.ZodType, path: Path, data: unknown): readonly string[] {
  const at = walk(schema, path, data);
  const object = at && objectsIn(at, data);
  return object ? Object.keys(object.shape) : [];
}

function walk(schema: z.core.$ZodType, path: Path, data: unknown): z.core.$ZodType | undefined {
  let at: z.core.$ZodType | undefined = schema;
  let value = data;
  for (const step of path) {
    at = at && stepInto(at, step, value);
    value = typeof value === 'object' && value !== null ? (value as Record<string | number, unknown>)[step] : undefined;
  }
  return at && unwrap(at);
}

function stepInto(schema: z.core.$ZodType, step: string | number, value: unknown): z.core.$ZodType | undefined {
  const plain = unwrap(schema);
  const object = objectsIn(plain, value);
  if (object) return getOwn<z.core.$ZodType>(object.shape, step);
  if (plain instanceof z.ZodArray) return plain.element;
  if (plain instanceof z.ZodRecord) return plain.valueType as z.core.$ZodType;
  return undefined;
}

const unwrap = (schema: z.core.$ZodType): z.core.$ZodType => (schema instanceof z.ZodOptional ? unwrap(schema.unwrap()) : schema);

/** The mapping that a schema stands for: its own, or of a choice the one whose `shape` was typed. */
function objectsIn(schema: z.core.$ZodType, value: unknown): z.ZodObject | undefined {
  const plain = unwrap(schema);
  if (plain instanceof z.ZodObject) return plain;
  if (!(plain instanceof z.ZodUnion)) return undefined;
  const objects = (plain.options as z.core.$ZodType[]).filter((one): one is z.ZodObject => one instanceof z.ZodObject);
  const shape = (value as { shape?: unknown } | null)?.shape;
  return objects.find((one) => one.shape.shape instanceof z.ZodLiteral && one.shape.shape.value === shape) ?? objects[0];
}
