import type { Hidden } from './hidden.js';
import { cleanText } from './text.js';

/** A tag, or what stands between two. */
const PIECE = /<[^>]*>|[^<]+/gu;
/** Words of a tag that are read out or shown. */
const SPOKEN = /\s(?:alt|title|aria-label)="[^"]*"/gu;

/**
 * Rendered markup without what is hidden. Records are cleaned before any chapter sees them; this is for words that a figure made of them,
 * as a heat's number or what a test was called, and holds whatever comes to be printed later.
 */
export function cleanMarkup(html: string, hidden: Hidden): string {
  if (hidden.names.size === 0 && hidden.stamps.size === 0) return html;
  // The same words stand on many cards and in many rows.
  const done = new Map<string, string>();
  const clean = (text: string): string => {
    const known = done.get(text);
    if (known !== undefined) return known;
    const cleaned = cleanText(text, hidden);
    done.set(text, cleaned);
    return cleaned;
  };
  return html.replace(PIECE, (piece) => (piece.startsWith('<') ? piece.replace(SPOKEN, clean) : clean(piece)));
}
