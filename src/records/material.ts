import { getOwn } from '../get-own.js';
import { listed, quantity, text } from './fields.js';
import { kind, type RecordOf } from './kind.js';

/** library/materials.yaml */
export const material = kind(
  'material',
  { in: 'library', list: 'materials' },
  {
    kind: listed('material', 'What it is').required().as('materialKind').asLast(),
    density: quantity('density', 'Mass of a volume', 'above zero').required(),
    modulus: quantity('pressure', 'Modulus of elasticity', 'above zero'),
    yield: quantity('pressure', 'Yield strength', 'above zero'),
    tensile: quantity('pressure', 'Tensile strength', 'above zero'),
    group: text('Weldability group of ISO/TR 15608, as 23'),
  },
);

export type Material = RecordOf<typeof material>;

/** Metals that eat each other where they touch in the wet. */
export type Metal = 'aluminium' | 'steel' | 'stainless' | 'copper';

const METALS: Readonly<Record<string, Metal>> = {
  aluminium: 'aluminium',
  aluminum: 'aluminium',
  steel: 'steel',
  'mild steel': 'steel',
  'carbon steel': 'steel',
  'galvanised steel': 'steel',
  'galvanized steel': 'steel',
  iron: 'steel',
  'cast iron': 'steel',
  stainless: 'stainless',
  'stainless steel': 'stainless',
  copper: 'copper',
  brass: 'copper',
  bronze: 'copper',
};

/** The family of a metal by a word of the list of materials; undefined for what is no metal, or in no list. */
export const metalOfKind = (kind: string | undefined): Metal | undefined =>
  kind === undefined ? undefined : getOwn(METALS, kind.toLowerCase());
