import type { Vec3 } from '../geometry/vector.js';
import type { RecordBase } from './source.js';

export const MEMBER_CLASSES = ['primary', 'secondary'] as const;
/** Primary: the shell stands on it. */
export type MemberClass = (typeof MEMBER_CLASSES)[number];

/**
 * A tube, beam, channel, angle or bar on a line, or a plate cut to an outline.
 *
 * The line runs through the middle of the section's bounding rectangle. At roll 0 the depth of the section stands in
 * the vertical plane of the member (towards +z), its width lies across (`width axis = depth axis × line`, so +y for a member that
 * runs rearward). For a member that stands upright, the depth points to +x. Roll turns both about the line, right-handed.
 */
export interface Member extends RecordBase {
  readonly part: string;
  readonly alloy: string;
  readonly heat?: string;
  /** The member from whose bar or sheet it was cut. */
  readonly offcutOf?: string;
  /** Primary where absent. */
  readonly memberClass?: MemberClass;
  readonly shape: LineMember | PlateMember;
}
export interface LineMember {
  readonly kind: 'line';
  readonly section: string;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly rollDeg: number;
  readonly cutLengthMm?: number;
}
export interface PlateMember {
  readonly kind: 'plate';
  readonly thicknessMm: number;
  /** Corners on the plate's middle plane. */
  readonly outline: readonly Vec3[];
}

export const WELD_TYPES = ['fillet', 'square groove', 'bevel groove', 'V groove', 'flare', 'plug', 'seam'] as const;
export type WeldType = (typeof WELD_TYPES)[number];

export interface Inspection {
  readonly method: string;
  readonly by: string;
  readonly date: string;
  readonly result: 'accept' | 'reject';
  readonly reason?: string;
  readonly repair?: number;
}

export interface Weld extends RecordBase {
  /** One pair, or several for like joints. */
  readonly joins: readonly (readonly [string, string])[];
  readonly type: WeldType;
  readonly sizeMm: number;
  /** Of each joint. */
  readonly lengthMm: number;
  readonly sides: 'arrow' | 'other' | 'both';
  readonly process: string;
  readonly procedure?: string;
  readonly filler?: string;
  readonly position?: string;
  readonly welder?: string;
  readonly at?: Vec3;
  readonly allRound: boolean;
  /** Welded away from the shop. */
  readonly site?: boolean;
  readonly inspections: readonly Inspection[];
}

export const PANEL_KINDS = ['skin', 'roof', 'belly', 'cap', 'interior', 'access'] as const;
export type PanelKind = (typeof PANEL_KINDS)[number];
export const FACINGS = ['up', 'down', 'left', 'right', 'front', 'rear'] as const;
export type Facing = (typeof FACINGS)[number];
/** Unit vector out of the vehicle through a face of it, in the datum's axes. */
export const OUTWARD: Readonly<Record<Facing, Vec3>> = {
  up: [0, 0, 1],
  down: [0, 0, -1],
  left: [0, -1, 0],
  right: [0, 1, 0],
  front: [-1, 0, 0],
  rear: [1, 0, 0],
};

export interface Fixing {
  readonly method: string;
  readonly count?: number;
  readonly driver?: string;
  readonly adhesive?: string;
  readonly lot?: string;
  readonly expires?: string;
  readonly applied?: string;
  readonly sealant?: string;
  readonly torqueNm?: number;
  /** Order in which the fasteners are undone and tightened, as the shop says it. */
  readonly order?: string;
}

export interface Bond {
  readonly surfaceK?: number;
  readonly airK?: number;
  /** Fraction. */
  readonly humidity?: number;
  readonly openTimeS?: number;
  readonly openTimeLimitS?: number;
  readonly cureS?: number;
  readonly cureLeastS?: number;
  readonly coupon?: string;
}

export interface Panel extends RecordBase {
  readonly panelKind: PanelKind;
  readonly name?: string;
  readonly alloy?: string;
  readonly thicknessMm?: number;
  /** Corners in order. */
  readonly outline: readonly Vec3[];
  /** Cut-outs, each by its corners. Their area is taken off. */
  readonly holes: readonly (readonly Vec3[])[];
  /** The panel that an access panel is set in. */
  readonly of?: string;
  /** Clear opening of an access panel, mm: the larger dimension lies along the longer side of the outline. */
  readonly openingMm?: readonly [number, number];
  readonly facing?: Facing;
  readonly fixing?: Fixing;
  readonly bond?: Bond;
  /** Typed mass, where it was weighed. */
  readonly massKg?: number;
}

export interface Opening extends RecordBase {
  readonly openingKind: string;
  readonly wall?: string;
  readonly sill: readonly Vec3[];
  readonly widthMm: number;
  readonly heightMm: number;
  readonly measured?: {
    readonly topMm?: number;
    readonly bottomMm?: number;
    readonly frontMm?: number;
    readonly rearMm?: number;
    readonly diagonalsMm?: readonly [number, number];
    readonly headerSag: readonly { readonly atMm: number; readonly dropMm: number }[];
  };
  readonly header?: string;
  readonly gussets: readonly string[];
  /** Of a slide-out: how far it goes out from the wall, and how far into the coach it stands when it is in, mm. */
  readonly travelMm?: number;
  readonly depthMm?: number;
  /** Circuits, runs and nodes that move with it or drive it: not in its way. */
  readonly drivenBy?: readonly string[];
}

export interface Clamp extends RecordBase {
  readonly clampKind: string;
  readonly at: Vec3;
  readonly bolt?: string;
  readonly torqueNm?: number;
  readonly damper?: string;
  readonly isolator?: boolean;
  readonly joins: readonly string[];
  readonly checkAgain?: string;
  /** Each time that it was checked after it was first tightened, in order. */
  readonly checks?: readonly ClampCheck[];
}

export interface ClampCheck {
  readonly date: string;
  readonly torqueNm?: number;
  readonly by?: string;
  /** Distance or time run by then, as typed. */
  readonly after?: string;
}
