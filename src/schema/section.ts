import { z } from 'zod';
import type { Fields } from './fields.js';
import { record } from './record.js';

const SHAPES = {
  'rectangular tube': (f: Fields) => ({
    ...bounds(f),
    wall: f.quantity('length', 'Wall thickness', 'above zero'),
    corner_radius: f.quantity('length', 'Outer corner radius').optional(),
  }),
  'double hollow': (f: Fields) => ({
    ...bounds(f),
    wall: f.quantity('length', 'Wall thickness', 'above zero'),
    web: f.quantity('length', 'Thickness of the web between the hollows', 'above zero'),
    corner_radius: f.quantity('length', 'Outer corner radius').optional(),
  }),
  'I-beam': flanged,
  channel: flanged,
  angle: (f: Fields) => ({
    ...bounds(f),
    wall: f.quantity('length', 'Leg thickness', 'above zero'),
    fillet: f.quantity('length', 'Radius in the root').optional(),
    toe_radius: f.quantity('length', 'Radius at the toes').optional(),
  }),
  tee: flanged,
  'flat bar': bounds,
  'round bar': (f: Fields) => ({ diameter: f.quantity('length', 'Outer diameter', 'above zero') }),
  'round tube': (f: Fields) => ({
    diameter: f.quantity('length', 'Outer diameter', 'above zero'),
    wall: f.quantity('length', 'Wall thickness', 'above zero'),
  }),
  'corner radius': (f: Fields) => ({
    outer_radius: f.quantity('length', 'Outer radius', 'above zero'),
    wall: f.quantity('length', 'Wall thickness', 'above zero'),
    sweep: f.quantity('angle', 'Angle that it turns through, 90 deg where not typed', 'above zero').optional(),
  }),
  custom: (f: Fields) => ({
    ...bounds(f),
    area: f.quantity('area', 'Area of the section', 'above zero'),
    ix: f.quantity('inertia', 'Second moment about the width axis', 'above zero'),
    iy: f.quantity('inertia', 'Second moment about the depth axis', 'above zero'),
    j: f.quantity('inertia', 'Torsion constant', 'above zero').optional(),
  }),
} as const;

export const SECTION_SHAPES = Object.keys(SHAPES) as (keyof typeof SHAPES)[];

function bounds(f: Fields) {
  return {
    depth: f.quantity('length', 'Outside depth', 'above zero'),
    width: f.quantity('length', 'Outside width', 'above zero'),
  };
}

function flanged(f: Fields) {
  return {
    ...bounds(f),
    web: f.quantity('length', 'Web thickness', 'above zero'),
    flange: f.quantity('length', 'Flange thickness', 'above zero'),
    fillet: f.quantity('length', 'Radius between web and flange').optional(),
  };
}

const of = <Shape extends keyof typeof SHAPES>(f: Fields, shape: Shape) =>
  record(f, {
    shape: z.literal(shape).meta({ description: `one of ${SECTION_SHAPES.join(', ')}` }),
    ...(SHAPES[shape](f) as ReturnType<(typeof SHAPES)[Shape]>),
  });

/** library/sections.yaml: dimensions only. Area, inertia and mass are computed (but for custom). */
export const section = (f: Fields) =>
  z.discriminatedUnion('shape', [
    of(f, 'rectangular tube'),
    of(f, 'double hollow'),
    of(f, 'I-beam'),
    of(f, 'channel'),
    of(f, 'angle'),
    of(f, 'tee'),
    of(f, 'flat bar'),
    of(f, 'round bar'),
    of(f, 'round tube'),
    of(f, 'corner radius'),
    of(f, 'custom'),
  ]);
