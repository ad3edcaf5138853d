import type { Medium, ServiceNode } from '../../model/services.js';
import type { Book, ChapterMaker } from '../book.js';
import { showIn } from '../show.js';
import { ref } from '../table.js';
import { IN_THE_OPEN, placeWords, wayToNode } from '../where.js';

interface Group {
  readonly title: string;
  readonly media: readonly Medium[];
  readonly kinds: readonly string[];
}

/** What is shut or switched first stands first. */
const GROUPS: readonly Group[] = [
  { title: 'Gas', media: ['gas'], kinds: ['source', 'valve'] },
  { title: 'Mains, generator and inverter', media: ['ac'], kinds: ['source', 'panel'] },
  { title: 'Batteries and direct current', media: ['dc'], kinds: ['source', 'panel'] },
  { title: 'Water', media: ['water'], kinds: ['valve'] },
  { title: 'Air, hydraulics and refrigerant', media: ['air', 'hydraulic', 'refrigerant'], kinds: ['source', 'valve'] },
];

/** On the one page there is room for so many of each; the rest is in the chapters. */
const MOST = 4;

/** One page: gas, mains, batteries, shut-offs, where not to cut. */
export const emergency: ChapterMaker = (book) => ({
  key: 'emergency',
  title: 'In an emergency',
  template: 'emergency',
  data: {
    rest: book.edition === 'owner' ? 'in the list of shut-offs' : 'in the chapter of its medium',
    figure: book.draw.emergencyPlan(book.assessment, { widthMm: book.room('portrait').widthMm, heightMm: 98 }),
    groups: GROUPS.map((group) => shutOffs(book, group)).filter((group) => group.items.length > 0),
  },
});

function shutOffs(book: Book, group: Group) {
  const found = book.assessment.model.shell.nodes.filter(
    (node) => group.media.includes(node.medium) && group.kinds.includes(node.nodeKind),
  );
  const ranked = [...found].sort((a, b) => group.kinds.indexOf(a.nodeKind) - group.kinds.indexOf(b.nodeKind));
  const items = ranked.slice(0, MOST).map((node) => ({
    ref: ref(node.id),
    name: node.name ?? node.nodeKind,
    normally: node.position,
    // One page for a hurry: one system of units.
    place: placeWords(showIn(book.show.system === 'both' ? 'us' : book.show.system), node.at),
    ...openWith(book, node),
  }));
  return { title: group.title, items, more: Math.max(0, found.length - MOST) };
}

function openWith(book: Book, node: ServiceNode) {
  const way = wayToNode(book, node.id);
  return { panels: way.panels.map((id) => ref(id)), words: way.words === IN_THE_OPEN ? undefined : way.words };
}
