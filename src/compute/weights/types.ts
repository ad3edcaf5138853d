import type { Vec3 } from '../../geometry/vector.js';

export type Verdict = 'within' | 'within uncertainty' | 'over' | 'not verified';

export interface AxleRating {
  readonly axle: string;
  readonly gawrKg?: number;
  /** All tyres of the axle together. */
  readonly tyresKg?: number;
  /** All wheels of the axle together. */
  readonly wheelsKg?: number;
  /** How many of them, where each is rated by itself. */
  readonly wheelCount?: number;
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
  /** Of each end, expanded, k = 2. */
  readonly leftUncertaintyKg?: number;
  readonly rightUncertaintyKg?: number;
  readonly lifted: boolean;
}

/**
 * standard: one of the named conditions with every axle down; own: stated by the shop; lifted: a standard one with a liftable
 * axle up; worst: found by search; weighed: as the ticket that the conditions start from.
 */
export type ConditionKind = 'weighed' | 'standard' | 'own' | 'lifted' | 'worst';

export interface ConditionFigure {
  readonly name: string;
  readonly kind: ConditionKind;
  /** True for the conditions that the vehicle must carry as certified: the standard ones and the shop's own. */
  readonly certified: boolean;
  /** What is in and on it, in words. */
  readonly holds: string;
  /** The axle that a `worst` condition was sought for, and the end of it where it was sought for one. */
  readonly worstFor?: string;
  readonly worstEnd?: 'left' | 'right';
  readonly totalKg: number;
  readonly centroid: Vec3;
  /** Expanded uncertainty of its station, k = 2. */
  readonly centroidUncertaintyMm?: number;
  readonly gvwrMarginKg?: number;
  /** Expanded uncertainty of the total, k = 2. */
  readonly uncertaintyKg: number;
  /** Of the total against the GVWR. */
  readonly verdict: Verdict;
  /** Empty where the axle layout is not determined. */
  readonly axles: readonly AxleLoad[];
  /** Share of the total on the steered axles. */
  readonly steerShare?: number;
  /** What makes the uncertainty, largest first: name and expanded kg on the axle with the least margin. */
  readonly contributions: readonly { readonly name: string; readonly kg: number }[];
  /** The same on the wheel end with the least margin; absent where no end is known. */
  readonly endContributions?: EndContributions;
}

export interface EndContributions {
  readonly axle: string;
  readonly end: 'left' | 'right';
  readonly contributions: readonly { readonly name: string; readonly kg: number }[];
}

/** One reading of a weighing beside what all of them together say it was. */
export interface ReconciledReading {
  readonly name: string;
  readonly readKg: number;
  readonly adjustedKg: number;
  /** (read − adjusted) ÷ its standard deviation; absent where nothing else checks this reading. */
  readonly normalisedResidual?: number;
}

export interface Reconciled {
  readonly readings: readonly ReconciledReading[];
  /** Readings beyond what is needed. 0: nothing to compare. */
  readonly redundancy: number;
  readonly chiSquare: number;
  /** True where the readings agree within what the scale can do. */
  readonly agree: boolean;
  /** Readings that fit equally badly; empty where all agree. */
  readonly suspects: readonly string[];
  /** The reading that does not fit; absent where all agree or where several fit it equally badly. */
  readonly outlier?: string;
}

export interface TicketFigure {
  readonly id: string;
  readonly date: string;
  readonly stage?: string;
  readonly verified: boolean;
  /** Why it is not verified, where it is not. */
  readonly reason?: string;
  /** What is wrong with the scale's calibration on that day. */
  readonly calibrationLapse?: string;
  readonly asWeighed: Readonly<Record<string, number>>;
  /** Brought to the unladen condition by moving what was aboard by its own position. */
  readonly normalised: Readonly<Record<string, number>>;
  readonly predicted: Readonly<Record<string, number>>;
  readonly residual: Readonly<Record<string, number>>;
  /** As weighed. */
  readonly totalKg: number;
  /** Sum of the normalised axle loads. */
  readonly normalisedKg?: number;
  /** Normalised less predicted; 0 where there is no prediction to compare with. */
  readonly residualKg: number;
  /** Where the unexplained mass is centred, mm rearward of the datum; absent where it is too small to place. */
  readonly residualXMm?: number;
  /** Expanded uncertainty of the normalised total, k = 2. */
  readonly uncertaintyKg: number;
  /** Expanded uncertainty of the residual: weighing and prediction together. */
  readonly residualUncertaintyKg?: number;
  /** Mass that the records put on or date after this ticket. */
  readonly addedSinceKg: number;
  readonly reconciled?: Reconciled;
}

export interface BayAllowance {
  readonly id: string;
  readonly statedKg?: number;
  /** The most it may take with the others empty. */
  readonly allowanceKg: number;
  readonly limitedBy: string;
  /** With all bays loaded together for the greatest total, each to this figure or less: any of them may be empty. */
  readonly togetherKg: number;
}

/** The figures of the occupant and cargo label, whole kilograms and pounds, rounded so that the GVWR is never exceeded. */
export interface CargoLabel {
  /** Unloaded vehicle weight. */
  readonly uvwKg: number;
  readonly uvwLb: number;
  /** Occupants and cargo together. */
  readonly occcKg: number;
  readonly occcLb: number;
  readonly seats: number;
  readonly seatsKg: number;
  readonly seatsLb: number;
  readonly waterKg: number;
  readonly waterLb: number;
  /** Cargo with every belted seat taken and fresh water full. */
  readonly cccKg: number;
  readonly cccLb: number;
}

export interface Forecast {
  /** Allowance for what has not been weighed, by the basis of each figure. */
  readonly allowanceKg: number;
  readonly totalKg: number;
  readonly lowKg: number;
  readonly highKg: number;
  readonly axles: readonly { readonly axle: string; readonly loadKg: number; readonly lowKg: number; readonly highKg: number }[];
}

/** A road limit, as information only. */
export interface RoadLimit {
  readonly kind: 'single' | 'tandem' | 'bridge' | 'gross';
  readonly axles: readonly string[];
  /** Between the outer axles. */
  readonly spreadMm: number;
  readonly loadKg: number;
  readonly limitKg: number;
  readonly marginKg: number;
}

/** What a declared point, mounting, floor or roof is asked to carry. */
export interface PointLoad {
  readonly id: string;
  readonly kind: string;
  /** The whole mass that it has a share of. */
  readonly ofKg: number;
  /** As the mass that weighs so much. */
  readonly loadKg: number;
  readonly ratingKg?: number;
  readonly lifts: 'whole vehicle' | 'shell' | 'not recorded';
  readonly unboltFirst: readonly string[];
}

/** An axle or an end of it, as a straight line in what is put on; one for each way that the vehicle may stand. */
export interface LoadLine {
  readonly axle: string;
  readonly end?: 'left' | 'right';
  readonly name: string;
  /** `tag up`, `SO-1 out`; empty with all axles down and slide-outs in. */
  readonly standing: string;
  /** With all bays empty, every tank and seat at the level that loads it most. */
  readonly baseKg: number;
  /** Expanded, k = 2. */
  readonly uncertaintyKg: number;
  /** What one kilogram at (x, y) adds: perKg + perKgMmX · x + perKgMmY · y. */
  readonly perKg: number;
  readonly perKgMmX: number;
  readonly perKgMmY: number;
  readonly limitKg?: number;
  /** How many tyres stand under it, and what one of them carries. */
  readonly tyres?: number;
  readonly tyreKg?: number;
}

/** What the next trade may add, over one axle. */
export interface AxleBudget {
  readonly axle: string;
  /** The loading in which this axle has the least left, in words. */
  readonly condition: string;
  readonly reserveKg: number;
  /** Expanded, k = 2: taken off as well, so that what is left is there. */
  readonly uncertaintyKg: number;
  /** Left after the reserve and the uncertainty; negative where the reserve is already used. */
  readonly leftKg: number;
  readonly leftEndKg?: number;
  readonly rightEndKg?: number;
  /** Of each end in its own worst loading, expanded, k = 2; taken off its figure. */
  readonly leftEndUncertaintyKg?: number;
  readonly rightEndUncertaintyKg?: number;
}

export interface CgHeight {
  readonly ticket: string;
  readonly level: string;
  /** Above the ground. */
  readonly heightMm?: number;
  readonly uncertaintyMm?: number;
  /** Why no height is given. */
  readonly refused?: string;
}

export interface Weights {
  readonly ratings: readonly AxleRating[];
  readonly conditions: readonly ConditionFigure[];
  readonly tickets: readonly TicketFigure[];
  readonly uvwKg?: number;
  readonly occcKg?: number;
  readonly cccKg?: number;
  readonly fullWaterKg: number;
  /** GCWR less the heaviest standard condition: the most a trailer may weigh by that rating alone. Absent without a GCWR or a basis. */
  readonly trailerKg?: number;
  /** Absent where the unladen mass or the GVWR is not known, or where the first is above the second. */
  readonly label?: CargoLabel;
  readonly bays: readonly BayAllowance[];
  /** Mass by stage, cumulated in build order, with the ticket of that stage where there is one. */
  readonly growth: readonly {
    readonly stage: string;
    readonly predictedKg: number;
    readonly measuredKg?: number;
    readonly uncertaintyKg?: number;
  }[];
  /** The finished vehicle, unladen, with what is planned. */
  readonly forecast?: Forecast;
  /** Mass of what is recorded as planned: in the forecast, in nothing else. */
  readonly plannedKg: number;
  /** What 100 kg at each station adds to each axle. */
  readonly influence: readonly { readonly xMm: number; readonly addsKg: Readonly<Record<string, number>> }[];
  /** Road limits in the heaviest standard condition; information only. */
  readonly roadLimits: readonly RoadLimit[];
  readonly roadLimitsCondition?: string;
  readonly budget: readonly AxleBudget[];
  /** The same with an axle up, where that is a way to drive; `perKg + perKgMm · x` of a kilogram at station x on the centre line. */
  readonly liftedMargins: readonly {
    readonly name: string;
    readonly leftKg: number;
    readonly perKg: number;
    readonly perKgMm: number;
  }[];
  /** Ways of standing that no search looks at, since an axle is over in them before a bay is loaded: `tag up`. */
  readonly notLoadedWith: readonly string[];
  /** Mass with every tank full, every belted seat taken and every bay at its stated limit. */
  readonly fullKg?: number;
  /** The same with every bay empty. */
  readonly fullWithoutBaysKg?: number;
  readonly loadLines: readonly LoadLine[];
  readonly pointLoads: readonly PointLoad[];
  /** The least that each axle may come to carry, by axle. */
  readonly leastKg: Readonly<Record<string, number>>;
  /** Fraction of each axle's limit that is kept in reserve for the budget. */
  readonly reserve: number;
  readonly cgHeight: readonly CgHeight[];
  /** True when the figures stand on a verified ticket; false: on prediction alone. */
  readonly basis: 'ticket' | 'prediction' | 'none';
  /** The newest ticket that the conditions start from. */
  readonly basisTicket?: string;
  /** All tickets whose axle loads are reconciled for it, and all whose wheel ends are kept, oldest first. */
  readonly basisTickets: readonly string[];
  readonly endTickets: readonly string[];
  readonly assumptions: readonly string[];
  /** What could not be computed and why (an axle without rating, a singular layout). Sentences. */
  readonly problems: readonly string[];
}
