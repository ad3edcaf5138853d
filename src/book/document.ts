import { signedStages } from '../closeout/signed.js';
import { readerOf, say } from '../words/index.js';
import type { Book } from './book.js';
import { contentsPages, type Heading } from './chapters/contents.js';
import { chaptersOf } from './chapters/index.js';
import { EDITION_POLICY } from './edition-policy.js';
import { forEdition, historyFor } from './editions.js';
import { fontFaces } from './fonts.js';
import type { BookInput } from './input.js';
import { type BookPhotos, preparePhotos } from './photos.js';
import { type BookDocument, sheetsOf, textHeight, textWidth } from './print/document.js';
import { projectDrawings } from './project-drawings.js';
import { hiddenFrom } from './redact/hidden.js';
import { cleanMarkup } from './redact/markup.js';
import { type RenderedChapter, rendered } from './rendered.js';
import { sentencesFor } from './sentences.js';
import { showIn } from './show.js';
import { lackingWords, withGlyphs } from './signs.js';
import { escaped, templateText } from './templates.js';

/** A record without commits has no date of its own; the book then carries this one rather than this machine's clock. */
const NO_DATE = '2000-01-01';

/** Reads a book while it is still being written. */
export interface Follower {
  /** The page before it has any chapter, and the pictures that the chapters name. */
  open(page: string, pictures: BookDocument['pictures']): Promise<void>;
  /** One more chapter: behind those that are there, or before the one at place `at` among them. */
  chapter(html: string, at?: number): Promise<void>;
}

/** The whole book of one edition as one HTML page, ready to be measured. `follower` gets each chapter as soon as it is made. */
export async function bookDocument(input: BookInput, follower?: Follower): Promise<BookDocument> {
  const book = await editionBook(input);
  const pictures = picturesOf(book.photos);
  const frame = pageFrame(book);
  await follower?.open(frame.before + frame.after, pictures);
  const made: RenderedChapter[] = [];
  for (const chapter of chaptersOf(book)) {
    const one = rendered(book, chapter);
    made.push(one);
    await follower?.chapter(one.html);
  }
  const contents = rendered(
    book,
    contentsPages(
      book,
      made.filter(({ bare }) => !bare).flatMap(({ html }) => headingsIn(html)),
    ),
  );
  const at = made.findLastIndex(({ bare, front }) => bare || front) + 1;
  made.splice(at, 0, contents);
  await follower?.chapter(contents.html, at);
  const { shell, shop } = book.assessment.model;
  const { revision } = input.history;
  const lacking = [...new Set([frame, ...made].flatMap((one) => one.lacking))];
  const owner = book.edition === 'owner';
  const words = (key: FootKey): string => (owner ? sentencesFor(book)(key) : say(readerOf({}), key));
  const line = (words: string): string => withGlyphs(words).text;
  return {
    html: `${frame.before}${made.map(({ html }) => html).join('\n')}${frame.after}`,
    sheets: book.sheets,
    chapters: made.map(({ key, title, bare }) => ({ key, title, ...(bare ? { bare } : {}) })),
    pictures,
    runningLeft: line([shellWord(book), book.editionName, shop.name].join('  ·  ')),
    ...(owner
      ? {
          pageOf: sentencesFor(book)('book.pageOf', { page: '{page}', count: '{count}' }),
          pageWord: sentencesFor(book)('book.at'),
          continued: sentencesFor(book)('book.continued', { what: '{what}' }),
        }
      : {}),
    runningFoot: [
      ...(shop.notice ? [shop.notice] : []),
      `${words('past.revision')} ${revision ? revision.slice(0, 10) : words('past.uncommitted')}${input.dirty ? words('past.dirty') : ''}`,
      `${words('past.print')} ${input.fingerprint.slice(0, 12)}`,
      ...(shell.vin ? [`VIN ${shell.vin}`] : []),
    ].join('  ·  '),
    date: input.history.revisionDate ?? input.history.commits[0]?.date ?? NO_DATE,
    warnings: [...book.photos.warnings, ...lackingWords(lacking)],
    ...(input.carry ? { carry: input.carry } : {}),
    ...(input.signer ? { signer: input.signer } : {}),
  };
}

/** What chapters are made from, as one edition may see it. */
export async function editionBook(input: BookInput): Promise<Book> {
  const assessment = forEdition(input.assessment, input.edition);
  const hidden = hiddenFrom(input.assessment.model, input.edition);
  const { shop, shell } = assessment.model;
  const sheets = sheetsOf(shop.paper);
  const show = showIn(shop.units, readerOf(shop).language);
  return {
    assessment,
    edition: input.edition,
    editionName:
      input.edition === 'owner' ? sentencesFor({ assessment })('book.edition.owner') : EDITION_POLICY[input.edition].name,
    fingerprint: input.fingerprint,
    ...(input.signer ? { signer: input.signer } : {}),
    ...(input.edition === 'shop' ? {} : { clean: (markup) => cleanMarkup(markup, hidden) }),
    dirty: input.dirty === true,
    history: historyFor(input.history, input.assessment.model, input.edition),
    standings: new Map(signedStages(input.assessment.model).map(({ signoff, standing }) => [signoff.id, standing])),
    show,
    everybody: readerOf(input.assessment.model.shop).language,
    draw: input.drawings ?? projectDrawings,
    photos: await preparePhotos(shell.photos, input.photoFile),
    sheets,
    availableSize: (sheet, lessMm = 0) => ({
      widthMm: textWidth(sheets[sheet]),
      heightMm: textHeight(sheets[sheet]) - 1 - lessMm,
    }),
  };
}

/** Headings of a rendered chapter, in order: our own markup, so a pattern finds them. */
function headingsIn(html: string): readonly Heading[] {
  return [...html.matchAll(/<h([12]) id="([^"]+)"[^>]*>([\s\S]*?)<\/h\1>/gu)].map(([, level, id, inner]) => ({
    level: Number(level),
    to: id as string,
    /** Already escaped. */
    html: (inner as string).replace(/<[^>]+>/gu, '').trim(),
  }));
}

const picturesOf = (photos: BookPhotos): BookDocument['pictures'] =>
  new Map(
    photos.all.flatMap(({ path, bytes, photo }) =>
      path && bytes
        ? [
            [
              path,
              {
                get bytes() {
                  return bytes();
                },
                type: 'image/jpeg',
                photo: photo.id,
              },
            ],
          ]
        : [],
    ),
  );

type FootKey = 'past.revision' | 'past.uncommitted' | 'past.dirty' | 'past.print';

const shellWord = (book: Book): string => {
  const { id } = book.assessment.model.shell;
  return book.edition === 'owner' ? sentencesFor(book)('book.shell', { shell: id }) : `Shell ${id}`;
};

/** The page around the chapters. `what`: what kind of paper it is, for its title. */
export function pageFrame(
  book: Book,
  what = sentencesFor(book)('book.what', { edition: book.editionName }),
): { readonly before: string; readonly after: string; readonly lacking: readonly string[] } {
  const { shell } = book.assessment.model;
  const title = withGlyphs(escaped(`${shellWord(book)}, ${shell.title}: ${what}`));
  const width = (sheet: 'portrait' | 'landscape') => `${textWidth(book.sheets[sheet])}mm`;
  const height = (sheet: 'portrait' | 'landscape') => `${textHeight(book.sheets[sheet]) - 0.2}mm`;
  const sizes = `:root{--portrait:${width('portrait')};--landscape:${width('landscape')};--portrait-high:${height('portrait')};--landscape-high:${height('landscape')}}`;
  const before = `<!doctype html>
<html lang="${readerOf(book.assessment.model.shop).language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src 'self' data:">
<title>${title.text}</title>
<style>${fontFaces()}</style>
<style>${sizes}
${templateText('book.css')}</style>
</head>
<body>
`;
  return { before, after: '\n</body>\n</html>', lacking: title.lacking };
}
