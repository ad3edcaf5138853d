import { block, celsius, count, id, oneOf, pipeSize, plainField, quantity, text } from './fields.js';
import { readGauge } from './form/worded-fields.js';
import type { ModelOf } from './types.js';

const wire = {
  /** 14, '1/0', '4/0'. */
  awg: plainField(readGauge, 'American Wire Gauge, as 14 or 2/0', { type: ['string', 'number'] }).called(
    'gauge',
    'awg',
    'wiregauge',
  ),
  area: quantity('conductorArea', 'Cross section', 'above zero'),
  type: id('A type in library/conductors.yaml').names('conductor').traced('part'),
  // A plus and a return, a live and a neutral; a data cable is one.
  conductors: count('Conductors in the run; two for a plus and a return').usual(({ medium }) =>
    medium === 'dc' || medium === 'ac' ? 2 : 1,
  ),
  rating: celsius('Temperature rating of the insulation', 'above zero'),
  material: oneOf(['copper', 'aluminium'], 'copper where not typed').usual('copper'),
};
/** What carries the current. Either a gauge, an area, or a type from the library. */
export type Conductor = ModelOf<typeof wire>;

/** What a wire or pipe is made of, of a circuit or of one run. */
export const CARRIED = {
  colour: text('Color of the wire or pipe, as red/black'),
  conductor: block(wire, 'The wire'),
  size: pipeSize('Nominal size and material of a pipe or duct, as 1/2 in PEX'),
  working_pressure: quantity('pressure', 'Working pressure'),
  marking: text('What is printed or tied on it').called('label'),
};
