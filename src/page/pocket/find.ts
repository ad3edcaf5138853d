import { anchor } from '../../model/anchor.js';
import { type SearchEntry, searchIn } from '../../query/lookup/word-search.js';
import { element, make } from '../dom.js';
import type { PageWords } from '../words.js';
import type { ScreenStore } from './screen-store.js';

const MOST_SHOWN = 60;

/** So many cards are read at a time before anybody searches: a finger waits for no more than these. */
const READ_AT_ONCE = 40;

/** Answers as one types: the nearest first, each a link to its card. */
export function findAsTyped(
  entries: readonly SearchEntry[],
  words: PageWords,
  { listText }: Pick<ScreenStore, 'listText'>,
): void {
  const input = element<HTMLInputElement>('asked');
  const list = element<HTMLUListElement>('hits');
  const said = element<HTMLParagraphElement>('found');
  const { find, read } = searchIn(entries, (id) => listText(anchor(id)));
  const answer = (): void => {
    const asked = input.value.trim();
    const { hits, close } = find(asked);
    list.replaceChildren(
      ...hits
        .slice(0, MOST_SHOWN)
        .map(({ id, title, kind }) =>
          make('li', {}, make('a', { href: `#${anchor(id)}` }, id), [title, kind].filter(Boolean).join(', ')),
        ),
    );
    const count =
      hits.length > MOST_SHOWN
        ? words('tap.first', { shown: MOST_SHOWN, count: hits.length })
        : words('tap.found', { count: hits.length });
    said.textContent = asked === '' ? '' : hits.length === 0 ? words('tap.none', { asked }) : close ? words('tap.close') : count;
  };
  input.addEventListener('input', answer);
  element<HTMLFormElement>('search').addEventListener('submit', (event) => {
    event.preventDefault();
    answer();
    list.querySelector('a')?.click();
  });
  const readOn = (): void => {
    if (!read(READ_AT_ONCE)) setTimeout(readOn);
  };
  window.addEventListener('load', () => setTimeout(readOn));
}
