import { anchor } from '../model/anchor.js';
import { keptMaps, readPageMap } from '../store/page-map.js';
import { fingerprintOf } from './fingerprint-of.js';
import type { OpenShell } from './open.js';

/**
 * Where a record stands in the book that these records come from, else in the service edition that was printed of exactly these
 * records; no page where none was.
 */
export async function bookPages(opened: OpenShell): Promise<(id: string) => readonly number[]> {
  const { book } = opened.store;
  if (book) return pagesIn(book.pages);
  const gitDir = opened.store.history?.gitDir;
  // Without a printed book there is no need to read every photo for the fingerprint.
  if (gitDir === undefined || !keptMaps(gitDir)) return () => [];
  return pagesIn(readPageMap(gitDir, (await fingerprintOf(opened)).fingerprint, 'service'));
}

export function pagesIn(pages: ReadonlyMap<string, number>): (id: string) => readonly number[] {
  return (id) => {
    const page = pages.get(anchor(id));
    return page === undefined ? [] : [page];
  };
}
