import { anchor } from '../model/anchor.js';
import { keptMaps, readPageMap } from '../store/page-map.js';
import { fingerprintOf } from './fingerprint-of.js';
import type { OpenShell } from './open.js';

/** Where a record stands in the service edition that was printed from exactly these records; no page where none was. */
export async function bookPages(opened: OpenShell): Promise<(id: string) => readonly number[]> {
  const gitDir = opened.store.history?.gitDir;
  // Without a printed book there is no need to read every photo for the fingerprint.
  if (gitDir === undefined || !(await keptMaps(gitDir))) return () => [];
  const pages = await readPageMap(gitDir, (await fingerprintOf(opened)).fingerprint, 'service');
  return (id) => {
    const page = pages.get(anchor(id));
    return page === undefined ? [] : [page];
  };
}
