import type { SectionShape } from '../records/index.js';
import { ANGLE } from './angle.js';
import { CHANNEL } from './channel.js';
import { CORNER_RADIUS } from './corner-radius.js';
import { CUSTOM } from './custom.js';
import { DOUBLE_HOLLOW } from './double-hollow.js';
import { FLAT_BAR } from './flat-bar.js';
import { I_BEAM } from './i-beam.js';
import { RECTANGULAR_TUBE } from './rectangular-tube.js';
import { ROUND_BAR } from './round-bar.js';
import { ROUND_TUBE } from './round-tube.js';
import type { Ring, SectionKind, SectionWall, ShapeProperties, SizeFit } from './shape.js';
import { TEE } from './tee.js';

export type { Ring, SectionWall, ShapeProperties, SizeFit } from './shape.js';

type Name = SectionShape['shape'];

/** Every shape, a file each. A new one is asked for here by its name in the records. */
const KINDS: { readonly [N in Name]: SectionKind<N> } = {
  'rectangular tube': RECTANGULAR_TUBE,
  'double hollow': DOUBLE_HOLLOW,
  'I-beam': I_BEAM,
  channel: CHANNEL,
  angle: ANGLE,
  tee: TEE,
  'flat bar': FLAT_BAR,
  'round bar': ROUND_BAR,
  'round tube': ROUND_TUBE,
  'corner radius': CORNER_RADIUS,
  custom: CUSTOM,
};

const kindOf = (shape: SectionShape): SectionKind<Name> => KINDS[shape.shape] as SectionKind<Name>;

/**
 * Area (mm²), centroid (mm from the middle of the bounding rectangle, towards +depth and +width), second moments about it and
 * torsion constant (mm⁴) of a section, from its dimensions.
 *
 * How the unsymmetrical ones lie: a channel's back is on the −width side, an angle's heel at (−depth, −width), a tee's flange
 * on the +depth side, a corner radius has its centre at (−depth, −width).
 */
export const shapeProperties = (shape: SectionShape): ShapeProperties => kindOf(shape).properties(shape);

/** Outside depth and width of a section, mm. */
export const sectionEnvelope = (shape: SectionShape): readonly [depthMm: number, widthMm: number] =>
  kindOf(shape).envelope(shape);

/** Outline and holes of a cross-section, mm: width to the right, depth up, about the middle of its bounding rectangle. */
export const sectionRings = (shape: SectionShape): readonly Ring[] => kindOf(shape).rings(shape);

/** A section as rectangles of metal, mm. */
export const sectionWalls = (shape: SectionShape): readonly SectionWall[] => kindOf(shape).walls(shape);

/** The thinnest wall of a section, mm: where a weld may burn through. Undefined for one whose form is not known. */
export const thinnestWallMm = (shape: SectionShape): number | undefined => kindOf(shape).thinnestMm(shape);

/** Name and size of each wall thickness and radius. */
export const wallsOf = (shape: SectionShape): readonly (readonly [name: string, mm: number])[] => kindOf(shape).dimensions(shape);

/** Dimensions of a section that must fit into others of it. */
export const sectionFits = (shape: SectionShape): readonly SizeFit[] => kindOf(shape).fits(shape);
