import type { Point } from '../geometry/planar.js';
import type { SectionShape } from '../records/index.js';
import type { SectionPart } from './parts.js';

export type SizesOf<Name extends SectionShape['shape']> = Extract<SectionShape, { readonly shape: Name }>;

/** Area, centroid and second moments of a whole section, and its torsion constant. */
export interface ShapeProperties extends SectionPart {
  readonly jMm4: number;
}

/** A ring of a cross-section in mm, width to the right and depth up, about the middle of its bounding rectangle. */
export type Ring = readonly Point[];

/** One rectangle of metal in a section: middle and half sizes in depth and width, mm; turned about the line by `turn` radians. */
export interface SectionWall {
  readonly depth: number;
  readonly width: number;
  readonly halfDepth: number;
  readonly halfWidth: number;
  readonly turn?: number;
}

/** One dimension that must fit into another of the same section. */
export interface SizeFit {
  readonly key: string;
  readonly mm: number;
  readonly mostMm: number;
  /** What the most comes from: `half its width`. */
  readonly of: string;
}

/** All that is known of one shape of section, from its dimensions alone. */
export interface SectionKind<Name extends SectionShape['shape']> {
  properties(sizes: SizesOf<Name>): ShapeProperties;
  /** Outside depth and width, mm. */
  envelope(sizes: SizesOf<Name>): readonly [depthMm: number, widthMm: number];
  /** The outline and its holes. */
  rings(sizes: SizesOf<Name>): readonly Ring[];
  /** Its metal as rectangles, so that a hand or a wire may pass through its hollows. Rounded corners are left square. */
  walls(sizes: SizesOf<Name>): readonly SectionWall[];
  /** Where a weld may burn through first, mm; undefined where nobody knows. */
  thinnestMm(sizes: SizesOf<Name>): number | undefined;
  /** Name and size of each wall thickness and radius, for a drawing's note. */
  dimensions(sizes: SizesOf<Name>): readonly (readonly [name: string, mm: number])[];
  /** Dimensions that must fit into its outside. */
  fits(sizes: SizesOf<Name>): readonly SizeFit[];
}

export const fitWithin = (key: string, mm: number, mostMm: number, of: string): SizeFit => ({ key, mm, mostMm, of });
export const filletFit = (mm: number, mostMm: number): SizeFit => fitWithin('fillet', mm, mostMm, 'what the flange leaves free');

/** A radius of nothing is not named. */
export const radiusOf = (name: string, mm: number): readonly (readonly [string, number])[] => (mm > 0 ? [[name, mm]] : []);

/** A wall across the whole width at a place in the depth. */
export const across = (widthMm: number, at: number, thick: number): SectionWall => ({
  depth: at,
  width: 0,
  halfDepth: thick / 2,
  halfWidth: widthMm / 2,
});
/** A wall along the whole depth at a place in the width. */
export const upright = (depthMm: number, at: number, thick: number): SectionWall => ({
  depth: 0,
  width: at,
  halfDepth: depthMm / 2,
  halfWidth: thick / 2,
});

/** Two flanges across the width, at the ends of the depth. */
export const flangeWalls = (depthMm: number, widthMm: number, flangeMm: number): readonly SectionWall[] => [
  across(widthMm, (depthMm - flangeMm) / 2, flangeMm),
  across(widthMm, (flangeMm - depthMm) / 2, flangeMm),
];

/** Flat walls of at most 15° each along an arc about a place; the angle counts from +depth towards +width. */
export function arcWalls(
  radius: number,
  wall: number,
  [depth, width]: readonly [number, number],
  start: number,
  sweep: number,
): readonly SectionWall[] {
  const count = Math.max(1, Math.ceil(sweep / (Math.PI / 12)));
  const step = sweep / count;
  const middle = radius - wall / 2;
  return Array.from({ length: count }, (_, i) => {
    const angle = start + (i + 0.5) * step;
    return {
      depth: depth + middle * Math.cos(angle),
      width: width + middle * Math.sin(angle),
      halfDepth: wall / 2,
      // As long as its outer side, so that neighbours meet without a gap.
      halfWidth: radius * Math.tan(step / 2),
      turn: angle,
    };
  });
}

interface Flanged {
  readonly depthMm: number;
  readonly widthMm: number;
  readonly webMm: number;
  readonly flangeMm: number;
  readonly filletMm: number;
}
export const flangedDimensions = ({ webMm, flangeMm, filletMm }: Flanged): readonly (readonly [string, number])[] => [
  ['web', webMm],
  ['flange', flangeMm],
  ...radiusOf('fillet', filletMm),
];
/** Of a shape with two flanges. */
export const flangedFits = ({ depthMm, widthMm, webMm, flangeMm, filletMm }: Flanged): readonly SizeFit[] => [
  fitWithin('flange', flangeMm, depthMm / 2, 'half its depth'),
  fitWithin('web', webMm, widthMm, 'its width'),
  filletFit(filletMm, depthMm / 2 - flangeMm),
];
