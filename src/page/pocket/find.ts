import { anchor } from '../../model/anchor.js';
import { element, make } from '../dom.js';
import type { SearchEntry } from '../pocket-data.js';
import type { PageWords } from '../words.js';
import { searchIn } from './search.js';

const MOST_SHOWN = 60;

/** The words of a card's first list, with blanks between them. */
const cardText = (id: string): string =>
  [...(document.getElementById(anchor(id))?.querySelector('dl')?.children ?? [])].map((one) => one.textContent ?? '').join(' ');

/** Answers as one types: the nearest first, each a link to its card. */
export function findAsTyped(entries: readonly SearchEntry[], words: PageWords): void {
  const input = element<HTMLInputElement>('asked');
  const list = element<HTMLUListElement>('hits');
  const said = element<HTMLParagraphElement>('found');
  const search = searchIn(entries, cardText);
  const answer = (): void => {
    const asked = input.value.trim();
    const { hits, close } = search(asked);
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
}
