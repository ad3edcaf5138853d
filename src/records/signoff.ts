import { date, id, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** signoffs*.yaml */
export const signoff = kind(
  'signoff',
  { in: 'shell', list: 'signoffs' },
  {
    id: id('Not needed: made of stage, role and date')
      .usual(({ read: { stage, role, date: day } }) => `${stage}/${role}/${day}`.replace(/[^\p{L}\p{N}./_-]+/gu, '-'))
      .notLent()
      .called('no', 'number', 'mark', 'tag', 'item', 'piece', 'pieceno'),
    stage: id('Stage, as in library/stages.yaml').required().names('stage').called('phase').asLast(),
    role: text('In what role').required().asLast(),
    by: id('Who signs, as in library/people.yaml').required().notLent().names('person').person().asLast(),
    date: date('When').required().notLent().asLast(),
    digest: text('Digest of what it covers, written by shellbook'),
    entered_by: text('Who typed it, where that was another than who signs').person(),
  },
  { stands: 'own life', toldBy: ['stage', 'role', 'by', 'date'] },
);

export type Signoff = RecordOf<typeof signoff>;
