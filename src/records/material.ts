import { quantity, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** library/materials.yaml */
export const material = kind(
  'material',
  { in: 'library', list: 'materials' },
  {
    kind: text('aluminium, steel, stainless, plywood …').required().as('materialKind').asLast(),
    density: quantity('density', 'Mass of a volume', 'above zero').required(),
    modulus: quantity('pressure', 'Modulus of elasticity', 'above zero'),
    yield: quantity('pressure', 'Yield strength', 'above zero'),
    tensile: quantity('pressure', 'Tensile strength', 'above zero'),
    group: text('Weldability group of ISO/TR 15608, as 23'),
  },
);

export type Material = RecordOf<typeof material>;
