import type { Model } from '../model/shell.js';
import type { KeptFigures } from './figures.js';

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

const keyOf = (name: string): string => `figure ${name}`;

/** The figure of that name, from `kept` where it is there; else made, and kept where there is a place for it. */
export function keptOr<T>(kept: KeptFigures | undefined, name: string, make: () => T): T {
  if (!kept) return make();
  const key = keyOf(name);
  if (!kept.has(key)) kept.put(key, make());
  return kept.get(key) as T;
}

/** A figure of a model alone: computed once, and kept by its name where figures of that model are. */
export interface OfModel<T> {
  (model: Model): T;
  /** Undefined where it was neither computed yet nor kept. */
  ifThere(model: Model): T | undefined;
  /** Computes it if need be, and puts it there. */
  keep(model: Model, kept: KeptFigures): void;
}

const KEPT_OF = new WeakMap<Model, KeptFigures>();
const ALL: OfModel<unknown>[] = [];

/** From now on figures of this model are taken from `kept`, and go into it. */
export const keepOf = (model: Model, kept: KeptFigures): void => void KEPT_OF.set(model, kept);

/** Computes everything that is kept of a model by itself, and puts it there. */
export const keepAllOf = (model: Model, kept: KeptFigures): void => {
  for (const one of ALL) one.keep(model, kept);
};

/** `make` gives plain data that holds no record, only ids: a record that is kept twice would be two. */
export function ofModel<T>(name: string, make: (model: Model) => T): OfModel<T> {
  const found = new WeakMap<Model, { readonly value: T }>();
  const of = (model: Model): T => {
    const known = found.get(model);
    if (known) return known.value;
    const value = keptOr(KEPT_OF.get(model), name, () => make(model));
    found.set(model, { value });
    return value;
  };
  const made: OfModel<T> = Object.assign(of, {
    ifThere: (model: Model) => (found.has(model) || KEPT_OF.get(model)?.has(keyOf(name)) ? of(model) : undefined),
    keep: (model: Model, kept: KeptFigures) => kept.put(keyOf(name), of(model)),
  });
  ALL.push(made);
  return made;
}
