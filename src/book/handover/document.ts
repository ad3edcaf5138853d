import type { Chapter } from '../book.js';
import { editionBook, pageFrame } from '../document.js';
import type { BookInput } from '../input.js';
import type { BookDocument } from '../print/document.js';
import { rendered } from '../rendered.js';
import { lackingWords, withGlyphs } from '../signs.js';
import type { HandOverFacts } from './facts.js';
import { firstPage } from './first-page.js';
import { floorScrewPage } from './floor-page.js';
import { maskPages } from './mask-pages.js';
import { openPage } from './open-page.js';
import { paintPage } from './paint-page.js';
import { screwPages } from './screw-pages.js';
import { weightPage } from './weight-page.js';

const NO_DATE = '2000-01-01';

/**
 * The hand-over sheet for paint and interior, one page a subject: what weight is left, how deep one may screw from inside, what is masked,
 * what paint there is and what bounds its baking, what is open. Pure.
 */
export async function handOverDocument(input: Omit<BookInput, 'edition'>, facts: HandOverFacts): Promise<BookDocument> {
  const book = await editionBook({ ...input, edition: 'service' });
  const pages: readonly Chapter[] = [
    weightPage(book),
    ...screwPages(book),
    ...floorScrewPage(book),
    ...maskPages(book),
    paintPage(book),
    openPage(book, facts),
  ];
  const chapters = [firstPage(book, facts, pages), ...pages];
  const frame = pageFrame(book, 'hand-over to paint and interior');
  const made = chapters.map((one) => rendered(book, one));
  const { shell, shop } = book.assessment.model;
  const { revision } = input.history;
  const line = (words: string): string => withGlyphs(words).text;
  return {
    html: `${frame.before}${made.map(({ html }) => html).join('\n')}${frame.after}`,
    sheets: book.sheets,
    chapters: made.map(({ key, title }) => ({ key, title })),
    pictures: new Map(),
    runningLeft: line(`Shell ${shell.id}  ·  Hand-over to paint and interior  ·  ${shop.name}`),
    runningFoot: line(
      [
        ...(shop.notice ? [shop.notice] : []),
        `Revision ${revision ? revision.slice(0, 10) : 'not committed'}${input.dirty ? ' with uncommitted changes' : ''}`,
      ].join('  ·  '),
    ),
    date: input.history.revisionDate ?? NO_DATE,
    warnings: lackingWords([...new Set([frame, ...made].flatMap((one) => one.lacking))]),
  };
}
