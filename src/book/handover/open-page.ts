import type { Book, Chapter } from '../book.js';
import { table } from '../table.js';
import type { HandOverFacts } from './facts.js';

/** What is open, by zone: whoever closes or paints over it hides it. */
export const openPage = (book: Book, { open }: HandOverFacts): Chapter => ({
  key: 'handover-open',
  title: 'Open items by zone',
  template: 'handover-open',
  data: {
    open: table(book.show, {
      look: 'dense',
      rows: open.flatMap(({ zone, findings }) =>
        findings.map((one) => ({ ...one, where: zone ? [zone.id, zone.name].filter(Boolean).join(', ') : 'in no zone' })),
      ),
      group: (one) => one.where,
      columns: (c) => [
        c.text('Grade', (one) => one.severity),
        c.text('What', (one) => one.message.replaceAll('`', '')),
        c.text('Of', (one) => one.ids.slice(0, MOST).join(', ')),
      ],
      empty: 'Nothing open: no error, and no warning undecided.',
    }),
  },
});

const MOST = 4;
