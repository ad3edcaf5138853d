import type { Vec3 } from '../../geometry/vector.js';
import type { Medium } from '../../records/index.js';

/** What 100 kg at one station adds to each axle, and the most that may be added there. */
export interface Station {
  /** Rearward of the datum. */
  readonly xMm: number;
  readonly addsKg: Readonly<Record<string, number>>;
  /** Alone, with the reserve kept; absent where an axle or the whole has nothing to be judged by. */
  readonly mostKg?: number;
  /** Axle, `GVWR`, `steer share`, or the axle that `lifts`. */
  readonly limitedBy?: string;
}

/** A run close to a face. */
export interface FaceRun {
  readonly id: string;
  readonly medium: Medium;
  /** The panel that a drill would go through. */
  readonly panel: string;
  /** From the panel's sheet to the outside of the run, less the tolerance of its place; not below 0. */
  readonly depthMm: number;
  /** Where on the run that is. */
  readonly at: Vec3;
  /** Absent where not recorded: `ASSUMED_TOLERANCE_MM` is taken. */
  readonly toleranceMm?: number;
}

/** Panels that close one side of the shell, with what runs close to them, nearest first. */
export interface Face {
  readonly name: string;
  readonly panels: readonly string[];
  readonly runs: readonly FaceRun[];
}

/** Places that paint, primer and sealer must stay off, for one reason. */
export interface KeepClean {
  readonly what: string;
  readonly why: string;
  readonly items: readonly { readonly id: string; readonly name?: string; readonly at?: Vec3 }[];
}
