import type { Finding } from '../finding.js';
import type { Library, Shop } from '../records/index.js';
import type { Model } from './shell.js';

/** A store as text: what the reader needs and nothing else, so that tests can hand it a literal. */
export interface StoreText {
  /** Folder it was read from; for messages only. */
  readonly root: string;
  /** Path relative to the store, with forward slashes → text, for every .yaml file. */
  readonly files: ReadonlyMap<string, string>;
  /** Path relative to the store → size in bytes, of every photo file. */
  readonly photos: ReadonlyMap<string, number>;
  /** Paths of voice notes. */
  readonly sounds?: readonly string[];
  /** Path relative to the store → why that file or link was not read, as one sentence. */
  readonly refused?: ReadonlyMap<string, string>;
}

export interface LoadedShell {
  readonly model: Model;
  /** Findings of reading, form and linking in this shell's files. */
  readonly findings: readonly Finding[];
}

export interface LoadedStore {
  readonly shop: Shop;
  readonly library: Library;
  readonly shells: ReadonlyMap<string, LoadedShell>;
  /** Findings in shop.yaml and the library. */
  readonly findings: readonly Finding[];
}
