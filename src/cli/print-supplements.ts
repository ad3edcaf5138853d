import path from 'node:path';
import { fingerprint } from '../archive/fingerprint.js';
import { assess } from '../assess.js';
import { carriedIn } from '../book/edition-records.js';
import type { BookInput, Edition } from '../book/input.js';
import { inLanguage } from '../book/language.js';
import { loadStore } from '../model/load.js';
import { hashPhotosAt, readStoreTextAt } from '../store/at-revision.js';
import { readBlobs } from '../store/git/blobs.js';
import { listTree } from '../store/git/tree.js';
import { resolveRevision } from '../store/revision.js';
import { writeOut } from '../store/write-out.js';
import { UserError } from '../user-error.js';
import type { Language } from '../words/index.js';
import type { Context } from './context.js';
import type { Status } from './io.js';
import { type OpenShell, revisionOf } from './open.js';
import { inputOf } from './print-books.js';
import { shownPath } from './shown-path.js';

/**
 * Prints, for each edition, the pages that are not as they were at a revision.
 * @throws UserError where there is no such revision, or the shell was not in it
 */
export async function supplements(
  opened: OpenShell,
  since: string,
  editions: readonly Edition[],
  { out, language }: { readonly out: string | undefined; readonly language: Language | undefined },
  context: Context,
): Promise<Status> {
  const shell = opened.assessment.model.shell.id;
  const { input, carry } = await inputOf(opened, 'hashes', context, language);
  const { old, fingerprintThen } = await earlierInput(opened, since, input, language);
  const [{ openChromium }, { printSupplement }] = await Promise.all([
    import('../book/print/chromium.js'),
    import('../book/supplement/print.js'),
  ]);
  const browser = await openChromium();
  for (const notice of browser.notices) context.tell(notice);
  const told = [];
  try {
    for (const edition of editions) {
      const progress = (text: string): void => context.progress(`${edition} edition: ${text}`);
      const printed = await printSupplement(
        browser,
        { ...old, edition, fingerprint: fingerprintThen(edition) },
        { ...input, edition, fingerprint: await carry.fingerprint(edition), progress },
      );
      const file =
        out === undefined
          ? path.join(opened.store.root, 'books', `${shell}-${edition}-supplement.pdf`)
          : path.resolve(context.io.cwd, out);
      if (printed) await writeOut(opened.store.root, file, printed.pdf);
      told.push({ edition, file, printed });
    }
  } finally {
    await browser.close();
  }
  for (const { edition, printed } of told) {
    for (const warning of printed?.warnings ?? []) context.tell(`${edition} edition: ${warning}`);
  }
  if (context.settings.json) {
    const { envelope } = await import('./report/json.js');
    const books = told.map(({ edition, file, printed }) => ({
      edition,
      file: printed ? shownPath(file, context) : null,
      pages: printed?.pageCount ?? 0,
      changed: (printed?.changes.pages ?? []).map(({ label, why }) => ({ page: label, why })),
      take_out: printed?.changes.takeOut ?? [],
      warnings: printed?.warnings ?? [],
    }));
    context.print(envelope('book', shell, revisionOf(opened), { since: old.history.revision, books }));
  } else {
    for (const { edition, file, printed } of told) {
      const changed = printed?.changes.pages.length ?? 0;
      context.print(
        printed
          ? `${shownPath(file, context)}  ${printed.pageCount} pages: ${changed} changed, ${printed.changes.takeOut.length} taken out`
          : `${edition} edition: no page changed since ${since}, so nothing was printed`,
      );
    }
  }
  return 0;
}

type Editionless = Omit<BookInput, 'edition' | 'fingerprint'>;

/** What the book of an earlier revision was printed from, read from Git alone. */
async function earlierInput(
  opened: OpenShell,
  since: string,
  now: Editionless,
  language: Language | undefined,
): Promise<{ readonly old: Editionless; fingerprintThen(edition: Edition): string }> {
  const { root } = opened.store;
  const { id } = opened.assessment.model.shell;
  const commit = await resolveRevision(root, since);
  const text = await readStoreTextAt(root, commit, id);
  const loaded = loadStore(text).shells.get(id);
  if (!loaded)
    throw new UserError(`Shell ${id} was not in the store yet at ${since}, so there is no earlier book to update from there.`);
  const tree = await listTree(root, commit);
  const photos = new Map(loaded.model.shell.photos.map((photo) => [photo.id, `shells/${id}/photos/${photo.file}`]));
  const photoHashes = await hashPhotosAt(root, commit, id);
  const old = {
    assessment: inLanguage(assess(loaded.model, loaded.findings), language),
    history: await historyUntil(opened, commit, now.history),
    async photoFile(photo) {
      const blob = tree.find((file) => file.path === photos.get(photo) && !file.link)?.blob;
      return blob === undefined ? undefined : (await readBlobs(root, [blob])).get(blob);
    },
  } satisfies Omit<Editionless, 'fingerprint'>;
  return {
    old,
    fingerprintThen(edition) {
      const seen = carriedIn(text, loaded.model, photoHashes, edition);
      return fingerprint(seen.model, seen.photoHashes);
    },
  };
}

/** The part of the history that was there at a commit. */
async function historyUntil(opened: OpenShell, commit: string, { commits }: BookInput['history']): Promise<BookInput['history']> {
  // The commit itself may have touched another shell only: then the book was of the last one before it.
  const all = (await opened.store.history?.commits()) ?? [];
  const until = all.findIndex((one) => one.commit === commit);
  const there = new Set(all.slice(Math.max(0, until)).map((one) => one.commit));
  const kept = commits.filter((one) => there.has(one.hash));
  const [last] = kept;
  return {
    commits: kept,
    ...(last ? { revision: last.hash, revisionDate: last.date, ...(last.tag === undefined ? {} : { tag: last.tag }) } : {}),
  };
}
