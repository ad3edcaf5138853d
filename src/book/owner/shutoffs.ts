import { rescueSources } from '../../query/isolate/rescue.js';
import { placesOf } from '../../query/place.js';
import type { ServiceNode } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { phrasesFor, readerFor, sentencesFor } from '../sentences.js';
import { ref, table } from '../table.js';
import { wayToNode } from '../where.js';
import { shutOffsOf } from './acts.js';

/** A card with a photo for each first shut-off, then every valve, drain and supply. */
export const shutoffs: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const cards = firstOnes(book).map((node) => card(book, node));
  return {
    key: 'shutoffs',
    title: w('shut.title'),
    template: 'owner-shutoffs',
    data: {
      rows: inThrees(cards.filter(({ picture }) => picture !== undefined)),
      bare: cards.filter(({ picture }) => picture === undefined),
      all: valveTable(book),
    },
  };
};

/** Sources and their first switches and valves, of every medium. */
function firstOnes(book: Book): readonly ServiceNode[] {
  const { shell } = book.assessment.model;
  const rescued = rescueSources(shell).flatMap(({ node }) => node ?? []);
  const wet = (['water', 'drain', 'air', 'hydraulic'] as const).flatMap((medium) => shutOffsOf(book, medium));
  return [...new Set([...rescued, ...wet])].filter(({ nodeKind, role }) => nodeKind !== 'source' || role === 'shore inlet');
}

function card(book: Book, node: ServiceNode) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const picture = book.photos.all.find(({ photo, path }) => path && photo.of.includes(node.id));
  const way = wayToNode(book, node.id);
  const position =
    node.position === undefined ? undefined : node.position === 'normally open' ? w('shut.open') : w('shut.closed');
  return {
    ref: ref(node.id),
    name: node.name ?? phrase(node.nodeKind),
    medium: phrase(book.draw.mediumName(node.medium)),
    where: placesOf(book.assessment.model, readerFor(book))(node.id) ?? w('word.notrecorded'),
    ...(position ? { normally: w('shut.normally', { position }) } : {}),
    ...(way.panels.length > 0 ? { behind: w('shut.behind', { panels: way.panels.join(', ') }) } : {}),
    ...(picture?.path ? { picture: { path: picture.path, caption: picture.photo.caption ?? '' } } : {}),
  };
}

function inThrees<T>(list: readonly T[]): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(list.length / 3) }, (_, at) => list.slice(at * 3, at * 3 + 3));
}

function valveTable(book: Book) {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const places = placesOf(book.assessment.model, readerFor(book));
  const nodes = book.assessment.model.shell.nodes.filter((node) => ['valve', 'drain', 'source', 'panel'].includes(node.nodeKind));
  return table(book.show, {
    look: 'dense tight',
    rows: nodes,
    home: (node) => node.id,
    group: (node) => phrase(book.draw.mediumName(node.medium)),
    columns: (c) => [
      c.id(w('head.id'), (node) => node.id),
      c.text(w('head.what'), (node) => node.name ?? phrase(node.nodeKind)),
      c.text(w('shut.usual'), (node) =>
        node.position === undefined ? undefined : node.position === 'normally open' ? w('shut.open') : w('shut.closed'),
      ),
      c.text(w('head.where'), (node) => places(node.id)),
      c.refs(w('head.panel'), (node) => wayToNode(book, node.id).panels),
    ],
    empty: w('word.none'),
  });
}
