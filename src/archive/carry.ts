import type { ManifestHead } from './manifest.js';

/** What a book takes along of the record that it was printed from. */
export interface Carry {
  readonly head: ManifestHead;
  /** Bytes of each file in `head.records`, by path. */
  readonly records: ReadonlyMap<string, Uint8Array>;
  /** Bytes of a photo in `head.photos` that is carried. Throws where it has changed since it was hashed. */
  photo(path: string): Promise<Uint8Array>;
}

/** Of a store's files those that a shell's book stands on: the shop's, the library's, and the shell's own. Sorted. */
export const filesOfShell = (files: Iterable<string>, shell: string): readonly string[] =>
  [...files].filter((path) => path === 'shop.yaml' || path.startsWith('library/') || path.startsWith(`shells/${shell}/`)).sort();
