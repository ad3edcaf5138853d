import { block, either, list, oneOf, text } from './fields.js';
import { HOLD_POINT_CHECKS } from './hold-point.js';
import { kind, type RecordOf } from './kind.js';

const holdPoint = either([
  text('A check by its own phrase, or the name of a test that must have passed'),
  block({
    check: oneOf(HOLD_POINT_CHECKS, 'What the program looks at').required(),
    words: text('As the shop calls it').required(),
  }),
]);

/** library/stages.yaml, in build order: what each must show before it can be signed off. */
export const stage = kind(
  'stage',
  { in: 'library', list: 'stages' },
  {
    name: text('As printed in the book').required(),
    hold_points: list(holdPoint, 'What must be shown before the stage can be signed off').usual([]),
  },
  { stands: 'kept up' },
);

export type Stage = RecordOf<typeof stage>;
