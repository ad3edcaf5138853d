import type { AnyField, Field, Fields } from './field.js';

/** `cut_length` → `cutLength` */
export type Camel<Key> = Key extends `${infer First}_${infer Rest}` ? `${First}${Capitalize<Camel<Rest>>}` : Key;

type Types<F> =
  F extends Field<infer R, infer M, infer S, infer N, infer P>
    ? { readonly read: R; readonly model: M; readonly suffix: S; readonly name: N; readonly presence: P }
    : never;
type PresenceOf<F> = Types<F>['presence'];
/** `cut_length` of dimension length → `cutLengthMm`, or the name that the field gives itself. */
type NameOf<Key, F> = Types<F>['name'] extends '' ? `${Camel<Key> & string}${Types<F>['suffix']}` : Types<F>['name'];
export type Flat<T> = { [K in keyof T]: T[K] };

/** Fields as the model has them: in SI, with the unit in the name. */
export type ModelOf<F> = Flat<
  {
    readonly [K in keyof F as PresenceOf<F[K]> extends 'optional' ? never : NameOf<K, F[K]>]: Types<F[K]>['model'];
  } & {
    readonly [K in keyof F as PresenceOf<F[K]> extends 'optional' ? NameOf<K, F[K]> : never]?: Types<F[K]>['model'];
  }
>;

/** Fields as they were read: in SI under their typed keys. */
export type ReadOf<F> = Flat<
  {
    readonly [K in keyof F as PresenceOf<F[K]> extends 'required' ? K : never]: Types<F[K]>['read'];
  } & {
    readonly [K in keyof F as PresenceOf<F[K]> extends 'required' ? never : K]?: Types<F[K]>['read'] | undefined;
  }
>;

/** As typed, under the keys that a record may have and those of the shop's own. */
export type TypedOf<F> = { readonly [K in keyof F & string]?: unknown } & { readonly [own: `x-${string}`]: unknown };

export type KeysOf<F> = keyof F & string;
export type { PathTo, Source } from '../source/source.js';
export type { AnyField, Fields };
