import type { Vec3 } from '../../geometry/vector.js';

export interface OpeningFigure {
  readonly id: string;
  readonly rackingDeg?: number;
  readonly diagonalDifferenceMm?: number;
  readonly sagMm?: number;
  readonly gussets: readonly string[];
}

export interface Joint {
  readonly members: readonly [string, string];
  /** Middle of the contact. */
  readonly at: Vec3;
  readonly gapMm: number;
  readonly welds: readonly string[];
}

export interface JointFigures {
  readonly joints: readonly Joint[];
  readonly found: number;
  readonly recorded: number;
  readonly missing: readonly (readonly [string, string])[];
  readonly withoutJoint: readonly string[];
}

export interface WeldTotals {
  readonly count: number;
  readonly jointsCount: number;
  readonly lengthMm: number;
  readonly depositedKg: number;
  readonly byProcess: Readonly<
    Record<string, { readonly count: number; readonly lengthMm: number; readonly rejects: number; readonly repairs: number }>
  >;
}
