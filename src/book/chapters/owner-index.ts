import type { ChapterMaker } from '../book.js';
import { table } from '../table.js';

/** Owner's edition: every name and id that this edition prints, in one list. */
export const ownerIndex: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const named = [
    ...shell.panels.map((one) => ({ id: one.id, name: one.name ?? `${one.panelKind} panel` })),
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
        rows: named.sort(
          (a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }) || a.id.localeCompare(b.id, 'en', { numeric: true }),
        ),
        columns: (c) => [c.text('Name', (one) => one.name), c.refs('Id', (one) => [one.id]), c.page((one) => one.id)],
        empty: 'Nothing is recorded.',
      }),
    },
  };
};
