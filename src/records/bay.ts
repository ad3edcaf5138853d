import { STANDING } from './component.js';
import { position, quantity, size, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import { bodyOf, type FilledBox } from './tank.js';

/** One of shell.yaml’s `bays` */
export const bay = kind(
  'bay',
  { in: 'head', path: ['bays'] },
  {
    name: text('As printed in the book'),
    at: position('Middle of the bay').notLent().required(),
    limit: quantity('mass', 'Most that the bay itself may carry'),
    size: size('Inside size, as 40 in x 24 in x 30 in: along, across, up').describes(),
    ...STANDING,
  },
  {
    finish({ sizeMm, middle, outside, ridesOn, ...rest }) {
      const body = bodyOf({ sizeMm, middle, outside, ridesOn });
      return { ...rest, ...(body ? { body } : {}) } as typeof rest & { readonly body?: FilledBox };
    },
    structure: true,
  },
);

export type Bay = RecordOf<typeof bay>;
