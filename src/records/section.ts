import type { Fields } from './field.js';
import { quantity } from './fields.js';
import { type Kind, variants } from './kind.js';
import type { RecordBase } from './record-base.js';
import type { Flat, ModelOf } from './types.js';

const length = (help: string) => quantity('length', help, 'above zero').required();
const radius = (help: string) => quantity('length', help).usual(0);

const bounds = { depth: length('Outside depth'), width: length('Outside width') };
const flanged = {
  ...bounds,
  web: length('Web thickness'),
  flange: length('Flange thickness'),
  fillet: radius('Radius between web and flange'),
};

const SHAPES = {
  'rectangular tube': { ...bounds, wall: length('Wall thickness'), corner_radius: radius('Outer corner radius') },
  'double hollow': {
    ...bounds,
    wall: length('Wall thickness'),
    web: length('Thickness of the web between the hollows'),
    corner_radius: radius('Outer corner radius'),
  },
  'I-beam': flanged,
  channel: flanged,
  angle: {
    ...bounds,
    wall: length('Leg thickness'),
    fillet: radius('Radius in the root'),
    toe_radius: radius('Radius at the toes'),
  },
  tee: flanged,
  'flat bar': bounds,
  'round bar': { diameter: length('Outer diameter') },
  'round tube': { diameter: length('Outer diameter'), wall: length('Wall thickness') },
  'corner radius': {
    outer_radius: length('Outer radius'),
    wall: length('Wall thickness'),
    sweep: quantity('angle', 'Angle that it turns through, 90 deg where not typed', 'above zero').usual(90),
  },
  custom: {
    ...bounds,
    area: quantity('area', 'Area of the section', 'above zero').required(),
    ix: quantity('inertia', 'Second moment about the width axis', 'above zero').required(),
    iy: quantity('inertia', 'Second moment about the depth axis', 'above zero').required(),
    j: quantity('inertia', 'Torsion constant', 'above zero'),
  },
} as const satisfies Record<string, Fields>;

type Shapes = typeof SHAPES;
/** The dimensions of a section, mm. Area, inertia and mass are computed, never typed (but for `custom`). */
export type SectionShape = { [S in keyof Shapes]: Flat<{ readonly shape: S } & ModelOf<Shapes[S]>> }[keyof Shapes];

export interface Section extends RecordBase {
  readonly dimensions: SectionShape;
}

const COMPUTED = 'it is computed from the dimensions (only `shape: custom` has it typed)';
const WITH_ALLOY = 'it is computed from the dimensions and the alloy’s density';

/** library/sections.yaml: extrusions and rolled shapes by their dimensions. */
export const section: Kind<'section', Fields, Section, { readonly in: 'library'; readonly list: 'sections' }> = variants(
  'section',
  { in: 'library', list: 'sections' },
  { key: 'shape', keyCalled: ['type'], forms: SHAPES },
  {
    finish: ({ base, own }) => ({ ...base, dimensions: own as unknown as SectionShape }),
    never: { area: COMPUTED, mass: WITH_ALLOY, weight: WITH_ALLOY, ix: COMPUTED, iy: COMPUTED },
    called: { profile: 'id', thickness: 'wall' },
  },
);
