import { quantity, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** library/conductors.yaml: wire and pipe types beyond the built-in tables. */
export const conductor = kind(
  'conductor',
  { in: 'library', list: 'conductors' },
  {
    area: quantity('conductorArea', 'Conductor’s cross section', 'above zero'),
    outside_diameter: quantity('length', 'Over the insulation or the pipe', 'above zero'),
    inside_diameter: quantity('length', 'Bore of a pipe', 'above zero'),
    mass: quantity('lineMass', 'Mass of a length', 'above zero'),
    ampacity: quantity('current', 'Most current that its maker or a code allows', 'above zero'),
    material: text('copper, PEX, aluminium …').as('materialKind'),
  },
);

export type ConductorType = RecordOf<typeof conductor>;
