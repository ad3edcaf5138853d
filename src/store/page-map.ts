import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** Where each record stands in a printed book: anchor → page number, from 1. Kept beside Git's own files, never in the store. */
export type PageMap = ReadonlyMap<string, number>;

const folderOf = (gitDir: string): string => path.join(gitDir, 'shellbook', 'pages');

const fileOf = (gitDir: string, fingerprint: string, edition: string): string =>
  path.join(folderOf(gitDir), `${fingerprint.replace(/[^0-9a-f]/gu, '')}-${edition}.json`);

/** Keeps the map for `where`. A repository that cannot be written to keeps none: the book is printed all the same. */
export async function keepPageMap(gitDir: string, fingerprint: string, edition: string, pages: PageMap): Promise<void> {
  const file = fileOf(gitDir, fingerprint, edition);
  try {
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, `${JSON.stringify(Object.fromEntries(pages))}\n`);
  } catch {
    // Only page numbers in answers are lost.
  }
}

/** Empty where no book of exactly this record was printed here. */
export async function readPageMap(gitDir: string, fingerprint: string, edition: string): Promise<PageMap> {
  try {
    const kept: unknown = JSON.parse(await readFile(fileOf(gitDir, fingerprint, edition), 'utf8'));
    return new Map(Object.entries(kept as Record<string, number>).filter(([, page]) => Number.isInteger(page)));
  } catch {
    return new Map();
  }
}

/** True where any book was printed in this repository. */
export async function keptMaps(gitDir: string): Promise<boolean> {
  const kept = await readdir(folderOf(gitDir)).catch(() => []);
  return kept.length > 0;
}
