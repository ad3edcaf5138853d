import type { Vec3 } from '../geometry/vector.js';
import type { Source } from './source.js';

export interface Tyres {
  readonly count: number;
  /** Load index single; for duals [single, dual]. */
  readonly loadIndex: readonly number[];
  readonly inflationPa?: number;
  /** Pressure at which the load index holds. */
  readonly inflationForIndexPa?: number;
  readonly size?: string;
  /** Outside diameter and width over the side walls, mm: as typed, else from the size. */
  readonly diameterMm?: number;
  readonly widthMm?: number;
  /** Of duals: between the middles of the two, mm. */
  readonly spacingMm?: number;
}

export interface Axle {
  readonly id: string;
  /** Where it was typed, where it was read from a file. */
  readonly source?: Source;
  /** Rearward of the datum, mm. */
  readonly xMm: number;
  readonly gawrKg?: number;
  readonly suspensionKg?: number;
  readonly wheelsKg?: number;
  readonly trackMm?: number;
  readonly dual: boolean;
  readonly lift: boolean;
  readonly steered: boolean;
  /** Most that a wheel turns to either side. */
  readonly steerDeg?: number;
  /** Of the wheels, up and down from where they stand unladen, mm. */
  readonly travel?: { readonly bumpMm: number; readonly reboundMm: number };
  /** This axle takes `fraction` of the load of the group that it forms with `with`. */
  readonly share?: { readonly with: string; readonly fraction: number };
  /** N/m at the axle, both ends together. */
  readonly springRateNM?: number;
  readonly tyres?: Tyres;
  /** Mass of the axle itself, wheels included: what a lifted axle still carries to the chassis. */
  readonly ownMassKg?: number;
}

/** A scale's answer for one axle: the whole, or both ends. */
export interface AxleReading {
  readonly totalKg: number;
  readonly leftKg?: number;
  readonly rightKg?: number;
}

export interface Occupant {
  readonly seat: string;
  readonly massKg: number;
}

/** What was in and on the vehicle. A tank not named is empty; fuel not named is unknown. */
export interface Condition {
  /** Tank id → level 0–1; words for contents (fuel, fresh, grey …) are resolved when the condition is read. */
  readonly levels: Readonly<Record<string, number>>;
  readonly occupants: readonly Occupant[];
  readonly aboard: readonly { readonly name: string; readonly massKg: number; readonly at: Vec3 }[];
  readonly missing: readonly string[];
  /** Liftable axle id → up or down. */
  readonly lifted: Readonly<Record<string, 'up' | 'down'>>;
  /** Bay id → load, kg. */
  readonly bays: Readonly<Record<string, number>>;
  /** True when the condition says anything about fuel. */
  readonly fuelKnown: boolean;
}

export interface ChassisFrame {
  readonly railTopAboveGroundMm?: number;
  /** Outside to outside of the rails. */
  readonly railSpacingMm?: number;
  readonly railDepthMm?: number;
  readonly railWidthMm?: number;
  readonly lengthMm?: number;
}

export interface Chassis {
  readonly description?: string;
  readonly document?: string;
  readonly gvwrKg?: number;
  readonly gcwrKg?: number;
  readonly frame: ChassisFrame;
  /** Front to rear. */
  readonly axles: readonly Axle[];
  readonly bare?: { readonly condition: Condition; readonly readings: Readonly<Record<string, AxleReading>> };
}

export interface Tank {
  readonly id: string;
  /** Where it was typed, where it was read from a file. */
  readonly source?: Source;
  readonly contents: string;
  readonly capacityM3: number;
  readonly at: Vec3;
  readonly densityKgM3: number;
  readonly use?: TankUse;
  /** The component whose solid is this tank's. */
  readonly of?: string;
  readonly place?: string;
  readonly body?: Body;
}

export const TANK_USES = ['fresh', 'waste', 'fuel', 'gas', 'fluid'] as const;
export type TankUse = (typeof TANK_USES)[number];

/** The box that something fills. */
export interface Body {
  /** Length, width, height: along x, y, z, mm. */
  readonly sizeMm?: Vec3;
  /** Its middle; where not typed, the record's place. */
  readonly middle?: Vec3;
  /** It hangs in the open. */
  readonly outside?: boolean;
  /** The slide-out that it moves with. */
  readonly ridesOn?: string;
}

export interface Seat {
  readonly id: string;
  /** Where it was typed, where it was read from a file. */
  readonly source?: Source;
  readonly at: Vec3;
  readonly belted: boolean;
}
export interface Bay {
  readonly id: string;
  /** Where it was typed, where it was read from a file. */
  readonly source?: Source;
  readonly name?: string;
  readonly at: Vec3;
  readonly limitKg?: number;
  readonly place?: string;
  readonly body?: Body;
}
