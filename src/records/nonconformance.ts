import { date, ids, oneOf, prose, text, texts, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** findings*.yaml: nonconformances and what was decided about each. */
export const nonconformance = kind(
  'finding',
  { in: 'shell', list: 'findings' },
  {
    raised: date('When it was found').required().asLast(),
    of: ids('What it is about').required().namesAny(),
    rules: texts('Names of the rules whose warnings it decides').usual([]),
    description: prose('What was found and what was expected').required(),
    decision: oneOf(['rework', 'repair', 'use as is', 'reject'], 'What was decided'),
    reason: prose('Why'),
    approved_by: text('Who approved the decision').person().leansOn('person').asLast(),
    closed: date('When it was done'),
    /** Owners must know of it. */
    tell_owner: yesNo('Printed in the owner’s edition').usual(false),
  },
  {
    asked: ['id', 'raised', 'of', 'description', 'decision', 'reason', 'approved_by'],
    block: true,
    stands: 'own life',
    event: ['raised'],
    pictured: 9,
  },
);

export type Nonconformance = RecordOf<typeof nonconformance>;
