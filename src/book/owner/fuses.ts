import { placesOf } from '../../query/place.js';
import type { Circuit } from '../../records/index.js';
import type { ChapterMaker } from '../book.js';
import { phrasesFor, readerFor, sentencesFor } from '../sentences.js';
import { table } from '../table.js';
import { protectionWords, wayToNode } from '../where.js';

/** Each panel of fuses or breakers as it looks, then those that stand elsewhere. */
export const fuses: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const nodes = new Map(shell.nodes.map((node) => [node.id, node]));
  const places = placesOf(book.assessment.model, readerFor(book));
  const at = ({ protection }: Circuit) => (protection?.at === undefined ? undefined : nodes.get(protection.at));
  return {
    key: 'fuses',
    title: w('fuses.title'),
    template: 'owner-fuses',
    data: {
      faces: book.draw.distributionFaces(book.assessment, { widthMm: book.availableSize('portrait').widthMm, heightMm: 200 }),
      elsewhere: table<Circuit>(book.show, {
        look: 'dense tight',
        rows: shell.circuits.filter((circuit) => circuit.protection && at(circuit)?.slot === undefined),
        columns: (c) => [
          c.refs(w('head.id'), (circuit) => [circuit.protection?.at]),
          c.text(w('fuses.rating'), (circuit) => phrase(protectionWords(circuit, false))),
          c.text(w('fuses.protects'), (circuit) => [circuit.id, circuit.name].filter(Boolean).join(', ')),
          c.text(w('head.where'), (circuit) => (circuit.protection?.at ? places(circuit.protection.at) : undefined)),
          c.refs(w('head.panel'), (circuit) => (circuit.protection?.at ? wayToNode(book, circuit.protection.at).panels : [])),
        ],
        empty: w('word.none'),
      }),
    },
  };
};
