import { readerOf } from '../words/index.js';
import type { Book, Chapter } from './book.js';
import { raised, withGlyphs } from './signs.js';
import { render } from './templates.js';

/** One chapter as markup. */
export interface RenderedChapter {
  readonly key: string;
  readonly title: string;
  readonly bare?: boolean;
  readonly front?: boolean;
  /** With the section about it. */
  readonly html: string;
  /** Signs that its text has and the typeface lacks. */
  readonly lacking: readonly string[];
}

export function rendered(book: Book, { key, title, bare, front, template, data, reader }: Chapter): RenderedChapter {
  const spoken = common(book);
  const markup = render(template, { key, title, template, data, bare, book: reader ? { ...spoken, reader } : spoken });
  const { text, lacking } = withGlyphs(raised(book.clean?.(markup) ?? markup));
  const other = reader && reader.language !== spoken.reader.language ? ` lang="${reader.language}"` : '';
  const html = `<section class="chapter ${key}" data-chapter="${key}"${other}>\n${text}\n</section>`;
  return { key, title, ...(bare ? { bare } : {}), ...(front ? { front } : {}), html, lacking };
}

/** What any template may show of the book itself. */
const common = (book: Book) => ({
  shell: book.assessment.model.shell.id,
  title: book.assessment.model.shell.title,
  shop: book.assessment.model.shop.name,
  edition: book.editionName,
  owner: book.edition === 'owner',
  forShop: book.edition === 'shop',
  reader: readerOf(book.assessment.model.shop),
});
