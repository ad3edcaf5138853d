import type { Vec3 } from '../geometry/vector.js';
import { block, count, date, id, level, listed, oneOf, outlines, positions, quantity, text, twoLengths } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';

export const PANEL_KINDS = ['skin', 'roof', 'belly', 'cap', 'interior', 'access'] as const;
export type PanelKind = (typeof PANEL_KINDS)[number];
export const FACINGS = ['up', 'down', 'left', 'right', 'front', 'rear'] as const;
export type Facing = (typeof FACINGS)[number];
/** Unit vector out of the vehicle through a face of it, in the datum's axes. */
export const OUTWARD: Readonly<Record<Facing, Vec3>> = {
  up: [0, 0, 1],
  down: [0, 0, -1],
  left: [0, -1, 0],
  right: [0, 1, 0],
  front: [-1, 0, 0],
  rear: [1, 0, 0],
};

const fixing = {
  method: listed('fixing', 'How it is fixed').required(),
  count: count('Number of fasteners'),
  driver: text('Tool that opens it, as 3/16 hex'),
  adhesive: text('Adhesive').called('adhesive'),
  lot: text('Adhesive lot').ofOne().called('lot').traced('lot'),
  expires: date('Adhesive’s last day').ofOne(),
  applied: date('Day of bonding').ofOne(),
  sealant: text('Sealant'),
  torque: quantity('torque', 'Torque of the fasteners').ofOne(),
  order: text('Order in which the fasteners are undone and tightened'),
};
export type Fixing = ModelOf<typeof fixing>;

const bond = {
  surface: quantity('temperature', 'Temperature of the surface'),
  air: quantity('temperature', 'Temperature of the air'),
  humidity: level('Relative humidity'),
  open_time: quantity('time', 'From spreading to closing'),
  open_time_limit: quantity('time', 'Most that the adhesive allows'),
  cure: quantity('time', 'Before it was loaded'),
  cure_least: quantity('time', 'Least that the adhesive wants before it is loaded'),
  coupon: id('Test of the coupon').names('test'),
};
export type Bond = ModelOf<typeof bond>;

/** panels*.yaml */
export const panel = kind(
  'panel',
  { in: 'shell', list: 'panels' },
  {
    kind: oneOf(PANEL_KINDS, 'Kind of panel').required().as('panelKind').called('type').asLast(),
    name: text('As printed on its label'),
    alloy: id('Alloy and temper, as in library/materials.yaml').names('material').called('material').asLast(),
    thickness: quantity('length', 'Sheet thickness', 'above zero').called('gauge').asLast(),
    outline: positions('Corners in order', 3).required().notLent().called('corner', 'corners', 'point'),
    /** Their area is taken off. */
    holes: outlines('Cut-outs, each by its corners').usual([]),
    of: id('The panel that this access panel is set in').names('panel'),
    /** The larger dimension lies along the longer side of the outline. */
    opening: twoLengths('Clear opening, as 14 in x 18 in'),
    facing: oneOf(FACINGS, 'Way that its outside looks'),
    fixing: block(fixing, 'How it is held, and what was used'),
    bond: block(bond, 'What it was like while it was bonded').ofOne(),
    mass: quantity('mass', 'Where it was weighed', 'above zero').called('weight'),
  },
  {
    structure: true,
    asked: ['id', 'kind', 'stage', 'alloy', 'thickness', 'facing', 'outline', 'fixing.method', 'date'],
    event: ['fixing.applied', 'date'],
    pictured: 4,
    repeated: {
      what: 'bonding logs and dates',
      least: 3,
      same: ['date', 'id', 'fixing'],
      readings: ['bond'],
      leastReadings: 1,
      word: 'date',
    },
  },
);

export type Panel = RecordOf<typeof panel>;
