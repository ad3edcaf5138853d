import { block, date, ids, list, listed, position, quantity, text, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';

const check = {
  date: date('When it was checked').required(),
  torque: quantity('torque', 'As found or tightened again', 'above zero').ofOne(),
  by: text('Who checked it').person().ofOne(),
  after: text('Distance or time by then, as 640 mi'),
};
export type ClampCheck = ModelOf<typeof check>;

const again = block({ after: text('Distance or time, as 500 mi').required() }, 'When its torque is looked at next').model(
  ({ after }) => `after ${after}`,
);

/** clamps*.yaml */
export const clamp = kind(
  'clamp',
  { in: 'shell', list: 'clamps' },
  {
    kind: listed('clamp', 'What it is').required().as('clampKind').called('type').asLast(),
    at: position('Where it is').required().notLent().called('location'),
    bolt: text('Size and grade'),
    torque: quantity('torque', 'As tightened', 'above zero').ofOne(),
    damper: text('Damper that it holds'),
    insulator: yesNo('Unlike metals are kept apart here'),
    isolator: yesNo('Before it was called `insulator`: read as that'),
    joins: ids('Parts that it holds together').namesAny().usual([]).notLent(),
    check_again: again,
    checks: list(block(check), 'Each check since it was first tightened').ofOne(),
  },
  {
    structure: true,
    event: ['date'],
    pictured: 8,
    finish: ({ isolator, insulator = isolator, ...rest }) => ({ ...rest, ...(insulator === undefined ? {} : { insulator }) }),
  },
);

export type Clamp = RecordOf<typeof clamp>;
