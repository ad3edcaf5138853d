import type { KeptFigures } from './figures.js';

/** A value that is made when it is first asked for, and kept. */
export function lazy<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** An object whose values are made when first read, or taken from `kept`. */
export function lazyFields<T extends object>(makers: { readonly [K in keyof T]: () => T[K] }, kept?: KeptFigures): T {
  const made = {} as T;
  for (const key of Object.keys(makers) as (keyof T)[]) {
    const keep = (value: T[keyof T]): T[keyof T] => {
      Object.defineProperty(made, key, { value, enumerable: true });
      return value;
    };
    const make = (): T[keyof T] => keptOr(kept, String(key), makers[key]);
    Object.defineProperty(made, key, { get: () => keep(make()), enumerable: true, configurable: true });
  }
  return made;
}

/** The figure of that name, from `kept` where it is there; else made, and kept where there is a place for it. */
export function keptOr<T>(kept: KeptFigures | undefined, name: string, make: () => T): T {
  if (!kept) return make();
  const key = `figure ${name}`;
  if (!kept.has(key)) kept.put(key, make());
  return kept.get(key) as T;
}
