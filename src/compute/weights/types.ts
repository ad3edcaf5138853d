import type { Vec3 } from '../../geometry/vector.js';

export type Verdict = 'within' | 'within uncertainty' | 'over' | 'not verified';

export interface AxleRating {
  readonly axle: string;
  readonly gawrKg?: number;
  readonly tyresKg?: number;
  readonly wheelsKg?: number;
  readonly suspensionKg?: number;
  /** The least of those known; absent where none is. */
  readonly limitKg?: number;
  readonly limitedBy?: 'gawr' | 'tyres' | 'wheels' | 'suspension';
}

export interface AxleLoad {
  readonly axle: string;
  readonly loadKg: number;
  readonly limitKg?: number;
  readonly marginKg?: number;
  /** Expanded, k = 2. */
  readonly uncertaintyKg: number;
  readonly verdict: Verdict;
  readonly leftKg?: number;
  readonly rightKg?: number;
  readonly lifted: boolean;
}

export interface ConditionFigure {
  readonly name: string;
  readonly totalKg: number;
  readonly centroid: Vec3;
  readonly gvwrMarginKg?: number;
  /** Expanded uncertainty of the total, k = 2. */
  readonly uncertaintyKg: number;
  readonly verdict: Verdict;
  readonly axles: readonly AxleLoad[];
  /** Share of the total on the steered axles. */
  readonly steerShare?: number;
  /** What makes the uncertainty, largest first: name and expanded kg on the axle with the least margin. */
  readonly contributions: readonly { readonly name: string; readonly kg: number }[];
}

export interface TicketFigure {
  readonly id: string;
  readonly date: string;
  readonly stage?: string;
  readonly verified: boolean;
  /** Why it is not verified, where it is not. */
  readonly reason?: string;
  readonly asWeighed: Readonly<Record<string, number>>;
  /** Brought to the unladen condition by moving what was aboard by its own position. */
  readonly normalised: Readonly<Record<string, number>>;
  readonly predicted: Readonly<Record<string, number>>;
  readonly residual: Readonly<Record<string, number>>;
  readonly totalKg: number;
  readonly residualKg: number;
  /** Where the unexplained mass is centred, mm rearward of the datum; absent where it is too small to place. */
  readonly residualXMm?: number;
  readonly uncertaintyKg: number;
}

export interface BayAllowance {
  readonly id: string;
  readonly statedKg?: number;
  /** The most it may take with the others empty. */
  readonly allowanceKg: number;
  readonly limitedBy: string;
  /** With all bays loaded together for the greatest total. */
  readonly togetherKg: number;
}

export interface Weights {
  readonly ratings: readonly AxleRating[];
  readonly conditions: readonly ConditionFigure[];
  readonly tickets: readonly TicketFigure[];
  readonly uvwKg?: number;
  readonly occcKg?: number;
  readonly cccKg?: number;
  readonly fullWaterKg: number;
  readonly bays: readonly BayAllowance[];
  /** Mass by stage, cumulated in build order, with the ticket of that stage where there is one. */
  readonly growth: readonly {
    readonly stage: string;
    readonly predictedKg: number;
    readonly measuredKg?: number;
    readonly uncertaintyKg?: number;
  }[];
  /** What 100 kg at each station adds to each axle. */
  readonly influence: readonly { readonly xMm: number; readonly addsKg: Readonly<Record<string, number>> }[];
  /** True when the figures stand on a verified ticket; false: on prediction alone. */
  readonly basis: 'ticket' | 'prediction' | 'none';
  /** The ticket that the conditions start from. */
  readonly basisTicket?: string;
  readonly assumptions: readonly string[];
  /** What could not be computed and why (an axle without rating, a singular layout). Sentences. */
  readonly problems: readonly string[];
}
