import { RESCUE_GROUPS, rescueItems } from '../../drawing/index.js';
import type { ServiceNode } from '../../model/services.js';
import type { Book, ChapterMaker } from '../book.js';
import { showIn } from '../show.js';
import { ref } from '../table.js';
import { IN_THE_OPEN, placeWords, wayToNode } from '../where.js';

/** Of water, air and hydraulics only what stops all of it. */
const MAIN = /\bmain\b|\bmaster\b|emergency|tank shut-?off/iu;
const OTHER_MEDIA = ['water', 'air', 'hydraulic'];
/** One page: with a longer list the plan gives way. */
const PLAN_MM = 134;
const LEAST_PLAN_MM = 80;
/** Items that the list holds beneath the largest plan, and what each more takes of it, mm. */
const LISTED = 15;
const ITEM_MM = 4.5;

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
  const heightMm = Math.max(LEAST_PLAN_MM, PLAN_MM - Math.max(0, items.length - LISTED) * ITEM_MM);
  return {
    key: 'emergency',
    title: 'In an emergency',
    template: 'emergency',
    data: {
      rest: book.edition === 'owner' ? 'in the list of shut-offs' : 'in the chapter of its medium',
      figure: book.draw.emergencyPlan(book.assessment, { widthMm: book.room('portrait').widthMm, heightMm }),
      groups: [
        ...groups.slice(0, 2),
        { title: 'Water, air and hydraulics (not on the plan)', more: 0, items: others },
        ...groups.slice(2),
      ].filter((group) => group.items.length > 0),
    },
  };
};

/** One page for a hurry: one system of units. */
const placeOf = (book: Book, at: ServiceNode['at']): string =>
  placeWords(showIn(book.show.system === 'both' ? 'us' : book.show.system), at);

function openWith(book: Book, node: ServiceNode) {
  const way = wayToNode(book, node.id);
  return { panels: way.panels.map((id) => ref(id)), words: way.words === IN_THE_OPEN ? undefined : way.words };
}
