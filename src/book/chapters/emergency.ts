import { RESCUE_GROUPS, rescueItems } from '../../drawing/index.js';
import type { ServiceNode } from '../../model/services.js';
import type { Book, ChapterMaker } from '../book.js';
import { showIn } from '../show.js';
import { type Ref, ref } from '../table.js';
import { IN_THE_OPEN, placeWords, wayToNode } from '../where.js';

/** Of water, air and hydraulics only what stops all of it. */
const MAIN = /\bmain\b|\bmaster\b|emergency|tank shut-?off/iu;
const OTHER_MEDIA = ['water', 'air', 'hydraulic'];
/** One page: with a longer list the plan gives way, mm. */
const PLAN_MM = 134;
const LEAST_PLAN_MM = 70;
/** Heading, caution and the spaces between, mm. */
const ABOVE_MM = 33;
/** Of the list, in mm: a group's title with its space, a line of an item, the space after an item; and the letters that fill a line. */
const TITLE_MM = 5.9;
const LINE_MM = 3.72;
const GAP_MM = 0.35;
const NAME_LETTERS = 52;
const PLACE_LETTERS = 64;

/** One page, read in seconds: a numbered plan of gas, fuel, mains and batteries, and the list of its numbers. */
export const emergency: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const { items, more } = rescueItems(shell);
  const others = shell.nodes
    .filter((node) => OTHER_MEDIA.includes(node.medium) && node.nodeKind === 'valve' && MAIN.test(node.name ?? ''))
    .map((node) => ({
      ref: ref(node.id),
      name: `${book.draw.mediumName(node.medium).toLowerCase()}: ${node.name}`,
      place: placeOf(book, node.at),
      ...openWith(book, node),
    }));
  const groups = RESCUE_GROUPS.map((title) => ({
    title,
    more: more.get(title) ?? 0,
    items: items
      .filter((item) => item.group === title)
      .map(({ number, id, name, at, node }) => ({
        number,
        ref: ref(id),
        name,
        place: placeOf(book, at),
        ...(node ? { normally: node.position, ...openWith(book, node) } : {}),
      })),
  }));
  const listed = [
    ...groups.slice(0, 2),
    { title: 'Water, air and hydraulics (not on the plan)', more: 0, items: others },
    ...groups.slice(2),
  ].filter((group) => group.items.length > 0);
  const room = book.room('portrait').heightMm - ABOVE_MM - listMm(listed);
  const heightMm = Math.max(LEAST_PLAN_MM, Math.min(PLAN_MM, room));
  return {
    key: 'emergency',
    title: 'In an emergency',
    template: 'emergency',
    data: {
      rest: book.edition === 'owner' ? 'in the list of shut-offs' : 'in the chapter of its medium',
      figure: book.draw.emergencyPlan(book.assessment, { widthMm: book.room('portrait').widthMm, heightMm }),
      groups: listed,
    },
  };
};

interface Listed {
  readonly more: number;
  readonly items: readonly {
    readonly name: string;
    readonly place: string;
    readonly ref: Ref;
    readonly normally?: string | undefined;
    readonly panels?: readonly Ref[];
    readonly words?: string | undefined;
  }[];
}

/** Height of the list in two columns, whose groups are never torn. */
function listMm(groups: readonly Listed[]): number {
  const lines = (letters: number, most: number): number => Math.max(1, Math.ceil(letters / most));
  const heights = groups.map(({ items, more }) =>
    items.reduce(
      (sum, { name, ref, normally = '', place, panels = [], words = '' }) => {
        const opened = panels.reduce((all, one) => all + one.text.length + 2, panels.length > 0 ? 7 : 0);
        const first = lines(name.length + ref.text.length + normally.length + (normally ? 4 : 1), NAME_LETTERS);
        const second = lines(place.length + opened + (words ? words.length + 2 : 0), PLACE_LETTERS);
        return sum + (first + second) * LINE_MM + GAP_MM;
      },
      TITLE_MM + (more > 0 ? LINE_MM : 0),
    ),
  );
  const whole = heights.reduce((sum, one) => sum + one, 0);
  let left = 0;
  return heights.reduce((least, one) => {
    left += one;
    return Math.min(least, Math.max(left, whole - left));
  }, whole);
}

/** One page for a hurry: one system of units. */
const placeOf = (book: Book, at: ServiceNode['at']): string =>
  placeWords(showIn(book.show.system === 'both' ? 'us' : book.show.system), at);

function openWith(book: Book, node: ServiceNode) {
  const way = wayToNode(book, node.id);
  return { panels: way.panels.map((id) => ref(id)), words: way.words === IN_THE_OPEN ? undefined : way.words };
}
