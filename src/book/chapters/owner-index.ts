import { faceWords } from '../../drawing/index.js';
import { isPlanned } from '../../model/planned.js';
import type { Panel } from '../../records/index.js';
import { readerOf } from '../../words/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { indexOrder } from '../index-order.js';
import { phrasesFor, sentencesFor } from '../sentences.js';
import { showIn } from '../show.js';
import { ref } from '../table.js';

/** Owner's edition: every name and id that this edition prints, in one list. */
export const ownerIndex: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const named = [
    ...shell.panels
      .filter(({ panelKind }) => panelKind === 'access')
      .map((one) => ({ id: one.id, name: one.name ?? unnamed(book, one) })),
    ...shell.components.map((one) => ({ id: one.id, name: one.name })),
    ...shell.tanks.map((one) => ({ id: one.id, name: phrase(`${one.contents} tank`) ?? one.id })),
    ...shell.bays.map((one) => ({ id: one.id, name: one.name ?? phrase('bay') ?? one.id })),
    ...shell.nodes
      .filter((one) => ['valve', 'drain', 'source', 'panel'].includes(one.nodeKind))
      .map((one) => ({ id: one.id, name: one.name ?? phrase(one.nodeKind) ?? one.id })),
    ...shell.chassis.axles.map((one) => ({ id: one.id, name: w('drawn.axle', { id: one.id }) })),
    ...shell.declared.map((one) => ({ id: one.id, name: phrase(`${one.declaredKind} point`) ?? one.id })),
  ];
  const order = indexOrder(readerOf(book.assessment.model.shop).language);
  const sorted = named.filter(({ id }) => !isPlanned(shell, id)).sort((a, b) => order(a.name, b.name) || order(a.id, b.id));
  return {
    key: 'index',
    title: w('index.title'),
    template: 'owner-index',
    data: {
      heads: { name: w('head.name'), id: w('head.id'), page: w('index.page') },
      lines: sorted.map(({ id, name }) => ({ name, refs: [ref(id)], to: ref(id).to })),
    },
  };
};

/** A skin seldom has a name: what it is, on which side, and where it begins. */
function unnamed(book: Book, panel: Panel): string {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const kind = phrase(panel.panelKind === 'skin' ? 'skin' : `${panel.panelKind} panel`);
  const beginsMm = Math.min(...panel.outline.map((corner) => corner[0]));
  const system = book.show.system === 'both' ? 'us' : book.show.system;
  const place = w(beginsMm < 0 ? 'index.ahead' : 'index.aft', { far: showIn(system).length(Math.abs(beginsMm)) });
  return [kind, phrase(faceWords(book.assessment, panel)), place].filter(Boolean).join(', ');
}
