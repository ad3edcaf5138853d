import type { Edition } from '../book/input.js';
import type { LoadedStore, StoreText } from '../model/load-types.js';
import type { History } from '../store/history.js';

/** A store read and checked for form; its history beside it where it lies in Git. */
export interface OpenStore {
  readonly root: string;
  readonly text: StoreText;
  readonly loaded: LoadedStore;
  readonly history: History | null;
  /** Where the records come from a printed book and no folder. */
  readonly book?: BookSource;
}

/** What a printed book says beside its records. */
export interface BookSource {
  readonly revision: string | null;
  readonly edition: Edition;
  /** What its edition leaves out of the records, in words. */
  readonly withheld: readonly string[];
  /** Anchor of a record's home → page, from 1. */
  readonly pages: ReadonlyMap<string, number>;
  /** Why nobody is proved to stand for it, in words. */
  readonly unproved?: string;
}
