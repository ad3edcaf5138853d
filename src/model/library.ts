import type { HoldPoint } from './hold-point.js';
import type { Medium } from './services.js';
import type { RecordBase } from './source.js';

/** shop.yaml: who the shop is, and the store's defaults. Every limit is filled in (default where not typed). */
export interface Shop extends RecordBase {
  readonly name: string;
  readonly place?: string;
  readonly contact?: string;
  readonly units: 'us' | 'metric' | 'both';
  readonly paper: 'letter' | 'a4';
  readonly weldSymbols: 'iso' | 'aws';
  readonly limits: Limits;
  readonly inspection: Inspections;
  readonly english?: 'us' | 'uk';
  readonly language?: 'en' | 'es';
  readonly labels?: Readonly<Record<string, string>>;
}

/** Class of joint → inspection method in capitals → least share of its joints, 0 to 1. */
export type Inspections = Readonly<Record<'primary' | 'secondary', Readonly<Record<string, number>>>>;

export interface KeepApart {
  readonly media: readonly [Medium, Medium];
  /** Least distance between the outsides of two runs, mm. */
  readonly distanceMm?: number;
  /** `false`: the two media may not share a cavity. */
  readonly shareZone?: boolean;
}

/** House limits. Ratings and laws are not among them: they cannot be loosened here. */
export interface Limits {
  /** Fraction of an axle's limit below which a margin is a warning. */
  readonly axleMargin: number;
  readonly diagonalDifferenceMm: number;
  readonly headerSagMm: number;
  readonly trussSpacingMm: number;
  /** Fraction of a cavity's clear area. */
  readonly cavityFill: number;
  readonly keepApart: readonly KeepApart[];
  /** Least between a moving tyre or slide and whatever stands still, mm; absent: 50. */
  readonly movingClearanceMm?: number;
  /** Least between a hot part and wires or pipes, mm; absent: 230 dry, 50 wet. */
  readonly hotClearanceMm?: { readonly dry: number; readonly wet: number };
  /** Fraction of the circuit's voltage. */
  readonly voltageDrop: number;
  /** Hottest air around wiring, °C, where a circuit does not say; absent: 30. */
  readonly ambientC?: number;
  /** A corner further than this out of a panel's plane is a finding, mm. */
  readonly flatnessMm: number;
  /** Days between an event and its entry beyond which the entry is told as late. */
  readonly lateEntryDays: number;
  /** Fraction of the total mass beyond which an unexplained residual is a finding. */
  readonly unexplainedMass: number;
  /** How well a tape tells a place, mm; absent: 3.175. */
  readonly tapeMm?: number;
  /** Worst error of a picture's points that is still of use, mm; absent: 20. */
  readonly overlayMm?: number;
}

export interface Material extends RecordBase {
  /** aluminium, steel, stainless, plywood, … */
  readonly materialKind: string;
  readonly densityKgM3: number;
  readonly modulusPa?: number;
  readonly yieldPa?: number;
  readonly tensilePa?: number;
  /** Weldability group, ISO/TR 15608 (21, 22, 23 …). */
  readonly group?: string;
}

/** What a mill or dealer says of some heats, EN 10204: 2.1 and 2.2 speak of the order, 3.1 and 3.2 of the heat itself. */
export interface Certificate extends RecordBase {
  readonly heats: readonly string[];
  /** Id in the materials. */
  readonly alloy: string;
  readonly type: '2.1' | '2.2' | '3.1' | '3.2';
  readonly document?: string;
}

/** The dimensions of a section, mm. Area, inertia and mass are computed, never typed (but for `custom`). */
export type SectionShape =
  | {
      readonly shape: 'rectangular tube';
      readonly depthMm: number;
      readonly widthMm: number;
      readonly wallMm: number;
      readonly cornerRadiusMm: number;
    }
  | {
      readonly shape: 'double hollow';
      readonly depthMm: number;
      readonly widthMm: number;
      readonly wallMm: number;
      readonly webMm: number;
      readonly cornerRadiusMm: number;
    }
  | {
      readonly shape: 'I-beam';
      readonly depthMm: number;
      readonly widthMm: number;
      readonly webMm: number;
      readonly flangeMm: number;
      readonly filletMm: number;
    }
  | {
      readonly shape: 'channel';
      readonly depthMm: number;
      readonly widthMm: number;
      readonly webMm: number;
      readonly flangeMm: number;
      readonly filletMm: number;
    }
  | {
      readonly shape: 'angle';
      readonly depthMm: number;
      readonly widthMm: number;
      readonly wallMm: number;
      readonly filletMm: number;
      readonly toeRadiusMm: number;
    }
  | {
      readonly shape: 'tee';
      readonly depthMm: number;
      readonly widthMm: number;
      readonly webMm: number;
      readonly flangeMm: number;
      readonly filletMm: number;
    }
  | { readonly shape: 'flat bar'; readonly depthMm: number; readonly widthMm: number }
  | { readonly shape: 'round bar'; readonly diameterMm: number }
  | { readonly shape: 'round tube'; readonly diameterMm: number; readonly wallMm: number }
  | { readonly shape: 'corner radius'; readonly outerRadiusMm: number; readonly wallMm: number; readonly sweepDeg: number }
  | {
      readonly shape: 'custom';
      readonly areaMm2: number;
      readonly ixMm4: number;
      readonly iyMm4: number;
      readonly jMm4?: number;
      readonly depthMm: number;
      readonly widthMm: number;
    };

export interface Section extends RecordBase {
  readonly dimensions: SectionShape;
}

/** A wire or pipe type beyond the built-in tables. */
export interface ConductorType extends RecordBase {
  readonly areaMm2?: number;
  readonly outsideDiameterMm?: number;
  readonly insideDiameterMm?: number;
  readonly massKgM?: number;
  readonly ampacityA?: number;
  readonly materialKind?: string;
}

export interface Procedure extends RecordBase {
  readonly process: string;
  readonly types: readonly string[];
  readonly base: readonly string[];
  readonly thicknessMm?: readonly [number, number];
  readonly filler: readonly string[];
  readonly positions: readonly string[];
  readonly edition?: string;
}

export interface Qualification {
  readonly process?: string;
  /** Inspection method, as VT. */
  readonly method?: string;
  readonly positions: readonly string[];
  readonly thicknessMm?: readonly [number, number];
  readonly groups: readonly string[];
  readonly from: string;
  readonly until?: string;
}

export interface Person extends RecordBase {
  readonly name: string;
  readonly role: string;
  readonly qualified: readonly Qualification[];
  /** Stages that they may sign off, and `close`. */
  readonly signs?: readonly string[];
  /** Addresses that they commit under. */
  readonly git?: readonly string[];
  /** Their public key. */
  readonly key?: string;
}

export interface Instrument extends RecordBase {
  readonly instrumentKind: string;
  readonly name?: string;
  /** Smallest step shown, in the SI unit of what it measures (kg for a scale, Pa for a gauge, …). */
  readonly resolution?: Quantity;
  /** Relative tolerance (fraction) or absolute in the unit of the resolution. */
  readonly tolerance?: Quantity;
  readonly calibrated?: string;
  readonly due?: string;
}

/** A quantity whose dimension depends on its record: value in SI (mm for lengths) with its dimension's name. */
export interface Quantity {
  readonly value: number;
  readonly dimension: string;
  /** As typed, for printing. */
  readonly text: string;
}

export interface Stage extends RecordBase {
  readonly name: string;
  readonly holdPoints: readonly HoldPoint[];
}

/** A rule whose figure differs by state, country or edition: kept as data with its citation. */
export interface PackedRule extends RecordBase {
  readonly rule: string;
  readonly limit?: string;
  readonly citation?: string;
  readonly edition?: string;
  readonly verified?: string;
  readonly pack: string;
}

export interface Library {
  readonly materials: ReadonlyMap<string, Material>;
  readonly certificates: ReadonlyMap<string, Certificate>;
  readonly sections: ReadonlyMap<string, Section>;
  readonly conductors: ReadonlyMap<string, ConductorType>;
  readonly procedures: ReadonlyMap<string, Procedure>;
  readonly people: ReadonlyMap<string, Person>;
  readonly instruments: ReadonlyMap<string, Instrument>;
  /** In build order. */
  readonly stages: readonly Stage[];
  readonly rules: readonly PackedRule[];
}
