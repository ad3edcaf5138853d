import { type Bounds, boundsOf, boxBounds } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Axle } from '../../records/index.js';
import { plateFaces } from '../solids.js';
import { memberBounds } from '../structure/solids-of.js';
import { standing } from './standing.js';

/** Sizes of the vehicle as recorded, mm. */
export interface Overall {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Of the highest thing over the ground, on the tyres as the frame's height was recorded; undefined without that height. */
  readonly heightAboveGroundMm?: number;
  /** What stands furthest out: front and rear, left and right, on top; ids. */
  readonly setBy: {
    readonly length: readonly [string, string];
    readonly width: readonly [string, string];
    readonly height: string;
  };
  readonly bounds: Bounds;
  /** What the sizes leave out or had to take. Sentences. */
  readonly notes: readonly string[];
}

interface Piece {
  readonly id: string;
  readonly bounds: Bounds;
}

const NOTES = [
  'Overall sizes cover what is recorded: frame, skins, tanks, equipment with a size, roof units, awnings and tires. Cab, bumpers, mirrors and antennas count only where they are recorded: measure before you trust a low bridge.',
];

/** Length, width and height over everything on record; undefined where nothing with a size is. */
export function overall(model: Model): Overall | undefined {
  const pieces = piecesOf(model);
  if (pieces.length === 0) return undefined;
  const most = (axis: 0 | 1 | 2, end: 'min' | 'max'): Piece =>
    pieces.reduce((best, one) => {
      const further = end === 'max' ? one.bounds.max[axis] > best.bounds.max[axis] : one.bounds.min[axis] < best.bounds.min[axis];
      return further ? one : best;
    });
  const ends = ([0, 1, 2] as const).map((axis) => [most(axis, 'min'), most(axis, 'max')] as const);
  const [x, y, z] = ends as [Ends, Ends, Ends];
  const bounds = boundsOf(pieces.flatMap((one) => [one.bounds.min, one.bounds.max]));
  const { railTopAboveGroundMm } = model.shell.chassis.frame;
  return {
    lengthMm: bounds.max[0] - bounds.min[0],
    widthMm: bounds.max[1] - bounds.min[1],
    ...(railTopAboveGroundMm === undefined ? {} : { heightAboveGroundMm: bounds.max[2] + railTopAboveGroundMm }),
    setBy: { length: [x[0].id, x[1].id], width: [y[0].id, y[1].id], height: z[1].id },
    bounds,
    notes: [
      ...NOTES,
      ...(railTopAboveGroundMm === undefined
        ? ['The height above the ground is not known: `rail_top_above_ground` of `chassis: {frame: …}` is not recorded.']
        : []),
      ...standing(model).assumptions,
    ],
  };
}
type Ends = readonly [Piece, Piece];

function piecesOf(model: Model): readonly Piece[] {
  const { shell } = model;
  const at = (id: string, places: readonly Vec3[]): Piece => ({ id, bounds: boundsOf(places) });
  return [
    ...shell.members.flatMap((member) => {
      const bounds = memberBounds(member, model);
      return bounds ? [{ id: member.id, bounds }] : [];
    }),
    ...shell.panels.map(({ id, outline, thicknessMm = 0 }) => at(id, plateFaces(outline, thicknessMm).flat())),
    ...standing(model).solids.map(({ id, box }) => ({ id, bounds: boxBounds(box) })),
    // Without a size: the middle of it, at least.
    ...shell.components.filter(({ sizeMm }) => !sizeMm).map((one) => at(one.id, [one.middle ?? one.at])),
    ...shell.chassis.axles.flatMap((axle) => tyres(axle, shell.chassis.frame.railTopAboveGroundMm)),
  ];
}

/** Both sides of an axle, as wide as its tyres stand. */
function tyres({ id, xMm, trackMm, tyres: tyre }: Axle, railTopMm: number | undefined): readonly Piece[] {
  const { diameterMm, widthMm, spacingMm = 0 } = tyre ?? {};
  if (trackMm === undefined || diameterMm === undefined || widthMm === undefined || railTopMm === undefined) return [];
  const half = (trackMm + spacingMm + widthMm) / 2;
  const radius = diameterMm / 2;
  return [
    {
      id,
      bounds: { min: [xMm - radius, -half, -railTopMm], max: [xMm + radius, half, diameterMm - railTopMm] },
    },
  ];
}
