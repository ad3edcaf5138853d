import { block, id, ids, list, listed, positions, quantity, range, text, texts } from './fields.js';
import { kind, type RecordOf } from './kind.js';

const sag = block({
  at: quantity('length', 'From the front end of the header').required(),
  drop: quantity('length', 'Below a straight line between its ends', 'any').required(),
});

const measured = block(
  {
    top: quantity('length', 'Along the top', 'above zero'),
    bottom: quantity('length', 'Along the bottom', 'above zero'),
    front: quantity('length', 'Along the front', 'above zero'),
    rear: quantity('length', 'Along the rear', 'above zero'),
    diagonals: range('length', 'Both diagonals'),
    header_sag: list(sag, 'Sag of the header below a line between its ends, place by place').usual([]),
  },
  'As measured: sides, diagonals and sag',
);

/** openings*.yaml */
export const opening = kind(
  'opening',
  { in: 'shell', list: 'openings' },
  {
    kind: listed('opening', 'What it is').required().as('openingKind').asLast(),
    wall: listed('wall', 'Where it is'),
    sill: positions('Both ends of the sill').usual([]),
    width: quantity('length', 'Width as it should be', 'above zero').required(),
    height: quantity('length', 'Height as it should be', 'above zero').required(),
    measured: measured.ofOne().notLent(),
    header: id('The member over it').names('member'),
    gussets: ids('The plates in its corners').names('member').usual([]),
    travel: quantity('length', 'Of a slide-out: how far it goes out from the wall', 'above zero'),
    driven_by: ids('Of a slide-out: circuits, runs and nodes that move with it or drive it'),
    by_hand: texts('Of a slide-out: how it is moved by hand, step by step').describes(),
    fluid: text('Of a slide-out: its hydraulic fluid, and how much').describes(),
    depth: quantity('length', 'Of a slide-out: how far into the coach it stands when it is in', 'above zero'),
  },
  {
    structure: true,
    event: ['date'],
    pictured: 6,
    repeated: {
      what: 'measured values and dates',
      least: 1,
      same: ['date', 'width', 'height'],
      readings: ['measured'],
      leastReadings: 1,
      word: 'date',
    },
  },
);

export type Opening = RecordOf<typeof opening>;

/** It slides out: by its kind. */
export const isSlideOut = ({ openingKind }: Pick<Opening, 'openingKind'>): boolean => openingKind === 'slide-out';

const DOORS: readonly string[] = ['door', 'entry door', 'loading door'];

/** A person walks through it. */
export const isDoor = ({ openingKind }: Pick<Opening, 'openingKind'>): boolean => DOORS.includes(openingKind);
