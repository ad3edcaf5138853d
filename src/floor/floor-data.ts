import type { Vec3 } from '../geometry/vector.js';
import type { TapView } from '../page/pocket-data.js';
import type { UnitSystem } from '../quantity/format.js';
import type { Instrument, KindName, Limits, Material, Person, Procedure, Section, Shell } from '../records/index.js';

/** A record as a field may name it: id, words, and where it is in mm (absent: not recorded). */
export type FloorRef = readonly [id: string, words: string, at?: Vec3];

/** Two parts that a joint has between them, whether no weld or clamp is on record for it, and its middle in mm. */
export type PageJoint = readonly [a: string, b: string, open: boolean, at?: Vec3];

/** Records of the coach with the fields that the page’s checks, tape, drawings and pictures read. */
export interface FloorCoach {
  readonly shell: Pick<
    Shell,
    | ('members' | 'panels' | 'openings' | 'zones' | 'nodes' | 'circuits' | 'runs' | 'seats')
    | ('tanks' | 'bays' | 'components' | 'welds' | 'tests' | 'chassis' | 'envelope')
  >;
  /** How well a place is known that hangs on others by a tape, mm. */
  readonly taped: readonly (readonly [id: string, uncertaintyMm: number])[];
  readonly sections: readonly Section[];
  readonly materials: readonly Material[];
  readonly people: readonly Person[];
  readonly procedures: readonly Procedure[];
  readonly instruments: readonly Instrument[];
  /** The middle of the joints of each weld, mm. */
  readonly weldsAt: Readonly<Record<string, Vec3>>;
  /** Where the typed origin lies in the standard datum, mm. */
  readonly origin: Vec3;
  readonly units: UnitSystem;
  readonly limits: Pick<Limits, 'tapeMm' | 'overlayMm'>;
}

/** What the page for the floor carries for its script. */
export interface FloorData {
  readonly shell: string;
  readonly fingerprint: string;
  readonly language: 'en' | 'es';
  /** Sentences by key. */
  readonly words: Readonly<Record<string, string>>;
  readonly refs: Readonly<Partial<Record<KindName, readonly FloorRef[]>>>;
  readonly joints: readonly PageJoint[];
  /** What stands before the number of each kind’s ids. */
  readonly heads: Readonly<Partial<Record<KindName, string>>>;
  readonly coach: FloorCoach;
  readonly views: readonly TapView[];
  /** What a panel hides that no photo shows or no test has proved yet. */
  readonly hides: Readonly<Record<string, readonly (readonly [id: string, lacks: 'photo' | 'test' | 'both'])[]>>;
  /** Fields of panels that stand in the record already, as typed: `SK-1` → `bond.humidity` → `55 %`. */
  readonly typed: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
}
