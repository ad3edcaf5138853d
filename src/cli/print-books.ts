import { randomUUID } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { History as BookHistory, BookInput, Edition } from '../book/input.js';
import { CannotDo } from '../cannot.js';
import type { Commit } from '../store/history.js';
import { keepPageMap } from '../store/page-map.js';
import type { Context } from './context.js';
import { fingerprintOf } from './fingerprint-of.js';
import type { OpenShell } from './open.js';

export interface PrintedFile {
  readonly edition: Edition;
  readonly file: string;
  readonly pageCount: number;
  readonly warnings: readonly string[];
}

/** Prints editions of one shell's book, one browser for all of them. `fileOf` says where each goes. */
export async function printBooks(
  opened: OpenShell,
  editions: readonly Edition[],
  fileOf: (edition: Edition) => string,
  context: Context,
): Promise<readonly PrintedFile[]> {
  const [{ openPrinter }, input] = await Promise.all([import('../book/index.js'), inputOf(opened, context)]);
  const printer = await openPrinter();
  try {
    const printed: PrintedFile[] = [];
    for (const edition of editions) {
      const book = await printer.print({
        ...input,
        edition,
        progress: (text) => context.progress(`${edition} edition: ${text}`),
      });
      await writeWhole(fileOf(edition), book.pdf);
      const { history } = opened.store;
      if (history) await keepPageMap(history.gitDir, input.fingerprint, edition, book.pages);
      printed.push({ edition, file: fileOf(edition), pageCount: book.pageCount, warnings: book.warnings });
    }
    return printed;
  } finally {
    await printer.close();
  }
}

async function inputOf(opened: OpenShell, context: Context): Promise<Omit<BookInput, 'edition'>> {
  const { assessment, store } = opened;
  const { shell } = assessment.model;
  const folder = path.join(store.root, 'shells', shell.id, 'photos');
  const photos = new Map(shell.photos.map((photo) => [photo.id, photo]));
  context.progress('Taking the fingerprint');
  return {
    assessment,
    fingerprint: await fingerprintOf(opened),
    history: await historyOf(opened),
    async photoFile(id) {
      const photo = photos.get(id);
      // Only what the reader found inside the photos folder: a record's file name may say anything.
      if (!photo || !store.text.photos.has(`shells/${shell.id}/photos/${photo.file}`)) return undefined;
      return readFile(path.join(folder, photo.file)).catch(() => undefined);
    },
  };
}

async function historyOf(opened: OpenShell): Promise<BookHistory> {
  const commits = (await opened.store.history?.commits(opened.assessment.model.shell.id)) ?? [];
  const [last] = commits;
  return {
    commits: commits.map((one) => ({
      hash: one.commit,
      date: one.date,
      author: one.author,
      message: one.subject,
      ...tagOf(one),
    })),
    ...(last ? { revision: last.commit, revisionDate: last.date, ...tagOf(last) } : {}),
  };
}

const tagOf = (commit: Commit): { tag?: string } => (commit.tags[0] === undefined ? {} : { tag: commit.tags[0] });

/** Under another name first: whoever opens the file meanwhile sees the old book or the new one, never half of one. */
async function writeWhole(file: string, bytes: Uint8Array): Promise<void> {
  const partial = `${file}.${randomUUID().slice(0, 8)}.part`;
  try {
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(partial, bytes);
    await rename(partial, file);
  } catch (error) {
    await rm(partial, { force: true }).catch(() => undefined);
    throw new CannotDo(`The book cannot be written to ${file}: ${(error as NodeJS.ErrnoException).code ?? String(error)}`);
  }
}
