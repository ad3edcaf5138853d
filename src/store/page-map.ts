import { existsSync } from 'node:fs';
import path from 'node:path';
import { CacheDir } from './kept.js';
import type { KeptAt } from './kept-answers.js';
import { Sections } from './sections.js';

/** Where each record stands in a printed book: anchor → page number, from 1. Kept beside Git's own files, never in the store. */
export type PageMap = ReadonlyMap<string, number>;

const ROOM = 'pages';
/** Books of a few shells, in each edition, at a few of their revisions. */
const MOST_KEPT = 60;

const SECTION = 'pages';

/** The name may be given to any file: what it is of stands in it, behind the mark. */
const placeOf = (gitDir: string, fingerprint: string, edition: string): KeptAt => ({
  room: CacheDir.in(gitDir, ROOM),
  name: `${fingerprint.replace(/[^0-9a-f]/gu, '')}-${edition}`,
  stamp: `${fingerprint} ${edition}`,
  settled: true,
  most: MOST_KEPT,
});

/** Keeps the map for `where`. A repository that cannot be written to keeps none: the book is printed all the same. */
export async function keepPageMap(gitDir: string, fingerprint: string, edition: string, pages: PageMap): Promise<void> {
  const kept = Sections.open(placeOf(gitDir, fingerprint, edition));
  kept.put(SECTION, pages);
  await kept.save();
}

/** Empty where no book of exactly this record was printed here, and where what is kept is damaged, of another, or not marked with this user's key. */
export function readPageMap(gitDir: string, fingerprint: string, edition: string): PageMap {
  const kept = Sections.open(placeOf(gitDir, fingerprint, edition)).get(SECTION);
  return kept instanceof Map ? new Map([...kept].filter(([, page]) => Number.isInteger(page))) : new Map();
}

/** True where any book was printed in this repository. */
export const keptMaps = (gitDir: string): boolean => existsSync(path.join(gitDir, 'shellbook', ROOM));
