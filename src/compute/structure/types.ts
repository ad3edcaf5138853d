import type { Bounds } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { MemberClass } from '../../records/index.js';

export interface OpeningFigure {
  readonly id: string;
  readonly rackingDeg?: number;
  readonly diagonalDifferenceMm?: number;
  readonly sagMm?: number;
  readonly gussets: readonly string[];
  /** Corners of a slide-out opening with no gusset plate near: `lower front`, `upper rear` … */
  readonly cornersWithoutGusset?: readonly string[];
  /** Sag of the header under its own mass between the sides of the opening, simply held. Information only. */
  readonly headerDeflectionMm?: number;
  /** Mass of the panels over the opening (skin, caps, lining), kg. */
  readonly headerPanelKg?: number;
  /** Sag of the header under its own mass and those panels, simply held, and with both ends built in: a welded one lies between. */
  readonly headerWithPanelMm?: number;
  readonly headerBuiltInMm?: number;
}

export interface Joint {
  readonly members: readonly [string, string];
  /** Middle of the contact. */
  readonly at: Vec3;
  readonly gapMm: number;
  readonly welds: readonly string[];
  /** Clamps that join the two. */
  readonly clamps?: readonly string[];
  /** Longest seam that fits around the place of contact, mm. */
  readonly seamMm?: number;
  /** About the place of contact. */
  readonly bounds?: Bounds;
}

export interface JointCoverage {
  readonly found: number;
  readonly recorded: number;
}

export interface OffJoint {
  readonly weld: string;
  /** The nearest of the pairs that it joins. */
  readonly members: readonly [string, string];
  /** From the recorded place to the farther of the two. */
  readonly distanceMm: number;
}

/** A pair that a weld record joins although the two do not meet. */
export interface ApartPair {
  readonly weld: string;
  readonly members: readonly [string, string];
  readonly gapMm: number;
}

export interface JointFigures {
  readonly joints: readonly Joint[];
  readonly found: number;
  readonly recorded: number;
  readonly missing: readonly (readonly [string, string])[];
  readonly withoutJoint: readonly string[];
  readonly apart?: readonly ApartPair[];
  /** Welds whose recorded place lies off every joint that they are of. */
  readonly offJoint?: readonly OffJoint[];
  /** Stage of the later of the two members → joints found and recorded; `""` where neither says one. */
  readonly byStage?: Readonly<Record<string, JointCoverage>>;
  /** Zone → joints in it; a joint in two zones counts in each, one in none under `""`. */
  readonly byZone?: Readonly<Record<string, JointCoverage>>;
  readonly assumptions?: readonly string[];
}

/** One weld record, with all its joints. */
export interface WeldFigure {
  readonly id: string;
  readonly jointClass: MemberClass;
  /** Absent for a weld whose size gives none: flare, plug, seam. */
  readonly throatMm?: number;
  /** Laid at all its joints, both sides. */
  readonly lengthMm: number;
  readonly depositedKg: number;
}

export interface WeldTotals {
  /** In the order of the records. */
  readonly welds?: readonly WeldFigure[];
  readonly count: number;
  readonly jointsCount: number;
  readonly lengthMm: number;
  readonly depositedKg: number;
  readonly byProcess: Readonly<
    Record<
      string,
      {
        readonly count: number;
        readonly lengthMm: number;
        readonly rejects: number;
        readonly repairs: number;
        /** Weld records that somebody looked at. */
        readonly inspected: number;
        /** Of those, how many were turned down at least once. */
        readonly rejected: number;
        /** Rejected over inspected; absent where nothing was inspected. */
        readonly repairRate?: number;
      }
    >
  >;
  readonly assumptions?: readonly string[];
}
