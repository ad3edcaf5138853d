import { date, ids, prose, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** amendments*.yaml: work done after close-out. */
export const amendment = kind(
  'amendment',
  { in: 'shell', list: 'amendments' },
  {
    date: date('When').required().notLent().asLast(),
    by: text('Who').required().notLent().person().leansOn('person').asLast(),
    reason: prose('Why').required(),
    changes: ids('Records that it changes').namesAny().usual([]),
  },
  { stands: 'own life', event: ['date'] },
);

export type Amendment = RecordOf<typeof amendment>;
