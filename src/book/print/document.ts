import type { Carry } from '../../archive/carry.js';
import type { BookSigner } from '../input.js';
import type { Orientation } from './paginate.js';

/** A sheet of paper, mm: its size, and the box that text and drawings may fill. */
export interface PaperSize {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly margin: PageMargins;
  /** So much nearer to the outer edge lies the text of every page of a bound book, mm: a right-hand page is bound at its left, and where the sheet is turned at its top. */
  readonly gutterMm?: number;
}

export interface PageMargins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** PageMargins of a page on the right or left side of an open book. */
export function marginsOn({ widthMm, heightMm, margin, gutterMm = 0 }: PaperSize, side: 'left' | 'right'): PageMargins {
  const shift = side === 'right' ? gutterMm : -gutterMm;
  return widthMm > heightMm
    ? { ...margin, top: margin.top + shift, bottom: margin.bottom - shift }
    : { ...margin, left: margin.left + shift, right: margin.right - shift };
}

/** Page 1 is a right-hand one. */
export const sideOf = (page: number): 'left' | 'right' => (page % 2 === 1 ? 'right' : 'left');

/** One chapter, as the printer needs to know it. */
export interface ChapterHead {
  /** Key of the chapter, as in `data-chapter`. */
  readonly key: string;
  readonly title: string;
  /** No running head or foot: the cover. */
  readonly bare?: boolean;
  /** Stands at the foot in the place of the page's number: a page of another book. */
  readonly pageWords?: string;
}

/** A whole book as one HTML page, with what its paper needs. Nothing in it is fetched from anywhere. */
export interface BookDocument {
  readonly html: string;
  readonly sheets: Readonly<Record<Orientation, PaperSize>>;
  readonly chapters: readonly ChapterHead[];
  /** Pictures that the page names by path (`/photo/1.jpg`), each with the id of the photo that it shows. */
  readonly pictures: ReadonlyMap<string, { readonly bytes: Buffer; readonly type: string; readonly photo?: string }>;
  readonly runningLeft: string;
  readonly runningFoot: string;
  /** Words at the foot's right, `Page {page} of {count}`; absent: those. */
  readonly pageOf?: string;
  /** What a head says of a section that goes on, `{what}, continued`; absent: that. */
  readonly continued?: string;
  /** The word before a page's number in what a link says of itself; absent: `page`. */
  readonly pageWord?: string;
  /** Date that the file carries, `2026-06-30` or longer. */
  readonly date: string;
  readonly warnings: readonly string[];
  /** Makes what the file takes along, while the browser is busy; absent for a print that is no book. */
  readonly carry?: () => Promise<Carry>;
  readonly signer?: BookSigner;
}

export const textWidth = (sheet: PaperSize): number => sheet.widthMm - sheet.margin.left - sheet.margin.right;
export const textHeight = (sheet: PaperSize): number => sheet.heightMm - sheet.margin.top - sheet.margin.bottom;

const MARGIN = { top: 20, right: 19, bottom: 18, left: 19 };
/** Beside the binding there are 22 mm, room for punched holes (ISO 838: their middle 12 mm from the edge). */
const GUTTER_MM = 3;
const TURNED_GUTTER_MM = 3;

/** Letter or A4, upright and turned, for a book that is bound at its left. */
export function sheetsOf(paper: 'letter' | 'a4'): Readonly<Record<Orientation, PaperSize>> {
  const [short, long] = paper === 'letter' ? [215.9, 279.4] : [210, 297];
  return {
    portrait: { widthMm: short, heightMm: long, margin: MARGIN, gutterMm: GUTTER_MM },
    landscape: {
      widthMm: long,
      heightMm: short,
      margin: { top: 18, right: 16, bottom: 18, left: 16 },
      gutterMm: TURNED_GUTTER_MM,
    },
  };
}
