import type { Vec3 } from '../geometry/vector.js';
import type { Quantity } from './library.js';
import type { RecordBase } from './source.js';

export const MEDIA = ['dc', 'ac', 'data', 'water', 'drain', 'gas', 'air', 'hydraulic', 'duct', 'refrigerant', 'fuel'] as const;
export type Medium = (typeof MEDIA)[number];

export const NODE_KINDS = [
  'source',
  'panel',
  'terminal',
  'splice',
  'connector',
  'junction',
  'valve',
  'fitting',
  'drain',
  'device',
  'load',
  'test-point',
] as const;
export type NodeKind = (typeof NODE_KINDS)[number];

/** What a node does to its line. */
export const NODE_ROLES = [
  ...['battery', 'generator', 'alternator', 'shore inlet', 'solar panel', 'tank', 'cylinder', 'city inlet', 'reservoir'],
  ...['switch', 'breaker', 'fuse', 'shut-off', 'plug', 'changeover'],
  ...['charger', 'converter', 'inverter', 'solar regulator', 'gas regulator', 'check valve', 'diode', 'inverter charger'],
  ...['pump', 'compressor', 'heater', 'accumulator', 'capacitor'],
  ...['busbar', 'junction', 'splice', 'terminal'],
  ...['outlet', 'appliance', 'lamp', 'tap', 'fixture', 'drain cock'],
] as const;
export type NodeRole = (typeof NODE_ROLES)[number];

/** Where something sits in a panel of rows: counted from 1, from the upper left. */
export interface Slot {
  readonly row?: number;
  readonly number: number;
}

/** What carries the current. Either a gauge, an area, or a type from the library. */
export interface Conductor {
  /** American Wire Gauge as typed: 14, '1/0', '4/0'. */
  readonly awg?: string;
  readonly areaMm2?: number;
  readonly type?: string;
  /** Number of conductors in the run (two for a plus and a return). */
  readonly conductors: number;
  /** Temperature rating of the insulation, °C. */
  readonly ratingC?: number;
  readonly material: 'copper' | 'aluminium';
}

export interface Protection {
  /** fuse | breaker | regulator | relief valve … as the shop says. */
  readonly kind: string;
  readonly ratingA?: number;
  /** Node id where it sits. */
  readonly at?: string;
}

/** `1/2 in PEX` taken apart: nominal size and material word(s). */
export interface PipeSize {
  readonly text: string;
  readonly nominalMm: number;
  readonly material: string;
}

export interface Circuit extends RecordBase {
  readonly service: string;
  readonly medium: Medium;
  readonly name: string;
  readonly voltageV?: number;
  readonly loadA?: number;
  readonly loadW?: number;
  readonly conductor?: Conductor;
  readonly protection?: Protection;
  readonly marking?: string;
  /** As `red/black`. */
  readonly colour?: string;
  /** An earth bond or bonding conductor: it wants no fuse. */
  readonly bonding?: boolean;
  /** Hottest air around its wires, °C. */
  readonly ambientC?: number;
  readonly size?: PipeSize;
  readonly workingPressurePa?: number;
}

export interface ServiceNode extends RecordBase {
  readonly service: string;
  readonly medium: Medium;
  readonly nodeKind: NodeKind;
  readonly name?: string;
  readonly at: Vec3;
  /** What the shop says opens it; the tool checks. */
  readonly panel?: string;
  readonly circuit?: string;
  readonly toleranceMm?: number;
  readonly position?: 'normally open' | 'normally closed';
  readonly torqueNm?: number;
  readonly rating?: Quantity;
  readonly loadA?: number;
  readonly loadW?: number;
  readonly marking?: string;
  /** A tinned lug or a washer keeps unlike metals apart here. */
  readonly isolator?: boolean;
  readonly role?: NodeRole;
  /** The components or tanks that it belongs to. */
  readonly of?: readonly string[];
  readonly slot?: Slot;
  /** Of a panel: its spaces, used or spare. */
  readonly spaces?: readonly (Slot & { readonly spare: boolean })[];
  /** Temperature rating of its terminals, °C. */
  readonly terminalsC?: number;
  readonly startLoadA?: number;
  readonly startLoadW?: number;
}

export interface Run extends RecordBase {
  readonly service: string;
  readonly medium: Medium;
  readonly circuit?: string;
  readonly from: string;
  readonly to: string;
  /** Side of a two-sided node at that end: `line`, `load`, `in`, `out`, `supply 1` … */
  readonly fromSide?: string;
  readonly toSide?: string;
  readonly via: readonly Vec3[];
  /** The whole way, ends included, mm: from node, via points, to node. Empty where an end is unknown. */
  readonly path: readonly Vec3[];
  readonly zones: readonly string[];
  readonly installedLengthMm?: number;
  readonly toleranceMm?: number;
  /** Distance between supports, mm. */
  readonly supportsMm?: number;
  /** From a terminal to the first support, mm. */
  readonly endSupportsMm?: number;
  /** Where its marking is tied on. */
  readonly tags?: 'both ends' | 'one end' | 'none';
  /** In loom, conduit or a sheath over its whole length. */
  readonly sheathed?: boolean;
  readonly colour?: string;
  readonly grommets: readonly (string | Vec3)[];
  /** Where it passes an outside panel and the hole is sealed. */
  readonly sealed?: readonly (string | Vec3)[];
  readonly marking?: string;
  readonly conductor?: Conductor;
  readonly size?: PipeSize;
  readonly workingPressurePa?: number;
  readonly spare?: boolean;
  readonly abandoned?: boolean;
}

export interface Service {
  /** The file's stem: `dc-house` for services/dc-house.yaml. */
  readonly id: string;
  readonly name: string;
  readonly medium: Medium;
  readonly file: string;
  /** What the file's head was typed as: name, medium and notes. */
  readonly typed?: Readonly<Record<string, unknown>>;
  readonly circuits: readonly Circuit[];
  readonly nodes: readonly ServiceNode[];
  readonly runs: readonly Run[];
}

/** A named cavity: an axis-aligned box, or a rectangular section swept along a line. */
export interface Zone extends RecordBase {
  readonly name: string;
  readonly box?: readonly [Vec3, Vec3];
  readonly along?: readonly Vec3[];
  /** Clear inside of a swept zone: first dimension across (horizontal), second up, mm. */
  readonly clearMm?: readonly [number, number];
  readonly concealed: boolean;
  readonly closedBy: readonly string[];
  readonly carries: readonly Medium[];
  readonly spare?: string;
  readonly pullCord?: boolean;
  /** Panels or nodes where the cord's ends are tied off. */
  readonly cordEnds?: readonly string[];
  /** Where it is a conduit: its trade size and kind. */
  readonly conduit?: PipeSize;
  /** Drain holes in its floor. */
  readonly drains?: readonly Vec3[];
}
