import { placesOf } from '../../query/place.js';
import type { Book, Chapter } from '../book.js';
import { emergencyChapter } from '../chapters/emergency.js';
import { readerFor, sentencesFor } from '../sentences.js';
import { ref } from '../table.js';
import { emergencyActs, staysLive, waysOut } from './acts.js';

/** The plan, and beside it in the book what to do, in order, with whom to ring. */
export function ownerEmergency(book: Book): readonly Chapter[] {
  const w = sentencesFor(book);
  const { shop, shell } = book.assessment.model;
  const places = placesOf(book.assessment.model, readerFor(book));
  return [
    emergencyChapter(book),
    {
      key: 'acts',
      title: w('act.title'),
      template: 'owner-acts',
      data: {
        acts: emergencyActs(book).map(({ words, where, node }) => ({
          words,
          where,
          ...(node ? { ref: ref(node.id) } : {}),
        })),
        live: staysLive(book),
        out: waysOut(book),
        extinguishers: shell.components
          .filter(({ use }) => use === 'fire extinguisher')
          .map((one) => ({ ref: ref(one.id), name: one.name, where: places(one.id) })),
        telephone: shop.telephone ?? w('act.telephone.none'),
        shell: shell.id,
      },
    },
  ];
}
