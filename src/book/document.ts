import { signedStages } from '../ledger/signed.js';
import type { Book, Chapter } from './book.js';
import { contentsOf, type Heading } from './chapters/contents.js';
import { chaptersOf } from './chapters/index.js';
import type { Drawings } from './drawings.js';
import { forEdition, historyFor, SIGHT } from './editions.js';
import { fontFaces } from './fonts.js';
import type { BookInput } from './input.js';
import { preparePhotos } from './photos.js';
import { type BookDocument, sheetsOf, textHeight, textWidth } from './print/document.js';
import { projectDrawings } from './project-drawings.js';
import { showIn } from './show.js';
import { lackingWords, printable, raised } from './signs.js';
import { escaped, render, templateText } from './templates.js';

/** A record without commits has no date of its own; the book then carries this one rather than this machine's clock. */
const NO_DATE = '2000-01-01';

/** The whole book of one edition as one HTML page, ready to be measured. */
export async function bookDocument(input: BookInput, draw: Drawings = projectDrawings): Promise<BookDocument> {
  const book = await openBook(input, draw);
  const chapters = chaptersOf(book);
  const rendered = chapters.map((chapter) => ({ chapter, html: render(chapter.template, { ...chapter, book: common(book) }) }));
  const headings = rendered.filter(({ chapter }) => !chapter.bare).flatMap(({ html }) => headingsIn(html));
  const contents = contentsOf(book, headings);
  const at = rendered.findIndex(({ chapter }) => chapter.bare) + 1;
  rendered.splice(at, 0, { chapter: contents, html: render(contents.template, { ...contents, book: common(book) }) });
  const { shell, shop } = book.assessment.model;
  const { revision } = input.history;
  const { text: html, lacking } = printable(raised(page(book, rendered)));
  const line = (words: string): string => printable(words).text;
  return {
    html,
    sheets: book.sheets,
    chapters: rendered.map(({ chapter }) => ({
      key: chapter.key,
      title: chapter.title,
      ...(chapter.bare ? { bare: true } : {}),
    })),
    pictures: new Map(
      book.photos.all.flatMap((one) =>
        one.path && one.bytes ? [[one.path, { bytes: one.bytes, type: 'image/jpeg', photo: one.photo.id }]] : [],
      ),
    ),
    runningLeft: line(`Shell ${shell.id}  ·  ${book.editionName}  ·  ${shop.name}`),
    runningFoot: [
      `Revision ${revision ? revision.slice(0, 10) : 'not committed'}${input.dirty ? ' with uncommitted changes' : ''}`,
      `Fingerprint ${input.fingerprint.slice(0, 12)}`,
      ...(shell.vin ? [`VIN ${shell.vin}`] : []),
    ].join('  ·  '),
    date: input.history.revisionDate ?? input.history.commits[0]?.date ?? NO_DATE,
    warnings: [...book.photos.warnings, ...lackingWords(lacking)],
    ...(input.carry ? { carry: input.carry } : {}),
  };
}

async function openBook(input: BookInput, draw: Drawings): Promise<Book> {
  const assessment = forEdition(input.assessment, input.edition);
  const { shop, shell } = assessment.model;
  const sheets = sheetsOf(shop.paper);
  const show = showIn(shop.units);
  return {
    assessment,
    edition: input.edition,
    editionName: SIGHT[input.edition].name,
    fingerprint: input.fingerprint,
    dirty: input.dirty === true,
    history: historyFor(input.history, input.assessment.model, input.edition),
    standings: new Map(signedStages(input.assessment.model).map(({ signoff, standing }) => [signoff.id, standing])),
    show,
    draw,
    photos: await preparePhotos(shell.photos, input.photoFile),
    sheets,
    room: (sheet, lessMm = 0) => ({ widthMm: textWidth(sheets[sheet]), heightMm: textHeight(sheets[sheet]) - 1 - lessMm }),
  };
}

/** What any template may show of the book itself. */
const common = (book: Book) => ({
  shell: book.assessment.model.shell.id,
  title: book.assessment.model.shell.title,
  shop: book.assessment.model.shop.name,
  edition: book.editionName,
  owner: book.edition === 'owner',
  forShop: book.edition === 'shop',
});

/** Headings of a rendered chapter, in order: our own markup, so a pattern finds them. */
function headingsIn(html: string): readonly Heading[] {
  return [...html.matchAll(/<h([12]) id="([^"]+)"[^>]*>([\s\S]*?)<\/h\1>/gu)].map(([, level, id, inner]) => ({
    level: Number(level),
    to: id as string,
    /** Already escaped. */
    html: (inner as string).replace(/<[^>]+>/gu, '').trim(),
  }));
}

function page(book: Book, rendered: readonly { readonly chapter: Chapter; readonly html: string }[]): string {
  const { shell } = book.assessment.model;
  const title = escaped(`Shell ${shell.id}, ${shell.title}: as-built book, ${book.editionName}`);
  const width = (sheet: 'portrait' | 'landscape') => `${textWidth(book.sheets[sheet])}mm`;
  const height = (sheet: 'portrait' | 'landscape') => `${textHeight(book.sheets[sheet]) - 0.2}mm`;
  const sizes = `:root{--portrait:${width('portrait')};--landscape:${width('landscape')};--portrait-high:${height('portrait')};--landscape-high:${height('landscape')}}`;
  const chapters = rendered.map(
    ({ chapter, html }) => `<section class="chapter ${chapter.key}" data-chapter="${chapter.key}">\n${html}\n</section>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src 'self' data:">
<title>${title}</title>
<style>${fontFaces()}</style>
<style>${sizes}
${templateText('book.css')}</style>
</head>
<body>
${chapters.join('\n')}
</body>
</html>`;
}
