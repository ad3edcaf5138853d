import { nearest } from '../../source/nearest.js';
import type { Findable } from './records.js';
import type { MatchQuality } from './types.js';

/** Letter case, and one or more blanks, do not count. */
const plain = (text: string): string => text.toLowerCase().trim().replace(/\s+/gu, ' ');

const wordsOf = (one: Findable): readonly string[] =>
  [one.id, one.marking, one.name].flatMap((word) => (word ? [plain(word)] : []));

function qualityOf(query: string, one: Findable): MatchQuality | undefined {
  const words = wordsOf(one);
  if (words.includes(query)) return 'exact';
  if (words.some((word) => word.startsWith(query))) return 'prefix';
  const parts = query.split(' ');
  const text = words.join(' ');
  return parts.every((part) => text.includes(part)) ? 'contains' : undefined;
}

const ORDER: readonly MatchQuality[] = ['exact', 'prefix', 'contains'];

/**
 * Records whose id, name or marking is, starts with or contains what was asked (every word of it), in that order; where there is
 * none, those that differ by a slip or two. Within a quality, ids before names, then the order of `all`.
 */
export function matching(asked: string, all: readonly Findable[]): readonly (readonly [Findable, MatchQuality])[] {
  const query = plain(asked);
  if (query === '') return [];
  const found = all.flatMap((one) => {
    const quality = qualityOf(query, one);
    return quality ? [[one, quality] as const] : [];
  });
  if (found.length > 0) {
    const rank = ([one, quality]: readonly [Findable, MatchQuality]): number =>
      ORDER.indexOf(quality) * 2 + (plain(one.id).includes(query) ? 0 : 1);
    return [...found].sort((a, b) => rank(a) - rank(b));
  }
  const close = new Set(nearest(query, new Set(all.flatMap(wordsOf)), 5));
  return all.filter((one) => wordsOf(one).some((word) => close.has(word))).map((one) => [one, 'close'] as const);
}
