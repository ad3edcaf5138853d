import { PDFHexString } from '@cantoo/pdf-lib';
import type { RawObject } from '../../pdf/raw-object.js';

/** Where the places of a book stand, and what they are in words. */
export interface Places {
  readonly homes: ReadonlyMap<string, number>;
  readonly names: ReadonlyMap<string, string>;
  /** `page`, in the book's language. */
  readonly pageWord: string;
}

/**
 * The links of a file, each with what it leads to in words (ISO 14289-1, 7.18.5): `DC-12/S1, page 34`. A screen reader says them where the
 * printed text is only a number. Links alone are given, and only those that had no words.
 */
export function describeLinks(objects: readonly RawObject[], places: Places): readonly RawObject[] {
  const known = new Map<string, string>();
  const wordsOf = (to: string): string => {
    const before = known.get(to);
    if (before !== undefined) return before;
    const words = pdfText(wordsFor(to, places));
    known.set(to, words);
    return words;
  };
  return objects.flatMap((object): readonly RawObject[] => {
    if (object.isStream || !startsWith(object.body, LINK)) return [];
    const text = Buffer.from(object.body).toString('latin1');
    const to = DESTINATION.exec(text)?.[1];
    if (to === undefined || text.includes('/Contents')) return [];
    const body = Buffer.from(`${LINK} /Contents ${wordsOf(to)}${text.slice(LINK.length)}`, 'latin1');
    return [{ ...object, body }];
  });
}

/** As the browser writes it. */
const LINK = '<</Type /Annot\n/Subtype /Link';
/** Anchors have plain signs only. */
const DESTINATION = /\/Dest \/([A-Za-z0-9_.-]+)/u;

function wordsFor(to: string, { homes, names, pageWord }: Places): string {
  const page = homes.get(to);
  return [names.get(to), ...(page === undefined ? [] : [`${pageWord} ${page}`])].filter(Boolean).join(', ');
}

const pdfText = (words: string): string =>
  /^[ -'*-[\]-~]*$/u.test(words) ? `(${words})` : PDFHexString.fromText(words).toString();

function startsWith(bytes: Uint8Array, words: string): boolean {
  for (let i = 0; i < words.length; i++) if (bytes[i] !== words.charCodeAt(i)) return false;
  return true;
}
