import type { BookDocument } from './document.js';
import type { Block, PlannedPage } from './paginate.js';

/** A page with what its head and edge say of it. */
export interface HeadedPage extends PlannedPage {
  /** Name of its `@page` rule: pages with the same words share one. */
  readonly rule: string;
  /** The chapter's title; behind it the cards on the page, or the section that goes on from the page before. */
  readonly head: string;
  /** Id that stands as a tab at the page's edge, and how far down, as a share of the text's height. */
  readonly tab?: { readonly id: string; readonly share: number };
}

/** Pure: names what is on each page, in the order of the book. */
export function headedPages(
  pages: readonly PlannedPage[],
  blocks: readonly Block[],
  document: BookDocument,
): readonly HeadedPage[] {
  const tabs = [...new Set(blocks.flatMap(({ tab }) => tab ?? []))];
  const continued = (words: string): string => (document.continued ?? '{what}, continued').replace('{what}', words);
  const titles = new Map(document.chapters.map(({ key, title }) => [key, title]));
  const rules = new Map<string, number>();
  let open: Section = {};
  return pages.map((page): HeadedPage => {
    if (open.chapter !== page.chapter) open = { chapter: page.chapter };
    const own = page.pieces.map(({ block }) => blocks[block] as Block);
    const ids = own.flatMap(({ tab }) => tab ?? []);
    const [first] = own;
    const goesOn = first !== undefined && first.heading === undefined;
    const before = goesOn ? (open.tab ?? open.heading) : undefined;
    const title = titles.get(page.chapter) ?? '';
    const shown = [...(before === undefined || before === title ? [] : [continued(shortened(before))]), ...ids];
    const tab = (goesOn ? open.tab : undefined) ?? ids[0];
    for (const { heading, tab: id } of own) if (heading !== undefined) open = { chapter: page.chapter, heading, tab: id };
    const words = shown.length > MOST_IDS ? `${shown[0]} … ${shown.at(-1)}` : shown.join(', ');
    const head = [before === title ? continued(title) : title, words].filter(Boolean).join('  ·  ');
    const share = tab === undefined ? 0 : tabs.indexOf(tab) / Math.max(1, tabs.length - 1);
    const key = `${page.chapter}-${page.sheet}`;
    const same = `${key} ${head} ${tab}`;
    const number = rules.get(same) ?? rules.size;
    rules.set(same, number);
    return {
      ...page,
      rule: `${key}-${number}`,
      head,
      ...(tab === undefined ? {} : { tab: { id: tab, share } }),
    };
  });
}

/** What is open where a page ends. */
interface Section {
  readonly chapter?: string;
  readonly heading?: string;
  readonly tab?: string | undefined;
}

/** More cards than this on a page are the first and the last. */
const MOST_IDS = 3;
/** Signs that stand beside the chapter's title in a head. */
const LONGEST = 44;

const shortened = (words: string): string => (words.length <= LONGEST ? words : `${words.slice(0, LONGEST - 1).trimEnd()}…`);
