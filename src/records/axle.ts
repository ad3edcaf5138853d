import { block, count, either, id, level, list, oneOf, quantity, station, text, yesNo } from './fields.js';
import { kind, type RecordOf } from './kind.js';
import type { ModelOf } from './types.js';
import { tyreSize } from './tyre-size.js';

const tyres = {
  count: count('Tires on the axle').required(),
  /** Load index single; for duals [single, dual]. */
  load_index: either([count('Load index'), list(count('Load index'), '', [1, 2])], 'Load index; for duals [single, dual]')
    .model((typed): readonly number[] => (typeof typed === 'number' ? [typed] : typed))
    .required(),
  inflation: quantity('pressure', 'Cold inflation pressure', 'above zero'),
  inflation_for_index: quantity('pressure', 'Pressure at which the load index holds', 'above zero'),
  size: text('Size as on the side wall'),
  diameter: quantity('length', 'Outside diameter; where not typed, from a size as 295/75R22.5', 'above zero'),
  width: quantity('length', 'Width over the side walls; where not typed, from a size as 295/75R22.5', 'above zero'),
  spacing: quantity('length', 'Of duals: between the middles of the two', 'above zero'),
};
export type Tyres = ModelOf<typeof tyres>;

const travel = block(
  {
    bump: quantity('length', 'How far the wheels come up from where they stand unladen').required(),
    rebound: quantity('length', 'How far they drop from there').required(),
  },
  'Of the suspension: with tire size and track it gives the room that the tires need',
);

const share = block(
  {
    with: id('The axle that it forms a group with').required().names('axle'),
    fraction: level('Share of the group’s load that this axle takes').required(),
  },
  'Where it shares load with another axle',
);

/** One of shell.yaml’s `chassis: {axles: …}` */
export const axle = kind(
  'axle',
  { in: 'head', path: ['chassis', 'axles'] },
  {
    x: station('Rearward from the front axle’s center line').required(),
    gawr: quantity('mass', 'Gross axle weight rating', 'above zero').ofOne(),
    suspension: quantity('mass', 'Rating of the suspension', 'above zero').ofOne(),
    wheels: quantity('mass', 'Rating of the wheels, as `wheels_by` says', 'above zero').ofOne(),
    wheels_by: oneOf(
      ['wheel', 'axle'],
      'What `wheels` rates: one wheel, or all of the axle together; one wheel where not typed',
    ).ofOne(),
    track: quantity('length', 'Between the tires’ center lines', 'above zero'),
    // Four tyres on an axle are two a side.
    dual: yesNo('Dual tires on each end').usual(
      ({ read }) => ((read.tyres as { readonly count: number } | undefined)?.count ?? 2) >= 4,
    ),
    lift: yesNo('Can be lifted').usual(false),
    steered: yesNo('Steers').usual(({ isFirst }) => isFirst === true),
    steer_angle: quantity('angle', 'Most that a wheel turns to either side', 'above zero').as('steerDeg'),
    travel,
    share,
    spring_rate: quantity('stiffness', 'At the axle, both ends together', 'above zero'),
    /** What a lifted axle still carries to the chassis. */
    mass: quantity('mass', 'The axle itself, wheels included', 'above zero').as('ownMassKg'),
    tyres: block(tyres, 'The tires of the axle').ofOne(),
  },
  {
    finish({ tyres: typed, ...rest }) {
      const sized = tyreSize(typed?.size);
      const made: Tyres | undefined = typed && {
        ...typed,
        diameterMm: typed.diameterMm ?? sized?.diameterMm,
        widthMm: typed.widthMm ?? sized?.widthMm,
      };
      return { ...rest, ...(made ? { tyres: made } : {}) } as typeof rest & { readonly tyres?: Tyres };
    },
    structure: true,
    asked: [
      ...(['id', 'x', 'gawr', 'suspension', 'track', 'lift', 'share.with', 'share.fraction'] as const),
      ...(['tyres.count', 'tyres.load_index', 'tyres.inflation', 'tyres.inflation_for_index', 'tyres.size'] as const),
    ],
  },
);

export type Axle = RecordOf<typeof axle>;
