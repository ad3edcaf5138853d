import type { P } from '../inches.js';

export interface Line {
  readonly id: string;
  readonly part: string;
  readonly stage: string;
  /** Which members-*.yaml it is written to. */
  readonly file: string;
  readonly section: string;
  readonly alloy: string;
  readonly from: P;
  readonly to: P;
  readonly roll?: number;
  readonly note?: string;
}

export interface Plate {
  readonly id: string;
  readonly part: string;
  readonly stage: string;
  readonly file: string;
  readonly alloy: string;
  readonly thickness: number;
  readonly outline: readonly P[];
  readonly note?: string;
}

export type Part = Line | Plate;
export const isLine = (part: Part): part is Line => 'section' in part;

export type Side = 'left' | 'right';
export const signOf = (side: Side): -1 | 1 => (side === 'left' ? -1 : 1);
export const letterOf = (side: Side): 'L' | 'R' => (side === 'left' ? 'L' : 'R');

export interface Gap {
  readonly id: string;
  readonly side: Side;
  readonly from: number;
  readonly to: number;
  /** Bottom and top of the clear opening, in. A door’s bottom is the sill. */
  readonly bottom: number;
  readonly top: number;
}

/** What makes one coach another: the rest follows from the grid. */
export interface Plan {
  /** Front face of the front sill, in. */
  readonly x0: number;
  readonly bays: number;
  readonly pitch: number;
  /** Subframe rails begin here. */
  readonly railFront: number;
  readonly slide: Gap;
  readonly doors: readonly Gap[];
  readonly windows: readonly Gap[];
  /** A door of 28 in in the middle of the rear wall. */
  readonly rearDoor: boolean;
  /** Bays (from station k to k+1) with a low cross tube between the subframe rails. */
  readonly tubeBays: readonly number[];
  /** Stations with knee gussets. */
  readonly knees: readonly number[];
  /** Bays with floor stringers under heavy things, and their lines. */
  readonly stringerBays: readonly number[];
  readonly stringerLines: readonly number[];
  /** Bays with a belt rail. */
  readonly belts: Readonly<Record<Side, readonly number[]>>;
  /** Bays with trimmers for a roof unit. */
  readonly roofUnits: readonly number[];
  /** Trusses that are up; all where not given. */
  readonly trusses?: readonly number[];
}

/** Heights of the grid, in: from the top of the chassis frame rail. */
export const Z = {
  damper: 0.75,
  rail: 6.75,
  beam: 10.75,
  sill: 11.25,
  plate: 90.75,
  plateTop: 92.75,
  roof: 98.75,
} as const;

/** Half width over the posts, and their inner face. */
export const OUT = 50;
export const IN = 48;

export class Grid {
  constructor(readonly plan: Plan) {}
  /** Middle of post, beam or truss number i, in. */
  x(station: number): number {
    return this.plan.x0 + 1 + this.plan.pitch * station;
  }
  mid(bay: number): number {
    return (this.x(bay) + this.x(bay + 1)) / 2;
  }
  get rear(): number {
    return this.x(this.plan.bays) + 1;
  }
  /** The bay that a station along the coach lies in. */
  bayAt(x: number): number {
    return Math.floor((x - this.x(0)) / this.plan.pitch);
  }
}

export const two = (n: number): string => String(n).padStart(2, '0');
