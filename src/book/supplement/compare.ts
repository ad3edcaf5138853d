/**
 * What of an earlier book has to be replaced. Pure: two lists of pages in, the pages to print and to take out. Pages that stay keep their
 * numbers, so what is new between them is numbered 40a, 40b; whatever refers to a page whose number has changed is printed anew too.
 */

import { letters } from '../../quantity/format.js';

/** One laid-out page, by what stands on it; numbers of pages, which move, are no part of it. */
export interface PageContent {
  readonly chapter: string;
  /** Digest of each block, of a table each row, in order. */
  readonly parts: readonly string[];
  /** Anchors whose page number it prints. */
  readonly refs: readonly string[];
}

export interface LaidOutBook {
  readonly pages: readonly PageContent[];
  /** Anchor → number of the page where it stands, from 1. */
  readonly stands: ReadonlyMap<string, number>;
}

export interface ChangedPage {
  /** Number in the new book, from 1. */
  readonly number: number;
  /** Number that it bears among the pages that stay: `40`, or `40a` where it is one more. */
  readonly label: string;
  /** New: goes in after what stays; contents: replaces the page of that number; references: the same but for page numbers. */
  readonly why: 'new' | 'contents' | 'references';
  readonly chapter: string;
}

export interface SupplementChanges {
  readonly pages: readonly ChangedPage[];
  /** Numbers of pages of the earlier book that nothing replaces. */
  readonly takeOut: readonly number[];
  /** Label of every page of the new book, in order. */
  readonly labels: readonly string[];
}

export function compareBooks(old: LaidOutBook, fresh: LaidOutBook): SupplementChanges {
  const partner = align(old.pages, fresh.pages);
  const labels = labelled(partner);
  const taken = new Set(partner.map((pair) => pair?.old));
  const labelOf = (anchor: string): string | undefined => {
    const number = fresh.stands.get(anchor);
    return number === undefined ? undefined : labels[number - 1];
  };
  const stale = (page: PageContent): boolean => page.refs.some((ref) => labelOf(ref) !== printedNumber(old, ref));
  const pages = fresh.pages.flatMap((page, at): readonly ChangedPage[] => {
    const pair = partner[at];
    const given = { number: at + 1, label: labels[at] as string, chapter: page.chapter };
    if (!pair) return [{ ...given, why: 'new' }];
    if (!pair.same) return [{ ...given, why: 'contents' }];
    return stale(page) ? [{ ...given, why: 'references' }] : [];
  });
  return { pages, labels, takeOut: old.pages.flatMap((_, at) => (taken.has(at) ? [] : [at + 1])) };
}

const printedNumber = (book: LaidOutBook, anchor: string): string | undefined => {
  const number = book.stands.get(anchor);
  return number === undefined ? undefined : String(number);
};

interface Pair {
  /** Index of the page that it replaces or stays for. */
  readonly old: number;
  readonly same: boolean;
}

/** The old page of each new one: the same where there is one, else one that lay between the same neighbours of its chapter. */
function align(old: readonly PageContent[], fresh: readonly PageContent[]): readonly (Pair | undefined)[] {
  const partner: (Pair | undefined)[] = fresh.map(() => undefined);
  for (const chapter of new Set(fresh.map((page) => page.chapter))) {
    const before = indexesOf(old, chapter);
    const after = indexesOf(fresh, chapter);
    const kept = longestCommon(
      before.map((at) => keyOf(old[at] as PageContent)),
      after.map((at) => keyOf(fresh[at] as PageContent)),
    );
    let [a, b] = [0, 0];
    for (const [nextA, nextB] of [...kept, [before.length, after.length] as const]) {
      // Between two that stay: page for page, as far as both have some.
      for (; a < nextA && b < nextB; a++, b++) partner[after[b] as number] = { old: before[a] as number, same: false };
      if (nextB < after.length) partner[after[nextB] as number] = { old: before[nextA] as number, same: true };
      [a, b] = [nextA + 1, nextB + 1];
    }
  }
  return partner;
}

const keyOf = (page: PageContent): string => page.parts.join(' ');
const indexesOf = (pages: readonly PageContent[], chapter: string): readonly number[] =>
  pages.flatMap((page, at) => (page.chapter === chapter ? [at] : []));

/** Pairs of indexes of a longest common subsequence, in order. */
function longestCommon(a: readonly string[], b: readonly string[]): readonly (readonly [number, number])[] {
  const best = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  const at = (i: number, j: number): number => best[i]?.[j] ?? 0;
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = b.length - 1; j >= 0; j--) {
      (best[i] as number[])[j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  const pairs: [number, number][] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    if (a[i] === b[j]) pairs.push([i++, j++]);
    else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  }
  return pairs;
}

/** A page keeps the number of the one that it replaces; what is one more takes a letter behind the number before it. */
function labelled(partner: readonly (Pair | undefined)[]): readonly string[] {
  let last = 0;
  let more = 0;
  return partner.map((pair) => {
    if (!pair) return `${last}${letters(more++).toLowerCase()}`;
    [last, more] = [pair.old + 1, 0];
    return String(last);
  });
}
