import { faceWords } from '../../drawing/index.js';
import { isPlanned } from '../../model/planned.js';
import type { Panel } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { showIn } from '../show.js';
import { table } from '../table.js';

/** Owner's edition: every name and id that this edition prints, in one list. */
export const ownerIndex: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const named = [
    ...shell.panels.map((one) => ({ id: one.id, name: one.name ?? unnamed(book, one) })),
    ...shell.components.map((one) => ({ id: one.id, name: one.name })),
    ...shell.tanks.map((one) => ({ id: one.id, name: `${one.contents} tank` })),
    ...shell.bays.map((one) => ({ id: one.id, name: one.name ?? 'bay' })),
    ...shell.nodes
      .filter((one) => ['valve', 'drain', 'source', 'panel'].includes(one.nodeKind))
      .map((one) => ({ id: one.id, name: one.name ?? one.nodeKind })),
    ...shell.chassis.axles.map((one) => ({ id: one.id, name: `${one.id} axle` })),
    ...shell.declared.map((one) => ({ id: one.id, name: `${one.declaredKind} point` })),
  ];
  return {
    key: 'index',
    title: 'Index',
    template: 'owner-index',
    data: {
      index: table(book.show, {
        look: 'dense index',
        rows: named
          .filter(({ id }) => !isPlanned(shell, id))
          .sort(
            (a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }) || a.id.localeCompare(b.id, 'en', { numeric: true }),
          ),
        columns: (c) => [c.text('Name', (one) => one.name), c.refs('Id', (one) => [one.id]), c.page((one) => one.id)],
        empty: 'Nothing is recorded.',
      }),
    },
  };
};

/** A skin seldom has a name: what it is, on which side, and where it begins. */
function unnamed(book: Book, panel: Panel): string {
  const kind = panel.panelKind === 'skin' ? 'skin' : `${panel.panelKind} panel`;
  const beginsMm = Math.min(...panel.outline.map((corner) => corner[0]));
  const system = book.show.system === 'both' ? 'us' : book.show.system;
  const place = `from ${showIn(system).length(Math.abs(beginsMm))} ${beginsMm < 0 ? 'ahead' : 'aft'}`;
  return [kind, faceWords(book.assessment, panel), place].filter(Boolean).join(', ');
}
