import type { Vec3 } from '../../geometry/vector.js';
import type { Medium } from '../../records/index.js';

/** Voltage drop at one load of a circuit. */
export interface LoadFigure {
  readonly node: string;
  readonly currentA: number;
  readonly dropV: number;
  /** Fraction of the circuit's voltage; absent where none was recorded. */
  readonly drop?: number;
  /** Runs on the way from the root to the load, in order. */
  readonly runs: readonly string[];
}

/** Electrical figures of one circuit. Absent where a value it needs was not recorded. */
export interface CircuitFigure {
  readonly id: string;
  /** Sum of its runs' lengths (installed where given), mm; absent where one of them has neither a length nor a way. */
  readonly lengthMm?: number;
  readonly dropV?: number;
  /** Fraction of the circuit's voltage. */
  readonly drop?: number;
  /** Of its smallest conductor, corrected for ambient and bundling. */
  readonly ampacityA?: number;
  /** The same before the bundling adjustment, corrected for ambient. */
  readonly ampacityAloneA?: number;
  /** Largest fuse or breaker that the smallest conductor may have (small-conductor limit or ampacity alone). */
  readonly protectionLimitA?: number;
  readonly protectionA?: number;
  /** Node with the largest drop. */
  readonly worstLoad?: string;
  readonly runs: readonly string[];
  /** Where the current comes in: the node of its protection, else its panel or source. */
  readonly root?: string;
  /** All loads together, A. */
  readonly loadA?: number;
  readonly loads: readonly LoadFigure[];
  /** The wires between a source and its root, and what is lost in them; counted in the drops. */
  readonly feeder?: {
    readonly source: string;
    readonly runs: readonly string[];
    readonly dropV: number;
    /** Runs of it whose conductor or length is not recorded: what is lost in them is not in the drop. */
    readonly notCounted: readonly string[];
  };
  /** Run with the smallest conductor. */
  readonly smallestRun?: string;
  /** As typed: `14 AWG`, `6 mm²`. */
  readonly smallestConductor?: string;
  /** Current-carrying conductors that lie together with the smallest one for more than 24 in, its own included. */
  readonly bundledConductors?: number;
  /** Resistance from the root to the worst load, there and back, ohm. */
  readonly resistanceOhm?: number;
  readonly assumptions: readonly string[];
}

/** How full a cavity is at its fullest place, and which runs lie side by side there. */
export interface ZoneFill {
  readonly id: string;
  readonly clearMm2: number;
  readonly filledMm2: number;
  /** Fraction of the clear area. */
  readonly fill: number;
  readonly runs: readonly string[];
  /** Of a conduit: the most that so many wires may fill. Other cavities go by the shop's limit. */
  readonly limit?: number;
  /** Runs whose outside diameter is not known: not counted. */
  readonly unknown: readonly string[];
}

/** Two runs nearer to each other than their media may be, at the worst place. */
export interface TooClose {
  readonly runs: readonly [string, string];
  readonly media: readonly [Medium, Medium];
  /** Between the outsides, less the recorded tolerances of both places, mm; 0 where they may touch. */
  readonly distanceMm: number;
  /** Between the outsides as recorded, mm. */
  readonly recordedMm: number;
  readonly limitMm: number;
  readonly at: Vec3;
}

export interface SharedZone {
  readonly zone: string;
  readonly media: readonly [Medium, Medium];
  /** Runs of the first medium, then of the second. */
  readonly runs: readonly [readonly string[], readonly string[]];
}

/** A low place that keeps its water after the drains and taps are opened. */
export interface TrappedWater {
  readonly runs: readonly string[];
  /** The lowest place. */
  readonly at: Vec3;
  readonly levelLitres: number;
  /** The most with the coach nose up or nose down by 3 %. */
  readonly slopeLitres: number;
  /** True when the line has no drain, tap or tank at all. */
  readonly noOutlet: boolean;
}

/** A run that goes through the metal of a member or panel. */
export interface Crossing {
  readonly run: string;
  readonly through: string;
  readonly kind: 'member' | 'panel';
  readonly at: Vec3;
  /** A grommet is recorded for it. */
  readonly grommet: boolean;
  /** Of a panel with weather on one side: whether its sealing is recorded. */
  readonly sealed?: boolean;
}

export interface ServicesFigures {
  readonly circuits: readonly CircuitFigure[];
  readonly zones: readonly ZoneFill[];
  readonly tooClose: readonly TooClose[];
  readonly sharedZones: readonly SharedZone[];
  readonly trapped: readonly TrappedWater[];
  /** Litres that run out of each drain when all are opened. */
  readonly drained: readonly { readonly node: string; readonly litres: number }[];
  readonly crossings: readonly Crossing[];
  readonly assumptions: readonly string[];
}
