import type { Library, Shell, Shop } from '../records/index.js';
import type { Changes, EnteredBy } from './changes.js';
import type { Elsewhere } from './elsewhere.js';

/** One shell with the shop and library that it stands on: what every figure is computed from. */
export interface Model {
  readonly shop: Shop;
  readonly library: Library;
  readonly shell: Shell;
  /** The other shells of the store; absent where there is only this one. */
  readonly elsewhere?: Elsewhere;
  /** What the history says of changes; absent where there is none, or where nobody asked. */
  readonly changes?: Changes;
  /** When each record came into the history; absent where there is none, or where nobody asked. */
  readonly entered?: EnteredBy;
  /** Ids of records that the history knows as planned once, and that are planned no more. */
  readonly builtSincePlanned?: ReadonlySet<string>;
  /** Commits that changed the shell together with files outside the store: no change of the coach. Absent where there are none. */
  readonly sharedCommits?: number;
}
