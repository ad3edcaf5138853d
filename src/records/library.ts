import type { RecordOf } from './kind.js';
import { LIBRARY } from './kinds.js';
import type { LibraryList } from './lists.js';
import type { LibraryKind } from './names.js';
import type { RecordBase } from './record-base.js';

type KindIn<L extends LibraryList> = {
  [K in LibraryKind]: (typeof LIBRARY)[K]['home']['list'] extends L ? K : never;
}[LibraryKind];
type In<L extends LibraryList> = RecordOf<(typeof LIBRARY)[KindIn<L>]>;

/** The shop's own library: records by id; stages in build order, rules in file order. */
export type Library = {
  readonly [L in Exclude<LibraryList, 'stages' | 'rules'>]: ReadonlyMap<string, In<L>>;
} & {
  readonly [L in 'stages' | 'rules']: readonly In<L>[];
};

/** A record of the library by its kind and id. */
export function recordIn(library: Library, kind: LibraryKind, id: string): RecordBase | undefined {
  const held = library[LIBRARY[kind].home.list] as ReadonlyMap<string, RecordBase> | readonly RecordBase[];
  return 'get' in held ? held.get(id) : held.find((one) => one.id === id);
}
