import type { Axle } from './axle.js';
import { condition, readings } from './condition.js';
import { block, list, offset, prose, quantity, station, text } from './fields.js';
import { part, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';

const crossMember = block({
  x: station('Its middle, rearward from the front axle’s center line').required(),
  depth: quantity('length', 'Its height', 'above zero').required(),
  width: quantity('length', 'Its width along the coach', 'above zero').required(),
  below_top: quantity('length', 'Its top below the top of the rails; 0 in where they are level').required(),
});

const frame = {
  rail_top_above_ground: quantity('length', 'Top of the frame rail over the ground, unladen', 'above zero'),
  rail_spacing: quantity('length', 'Outside to outside of the rails', 'above zero'),
  rail_depth: quantity('length', 'Depth of a rail', 'above zero'),
  rail_width: quantity('length', 'Width of a rail', 'above zero'),
  length: quantity('length', 'Length of the rails', 'above zero'),
  cross_members: list(crossMember, 'What joins the rails, front to rear; [] where there is none'),
};
export type ChassisFrame = ModelOf<typeof frame>;

/** `chassis:` of shell.yaml without its axles and its bare weights, which are read each on its own. */
export const chassis = part(
  'chassis',
  {
    description: prose('What the maker calls it'),
    document: text('Incomplete vehicle document or like').ofOne().traced('certificate'),
    gvwr: quantity('mass', 'Gross vehicle weight rating', 'above zero').ofOne(),
    gcwr: quantity('mass', 'Gross combination weight rating', 'above zero').ofOne(),
    frame: block(frame, 'The chassis frame').usual({}),
  },
  { words: '`chassis`' },
);

/** `chassis: {bare: …}`: the chassis as it came, by axle. */
export const bare = part('bare', { condition: condition.required(), readings: readings.required() }, { words: '`bare`' });

/** `datum:` of shell.yaml */
export const datum = part(
  'datum',
  { origin: offset('Where this shell’s typed origin lies in the standard datum').required() },
  { words: '`datum`' },
);

export type Chassis = RecordOf<typeof chassis> & {
  /** Front to rear. */
  readonly axles: readonly Axle[];
  readonly bare?: RecordOf<typeof bare>;
};
