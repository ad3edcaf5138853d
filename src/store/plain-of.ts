/**
 * A value as it can be written down: without functions, without what only the reader of the files can say of a record (its `source`), maps
 * that are made as they are asked as whole ones. What is one object in two places stays one.
 */
export function plainOf(value: unknown): unknown {
  return new Copy().of(value);
}

class Copy {
  private readonly made = new Map<object, unknown>();

  of(value: unknown): unknown {
    if (typeof value === 'function') return undefined;
    if (value === null || typeof value !== 'object' || ArrayBuffer.isView(value)) return value;
    return this.made.get(value) ?? this.copy(value);
  }

  private copy(value: object): unknown {
    if (Array.isArray(value)) {
      const list: unknown[] = [];
      this.made.set(value, list);
      for (const one of value) list.push(this.of(one));
      return list;
    }
    if (value instanceof Set) {
      const set = new Set<unknown>();
      this.made.set(value, set);
      for (const one of value) set.add(this.of(one));
      return set;
    }
    if (isMap(value)) {
      const map = new Map<unknown, unknown>();
      this.made.set(value, map);
      for (const [key, one] of value.entries()) map.set(this.of(key), this.of(one));
      return map;
    }
    const copy: Record<string, unknown> = {};
    this.made.set(value, copy);
    for (const [key, one] of Object.entries(value)) {
      if (key !== '__proto__' && typeof one !== 'function' && !isSource(one)) copy[key] = this.of(one);
    }
    return copy;
  }
}

const isMap = (value: object): value is ReadonlyMap<unknown, unknown> =>
  value instanceof Map || (typeof (value as Map<unknown, unknown>).entries === 'function' && Symbol.iterator in value);

/** Where a record was typed: it leads to the whole file. */
const isSource = (value: unknown): boolean =>
  value !== null && typeof value === 'object' && typeof (value as { place?: unknown }).place === 'function';
