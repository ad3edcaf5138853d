import { block, celsius, id, listed, load, quantity, quantityOfAnyKind, text, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';
import { CARRIED } from './wire.js';

const protection = {
  kind: listed('protection', 'What kind of protection').required().called('protection'),
  rating: quantityOfAnyKind('Its rating')
    .model((rating) => (rating.dimension === 'current' ? rating.value : undefined), 'A')
    .called('fuse', 'breaker', 'fusesize'),
  at: id('Node that it sits in').names('node').called('fusepanel'),
};
export type Protection = ModelOf<typeof protection>;

/** The circuits of services/*.yaml */
export const circuit = kind(
  'circuit',
  { in: 'service', list: 'circuits' },
  {
    name: text('What it feeds')
      .usual(({ id: own }) => own)
      .called('description', 'feeds')
      .traced('part'),
    voltage: quantity('voltage', 'Voltage at the source', 'above zero').called('volts').asLast(),
    load: load('What it draws, in A or W').called('amps', 'current', 'watts'),
    protection: block(protection, 'What protects it: fuse, breaker, regulator or relief valve'),
    bonding: yesNo('yes for an earth bond or bonding conductor: it wants no fuse'),
    ambient: celsius('Hottest air around its wires; 30 C where neither this nor shop.yaml says'),
    ...CARRIED,
  },
  {
    structure: true,
    asked: [
      ...(['id', 'name', 'voltage', 'load', 'conductor.awg', 'conductor.conductors', 'conductor.rating'] as const),
      ...(['protection.kind', 'protection.rating', 'protection.at', 'marking'] as const),
    ],
    called: {
      circuit: 'id',
      circuitno: 'id',
      wire: 'conductor.awg',
      conductors: 'conductor.conductors',
      cores: 'conductor.conductors',
      insulation: 'conductor.rating',
    },
  },
);

export type Circuit = RecordOf<typeof circuit>;
