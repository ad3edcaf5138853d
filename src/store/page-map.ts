import { existsSync } from 'node:fs';
import path from 'node:path';
import { CacheDir } from './kept.js';
import { sealed, unsealed } from './sealed.js';

/** Where each record stands in a printed book: anchor → page number, from 1. Kept beside Git's own files, never in the store. */
export type PageMap = ReadonlyMap<string, number>;

const ROOM = 'pages';
/** Books of a few shells, in each edition, at a few of their revisions. */
const MOST_KEPT = 60;

const nameOf = (fingerprint: string, edition: string): string => `${fingerprint.replace(/[^0-9a-f]/gu, '')}-${edition}.json`;

/** Keeps the map for `where`. A repository that cannot be written to keeps none: the book is printed all the same. */
export async function keepPageMap(gitDir: string, fingerprint: string, edition: string, pages: PageMap): Promise<void> {
  const room = CacheDir.in(gitDir, ROOM);
  await room.write(nameOf(fingerprint, edition), sealed(JSON.stringify(Object.fromEntries(pages))));
  await room.thin(MOST_KEPT);
}

/** Empty where no book of exactly this record was printed here, and where what is kept is damaged or not marked with this user's key. */
export function readPageMap(gitDir: string, fingerprint: string, edition: string): PageMap {
  const bytes = CacheDir.in(gitDir, ROOM).read(nameOf(fingerprint, edition));
  try {
    const text = bytes && unsealed(bytes);
    const kept: unknown = text ? JSON.parse(text.toString('utf8')) : {};
    return new Map(Object.entries(kept as Record<string, number>).filter(([, page]) => Number.isInteger(page)));
  } catch {
    return new Map();
  }
}

/** True where any book was printed in this repository. */
export const keptMaps = (gitDir: string): boolean => existsSync(path.join(gitDir, 'shellbook', ROOM));
