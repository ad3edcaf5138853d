import { text, texts } from './fields.js';
import type { HoldPoint } from './hold-point.js';
import { kind, type RecordOf } from './kind.js';

/** library/stages.yaml, in build order: what each must show before it can be signed off. */
export const stage = kind(
  'stage',
  { in: 'library', list: 'stages' },
  {
    name: text('As printed in the book').required(),
    hold_points: texts('What must be shown before the stage can be signed off')
      .model((points): readonly HoldPoint[] => points)
      .usual([]),
  },
  { stands: 'kept up' },
);

export type Stage = RecordOf<typeof stage>;
