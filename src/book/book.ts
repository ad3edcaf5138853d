import type { Assessment } from '../assess.js';
import type { Signed } from '../closeout/signed.js';
import type { Person } from '../records/index.js';
import type { Language, Reader } from '../words/index.js';
import type { SheetSize as AvailableSize, Drawings } from './drawings.js';
import type { BookSigner, CommitList, Edition } from './input.js';
import type { BookPhotos } from './photos.js';
import type { PaperSize } from './print/document.js';
import type { Orientation } from './print/paginate.js';
import type { Show } from './show.js';

/** What every chapter is made from: the assessment as this edition may see it, and how this book writes and draws. */
export interface Book {
  readonly assessment: Assessment;
  readonly edition: Edition;
  readonly editionName: string;
  readonly fingerprint: string;
  readonly signer?: BookSigner;
  /** Takes out of rendered markup what this edition keeps to itself; absent where it keeps nothing. */
  readonly clean?: (markup: string) => string;
  /** The record has changes that no commit has. */
  readonly dirty: boolean;
  readonly history: CommitList;
  /** Sign-offs that nothing has replaced, by id. Judged on the whole record: what an edition hides is covered by them too. */
  readonly standings: ReadonlyMap<string, Signed['standing']>;
  readonly show: Show;
  /** The language of shop.yaml: of the page that everybody must be able to read. */
  readonly everybody: Language;
  readonly draw: Drawings;
  readonly photos: BookPhotos;
  readonly sheets: Readonly<Record<Orientation, PaperSize>>;
  /** Room of a drawing beside headings and captions on a page of its own. */
  availableSize(sheet: Orientation, lessMm?: number): AvailableSize;
}

/** One chapter, ready for its template. */
export interface Chapter {
  /** Also the anchor of its heading: `c-<key>`. */
  readonly key: string;
  readonly title: string;
  /** File in templates/, without its ending. */
  readonly template: string;
  readonly data: object;
  readonly bare?: boolean;
  /** Whom it speaks to, where that is not whoever reads the rest of the book. */
  readonly reader?: Reader;
  /** Stands before the contents, as the cover does. */
  readonly front?: boolean;
}

export type ChapterMaker = (book: Book) => Chapter;

/** Name of a person for print, with the id; the id alone where the register does not have it. */
export function personName(book: Book, id: string | undefined): string | undefined {
  if (id === undefined) return undefined;
  const person: Person | undefined = book.assessment.model.library.people.get(id);
  return person ? `${person.name} (${person.id})` : id;
}

/** Name of a stage for print. */
export function stageName(book: Book, id: string | undefined): string | undefined {
  if (id === undefined) return undefined;
  return book.assessment.model.library.stages.find((stage) => stage.id === id)?.name ?? id;
}
