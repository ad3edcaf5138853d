import { condition, readings } from './condition.js';
import { block, date, id, oneOf, quantity, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

const raised = block(
  {
    axle: id('The axle that was lifted, with those that share its load').required().names('axle'),
    by: quantity('length', 'How high its wheels were lifted', 'above zero').required(),
    level: id('The ticket of the same vehicle weighed level').required().names('ticket'),
    wheel_radius: quantity('length', 'From the ground to the middle of the wheels that stayed down', 'above zero').required(),
  },
  'Weighed with one axle raised, to find the height of the center of gravity',
);

/** weights*.yaml: scale tickets. */
export const ticket = kind(
  'ticket',
  { in: 'shell', list: 'weights' },
  {
    date: date('Day of weighing').required().notLent().called('weighed').asLast(),
    scale: id('Scale, as in library/instruments.yaml').names('instrument').asLast().traced('instrument'),
    ticket: text('Number on the ticket').called('ticketno'),
    condition,
    readings: readings.usual({}).notLent(),
    gross: quantity('mass', 'All axles at once', 'above zero').called('total', 'grossweight'),
    together: oneOf(['vehicle', 'group', 'axle', 'wheel'], 'What stood on the scale at once, level with the rest of the wheels'),
    raised,
  },
  {
    asked: ['id', 'date', 'stage', 'scale', 'ticket'],
    called: { fuel: 'condition.fuel', fuellevel: 'condition.fuel', driver: 'condition.occupants' },
    block: true,
    stands: 'evidence',
    event: ['date'],
    pictured: 11,
    repeated: {
      what: 'readings and dates',
      least: 1,
      same: ['date', 'gross'],
      readings: ['readings', 'condition'],
      leastReadings: 2,
      word: 'date',
    },
  },
);

export type Ticket = RecordOf<typeof ticket>;
