import type { AnyField, Fields } from './field.js';
import { kindOf } from './kinds.js';
import type { KindName } from './names.js';

/**
 * How a digest of what was signed is made. `c2`: without keys that only describe, and without the shop's own. `c1`, as earlier programs
 * did: without those only that came into the format after it.
 */
export type DigestForm = 'c1' | 'c2';

type Data = Readonly<Record<string, unknown>>;

/** What of a record as typed a signature stands for. */
export const substanceOf = (kind: KindName, typed: Data, way: DigestForm): Data => within(kindOf(kind).fields, typed, way);

function within(fields: Fields, typed: Data, way: DigestForm): Data {
  const kept = Object.entries(typed).flatMap(([key, value]): readonly (readonly [string, unknown])[] => {
    if (key.startsWith('x-')) return way === 'c2' ? [] : [[key, value]];
    const field = Object.hasOwn(fields, key) ? fields[key] : undefined;
    if (field === undefined) return [[key, value]];
    const { describes } = field.traits;
    if (describes === 'always' || (describes === 'early' && way === 'c2')) return [];
    return [[key, inside(field, value, way)]];
  });
  return Object.fromEntries(kept);
}

function inside({ shape }: AnyField, value: unknown, way: DigestForm): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (shape.is === 'list' && Array.isArray(value)) return value.map((one) => inside(shape.each, one, way));
  return shape.is === 'block' && !Array.isArray(value) ? within(shape.fields, value as Data, way) : value;
}
