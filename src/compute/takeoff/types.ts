import type { Vec3 } from '../../geometry/vector.js';
import type { MassBasis } from '../../records/index.js';

/** Computed properties of a section about its own centroid. Axes: x across the depth (strong axis of an upright beam), y across the width. */
export interface SectionProperties {
  readonly id: string;
  readonly areaMm2: number;
  /** Second moment about the axis across the width (bending in the depth direction). */
  readonly ixMm4: number;
  readonly iyMm4: number;
  /** Product of inertia about the same two axes; 0 where one of them is an axis of symmetry. */
  readonly ixyMm4?: number;
  /** Torsion constant (St Venant), with the formula's own limits. */
  readonly jMm4: number;
  /** Centroid from the middle of the bounding rectangle, towards +depth and +width. */
  readonly centroidDepthMm: number;
  readonly centroidWidthMm: number;
  readonly depthMm: number;
  readonly widthMm: number;
  /** By the alloys that use it in this shell: kg/m at that density. Key: alloy id. */
  readonly kgPerM: Readonly<Record<string, number>>;
}

export interface MemberFigure {
  readonly id: string;
  readonly lengthMm: number;
  /** The line's own length, to compare with the cut length. */
  readonly lineLengthMm: number;
  readonly massKg: number;
  readonly centroid: Vec3;
  readonly alloy: string;
  readonly section?: string;
  readonly stage?: string;
}

export interface PanelFigure {
  readonly id: string;
  readonly areaMm2: number;
  readonly massKg: number;
  readonly centroid: Vec3;
  readonly outOfPlaneMm: number;
  readonly alloy?: string;
  readonly stage?: string;
}

export interface RunFigure {
  readonly id: string;
  /** As installed, else along its way; undefined where neither is recorded. */
  readonly lengthMm: number | undefined;
  /** Undefined where an end has no place. */
  readonly pathLengthMm: number | undefined;
  /** 0 where its length is not recorded. */
  readonly massKg: number;
  /** Undefined where an end has no place. */
  readonly centroid: Vec3 | undefined;
  readonly outsideDiameterMm: number;
  readonly stage?: string;
}

/** Anything that has mass, for statics: one flat list, first moments kept by whoever sums. */
export interface MassItem {
  readonly id: string;
  readonly kind: 'member' | 'panel' | 'run' | 'component';
  readonly massKg: number;
  readonly centroid: Vec3;
  readonly basis: MassBasis;
  readonly stage?: string;
  readonly alloy?: string;
  readonly section?: string;
  /** Standard uncertainty of the mass, kg, by its basis. */
  readonly uMassKg: number;
  /** Standard uncertainty of each coordinate, mm. */
  readonly uPositionMm: number;
}

export interface MassSum {
  readonly massKg: number;
  readonly centroid: Vec3;
  readonly count: number;
}

export interface TakeOff {
  readonly sections: readonly SectionProperties[];
  readonly members: readonly MemberFigure[];
  readonly panels: readonly PanelFigure[];
  readonly runs: readonly RunFigure[];
  readonly items: readonly MassItem[];
  readonly total: MassSum;
  readonly byStage: Readonly<Record<string, MassSum>>;
  readonly byAlloy: Readonly<Record<string, MassSum>>;
  readonly bySection: Readonly<Record<string, MassSum & { readonly lengthMm: number }>>;
  readonly bySide: Readonly<Record<'left' | 'right', MassSum>>;
  /** What was assumed, in sentences, for every place where a figure is shown. */
  readonly assumptions: readonly string[];
}
