import type { Vec3 } from '../geometry/vector.js';
import type { KindName, Qualification } from '../records/index.js';
import type { TaskName } from './tasks.js';

/** A record as a field may name it: id, words, and where it is in mm (absent: not recorded). */
export type FloorRef = readonly [id: string, words: string, at?: Vec3];

/** What the page for the floor carries for its script. */
export interface FloorData {
  readonly shell: string;
  readonly fingerprint: string;
  readonly language: 'en' | 'es';
  /** Sentences by key. */
  readonly words: Readonly<Record<string, string>>;
  readonly refs: Readonly<Partial<Record<KindName, readonly FloorRef[]>>>;
  /** Joints without a weld on record. */
  readonly joints: readonly (readonly [string, string])[];
  /** What stands before the number of each kind’s ids. */
  readonly heads: Readonly<Partial<Record<KindName, string>>>;
  readonly qualified: Readonly<Record<string, readonly Qualification[]>>;
  readonly gauges: readonly { readonly id: string; readonly calibrated?: string; readonly due?: string }[];
  /** What a panel hides that no photo shows or no test has proved yet. */
  readonly hides: Readonly<Record<string, readonly (readonly [id: string, lacks: 'photo' | 'test' | 'both'])[]>>;
  /** Fields of panels that stand in the record already, as typed: `SK-1` → `bond.humidity` → `55 %`. */
  readonly typed: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
}

/** One entry that is kept on the phone. */
export interface KeptEntry {
  readonly task: TaskName;
  /** Fields as they were typed, for the next one like it. */
  readonly typed: Readonly<Record<string, string>>;
}
