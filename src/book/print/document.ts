import type { Carry } from '../../archive/carry.js';
import type { BookSigner } from '../input.js';
import type { Orientation } from './paginate.js';

/** A sheet of paper, mm: its size, and the box that text and drawings may fill. */
export interface PaperSize {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly margin: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
}

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

const MARGIN = { top: 20, right: 18, bottom: 18, left: 20 };

/** Letter or A4, upright and turned. The left edge (the upper one of a turned sheet) is for the binder. */
export function sheetsOf(paper: 'letter' | 'a4'): Readonly<Record<Orientation, PaperSize>> {
  const [short, long] = paper === 'letter' ? [215.9, 279.4] : [210, 297];
  return {
    portrait: { widthMm: short, heightMm: long, margin: MARGIN },
    landscape: { widthMm: long, heightMm: short, margin: { top: 20, right: 16, bottom: 16, left: 16 } },
  };
}
