import { position, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** One of shell.yaml’s `seats` */
export const seat = kind(
  'seat',
  { in: 'head', path: ['seats'] },
  {
    at: position('Middle of the person').notLent().required(),
    belted: yesNo('Has a belt: may be used on the road').usual(true),
  },
  { structure: true },
);

export type Seat = RecordOf<typeof seat>;
