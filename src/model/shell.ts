import type { Vec3 } from '../geometry/vector.js';
import type { Elsewhere } from './elsewhere.js';
import type { Library, Quantity, Shop } from './library.js';
import type { Circuit, Run, Service, ServiceNode, Zone } from './services.js';
import type { RecordBase, Statement } from './source.js';
import type { Clamp, Member, Opening, Panel, Weld } from './structure.js';
import type { AxleReading, Bay, Chassis, Condition, Seat, Tank } from './vehicle.js';

export type { Axle, AxleReading, Bay, Body, Chassis, Condition, Occupant, Seat, Tank, Tyres } from './vehicle.js';

export const MASS_BASES = ['weighed', 'catalogue', 'calculated', 'estimated'] as const;
export type MassBasis = (typeof MASS_BASES)[number];

export interface Component extends RecordBase {
  readonly name: string;
  readonly massKg: number;
  readonly at: Vec3;
  readonly basis: MassBasis;
  /** Outside size [x, y, z], mm, where given: drawn, and in the way of a hand. */
  readonly sizeMm?: Vec3;
  readonly part?: string;
  readonly serial?: string;
  readonly toleranceMm?: number;
  /** Exhaust or other hot part: dry, or cooled by water. */
  readonly hot?: 'dry' | 'wet';
  /** How far wires and pipes must stay off it, mm, where its maker says. */
  readonly keepClearMm?: number;
  /** Its middle, where that is not its centre of gravity. */
  readonly middle?: Vec3;
  /** It hangs in the open. */
  readonly outside?: boolean;
  /** The slide-out that it moves with. */
  readonly ridesOn?: string;
}

export interface Ticket extends RecordBase {
  readonly date: string;
  readonly scale?: string;
  readonly ticket?: string;
  readonly condition?: Condition;
  readonly readings: Readonly<Record<string, AxleReading>>;
  readonly grossKg?: number;
  /** What stood on the scale at once. */
  readonly together?: 'vehicle' | 'group' | 'axle' | 'wheel';
  /** Weighed with one axle (its group) raised, to find the height of the centre of gravity; `level` is the ticket taken level. */
  readonly raised?: { readonly axle: string; readonly byMm: number; readonly level: string; readonly wheelRadiusMm: number };
}

export interface Test extends RecordBase {
  readonly testKind: string;
  readonly of: readonly string[];
  readonly limit?: Quantity;
  readonly measured?: Quantity;
  readonly start?: Quantity;
  readonly end?: Quantity;
  readonly durationS?: number;
  readonly instrument?: string;
  readonly startTemperatureK?: number;
  readonly endTemperatureK?: number;
  readonly witness?: string;
}

export interface Nonconformance extends RecordBase {
  readonly raised: string;
  readonly of: readonly string[];
  /** Rules whose warnings this record decides, where the shop names them. */
  readonly rules: readonly string[];
  readonly description: string;
  readonly decision?: 'rework' | 'repair' | 'use as is' | 'reject';
  readonly reason?: string;
  readonly approvedBy?: string;
  readonly closed?: string;
  /** Owners must know of it: printed in the owner's edition. */
  readonly tellOwner: boolean;
}

export interface Signoff extends RecordBase {
  readonly stage: string;
  readonly role: string;
  readonly by: string;
  readonly date: string;
  readonly digest?: string;
  /** Who typed it, where that was another than who signs. */
  readonly enteredBy?: string;
}

export interface Amendment extends RecordBase {
  readonly date: string;
  readonly by: string;
  readonly reason: string;
  readonly changes: readonly string[];
}

export interface Photo extends RecordBase {
  /** Relative to the shell's photos folder. */
  readonly file: string;
  readonly of: readonly string[];
  readonly view?: string;
  readonly taken?: string;
  readonly caption?: string;
  readonly sha256?: string;
  /** Two opposite corners of the box that it shows. */
  readonly shows?: readonly [Vec3, Vec3];
  /** From where it was taken: the place in its middle, and its angle of view from side to side. */
  readonly camera?: { readonly at: Vec3; readonly towards: Vec3; readonly angleDeg: number };
  /** Known points and where they lie in the picture. */
  readonly seen?: readonly SeenPoint[];
  /** Of a picture without a camera's date. */
  readonly vouched?: Statement;
}

/** A point whose place is known, and its pixels from the upper left of the picture as it is shown upright. */
export interface SeenPoint {
  readonly is?: string;
  readonly end?: 'low' | 'high' | 'from' | 'to';
  readonly corner?: number;
  readonly at?: Vec3;
  readonly px: readonly [number, number];
}

/** Printed with its author, or the book says "not declared". */
export interface Declared extends RecordBase {
  readonly declaredKind: string;
  readonly at?: Vec3;
  readonly rating?: Quantity;
  readonly document?: string;
  /** Records that it is declared for. */
  readonly of: readonly string[];
}

/** What the owner has done to the coach at intervals. */
export interface Care {
  readonly what: string;
  /** Time or distance, as typed. */
  readonly every: string;
  readonly from?: string;
  readonly done: readonly string[];
}
export interface Paint {
  readonly where: string;
  readonly system?: string;
  readonly code?: string;
  readonly lot?: string;
}
/** Where a spare is had. */
export interface Part {
  readonly of: string;
  readonly makerNumber?: string;
  readonly supplier?: string;
  readonly note?: string;
}
export interface Warranty {
  readonly of: string;
  readonly until?: string;
  readonly by?: string;
  readonly terms?: string;
}

export interface Shell extends Omit<RecordBase, 'photos'> {
  /** The shell number, which is the folder's name. */
  readonly id: string;
  readonly title: string;
  readonly vin?: string;
  readonly customer?: { readonly name?: string; readonly place?: string; readonly contact?: string };
  readonly envelope?: { readonly lengthMm: number; readonly widthMm: number; readonly heightMm: number };
  readonly chassis: Chassis;
  readonly tanks: readonly Tank[];
  readonly seats: readonly Seat[];
  readonly bays: readonly Bay[];
  /** The shop's own loading conditions, beside the standard ones. */
  readonly conditions: readonly { readonly name: string; readonly condition: Condition }[];
  readonly care?: readonly Care[];
  readonly paint?: readonly Paint[];
  readonly parts?: readonly Part[];
  readonly warranty?: readonly Warranty[];

  readonly zones: readonly Zone[];
  readonly members: readonly Member[];
  readonly welds: readonly Weld[];
  readonly panels: readonly Panel[];
  readonly openings: readonly Opening[];
  readonly services: readonly Service[];
  /** All services' circuits, nodes and runs, in file order. */
  readonly circuits: readonly Circuit[];
  readonly nodes: readonly ServiceNode[];
  readonly runs: readonly Run[];
  readonly components: readonly Component[];
  readonly tickets: readonly Ticket[];
  readonly tests: readonly Test[];
  readonly findings: readonly Nonconformance[];
  readonly signoffs: readonly Signoff[];
  readonly amendments: readonly Amendment[];
  readonly photos: readonly Photo[];
  readonly declared: readonly Declared[];
  readonly clamps: readonly Clamp[];

  /** Every id of the shell → its record kind and record. Axles, tanks, seats and bays included. */
  readonly byId: ReadonlyMap<string, Entry>;
}

export type RecordKind =
  | 'shell'
  | 'axle'
  | 'tank'
  | 'seat'
  | 'bay'
  | 'zone'
  | 'member'
  | 'weld'
  | 'panel'
  | 'opening'
  | 'circuit'
  | 'node'
  | 'run'
  | 'component'
  | 'ticket'
  | 'test'
  | 'finding'
  | 'signoff'
  | 'amendment'
  | 'photo'
  | 'declared'
  | 'clamp';

export interface Entry {
  readonly kind: RecordKind;
  readonly id: string;
  readonly record: unknown;
}

/** One shell with the shop and library that it stands on: what every figure is computed from. */
export interface Model {
  readonly shop: Shop;
  readonly library: Library;
  readonly shell: Shell;
  /** The other shells of the store; absent where there is only this one. */
  readonly elsewhere?: Elsewhere;
}
