import { id, oneOf, position, quantity, size, text, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';

export const MASS_BASES = ['weighed', 'catalogue', 'calculated', 'estimated'] as const;
export type MassBasis = (typeof MASS_BASES)[number];

/** What people look for when something has happened. */
const EMERGENCY_USES = ['fire extinguisher', 'fire blanket', 'first aid kit', 'escape hammer', 'spill kit'] as const;

/** Where the box lies that something fills. */
export const STANDING = {
  middle: position('Middle of its size, where that is not the place typed as `at`').describes(),
  outside: yesNo('It hangs outside, exposed').describes(),
  rides_on: id('The slide-out that it moves with').names('opening').describes(),
};

/** components*.yaml */
export const component = kind(
  'component',
  { in: 'shell', list: 'components' },
  {
    name: text('What it is').required().called('description').traced('part'),
    mass: quantity('mass', 'Its mass').required().called('weight'),
    at: position('Its center of gravity').required().notLent().called('location', 'position', ''),
    // The safe side: a mass that nobody says to have weighed is an estimate, with an estimate's uncertainty.
    basis: oneOf(MASS_BASES, 'Where the mass comes from; estimated where not typed').usual('estimated').called('source').asLast(),
    size: size('Outside size, as 20 in x 12 in x 8 in: along, across, up').describes('early'),
    part: text('Maker’s part number').called('partno').traced('part'),
    serial: text('Serial number').ofOne().notLent().called('serialno').traced('part'),
    tolerance: quantity('length', 'How well its place is known'),
    use: oneOf(EMERGENCY_USES, 'What it is for in an emergency').describes(),
    hot: oneOf(['dry', 'wet'], 'Exhaust or other hot part: dry, or cooled by water (wet)'),
    keep_clear: quantity('length', 'How far wires and pipes must stay off a hot part, where its maker says'),
    ...STANDING,
  },
  {
    structure: true,
    asked: ['id', 'name', 'mass', 'at', 'basis', 'stage', 'date'],
    called: { component: 'id' },
    pictured: 7,
  },
);

export type Component = RecordOf<typeof component>;
