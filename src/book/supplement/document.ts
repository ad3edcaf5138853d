import { EDITION_POLICY } from '../edition-policy.js';
import { forEdition, historyFor } from '../editions.js';
import type { BookInput } from '../input.js';
import type { BookDocument, PaperSize } from '../print/document.js';
import { showIn } from '../show.js';
import { render, templateText } from '../templates.js';
import type { SupplementChanges } from './compare.js';
import { exchanges } from './ranges.js';

/** One page as it was laid out in the new book, ready to be printed alone. */
export interface TakenPage {
  readonly html: string;
  readonly sheet: string;
}

/** The supplement as a document of its own: a sheet that says what replaces what, then the changed pages under their own numbers. */
export function supplementDocument(
  old: BookInput,
  input: BookInput,
  book: BookDocument,
  changes: SupplementChanges,
  taken: readonly TakenPage[],
): BookDocument {
  const titles = new Map(book.chapters.map(({ key, title }) => [key, title]));
  const earlier = revisionWords(old);
  const pages = changes.pages.map((page, at) => ({
    key: `s${at + 1}`,
    title: titles.get(page.chapter) ?? page.chapter,
    pageWords: `Page ${page.label}  ·  supplement to revision ${earlier}`,
    ...(taken[at] as TakenPage),
  }));
  const head = book.html.slice(0, book.html.indexOf('<body>'));
  const front = render(
    'supplement',
    frontData(old, input, changes, (chapter) => titles.get(chapter) ?? chapter),
  );
  const leaves = pages.map(
    ({ key, html, sheet }) =>
      `<section class="chapter" data-chapter="${key}"><div class="leaf ${sheet}" data-sheet="${sheet}">${html}</div></section>`,
  );
  return {
    ...withoutCarry(book),
    sheets: { portrait: widened(book.sheets.portrait), landscape: widened(book.sheets.landscape) },
    html: `${head.replace('</head>', `<style>${templateText('supplement.css')}</style></head>`)}<body>
<section class="chapter" data-chapter="supplement">${front}</section>
${leaves.join('\n')}
</body></html>`,
    chapters: [
      { key: 'supplement', title: 'Supplement' },
      ...pages.map(({ key, title, pageWords }) => ({ key, title, pageWords })),
    ],
  };
}

/**
 * Room for the bars within what a browser prints: beyond its margins it prints nothing. Its pages go in between others, on either side, so
 * that both margins have room for the binding.
 */
const BARS_MM = 6;
const widened = (sheet: PaperSize): PaperSize => ({
  ...sheet,
  gutterMm: 0,
  margin: { ...sheet.margin, left: sheet.margin.left - BARS_MM },
});

/** A supplement is no book: it carries no records. */
function withoutCarry({ carry: _carry, ...book }: BookDocument): BookDocument {
  return book;
}

const revisionWords = (input: BookInput): string => input.history.revision?.slice(0, 10) ?? 'not committed';

function frontData(old: BookInput, input: BookInput, changes: SupplementChanges, titleOf: (chapter: string) => string) {
  const { model } = forEdition(input.assessment, input.edition);
  const show = showIn(model.shop.units);
  const known = new Set(old.history.commits.map((one) => one.hash));
  const amended = new Set(old.assessment.model.shell.amendments.map((one) => one.id));
  return {
    shell: model.shell.id,
    title: model.shell.title,
    edition: EDITION_POLICY[input.edition].name,
    from: { revision: revisionWords(old), date: show.date(old.history.revisionDate), fingerprint: old.fingerprint.slice(0, 12) },
    to: {
      revision: revisionWords(input),
      date: show.date(input.history.revisionDate),
      fingerprint: input.fingerprint.slice(0, 12),
    },
    dirty: input.dirty === true,
    lines: exchanges(changes, titleOf),
    count: changes.pages.length,
    amendments: model.shell.amendments
      .filter((one) => !amended.has(one.id))
      .map((one) => ({ id: one.id, date: show.date(one.date), reason: one.reason, changes: one.changes.join(', ') })),
    commits: historyFor(input.history, input.assessment.model, input.edition)
      .commits.filter((one) => !known.has(one.hash))
      .map((one) => ({ revision: one.hash.slice(0, 10), date: show.date(one.date), message: one.message })),
  };
}
