import type { Bay } from './bay.js';
import type { Chassis } from './chassis.js';
import type { Circuit } from './circuit.js';
import type { RecordOf } from './kind.js';
import type { LISTED } from './kinds.js';
import type { LoadingCondition } from './loading-condition.js';
import type { ListedKind, Medium, RecordKind } from './names.js';
import type { ServiceNode } from './node.js';
import type { RecordBase } from './record-base.js';
import type { Run } from './run.js';
import type { Seat } from './seat.js';
import type { LineContents } from './service.js';
import type { ShellHead } from './shell-head.js';
import type { Tank } from './tank.js';

export interface Service {
  /** The file's stem: `dc-house` for services/dc-house.yaml. */
  readonly id: string;
  readonly name: string;
  readonly medium: Medium;
  /** Of a water service: what stays in its lines, where that is recorded. */
  readonly contents?: LineContents;
  readonly file: string;
  /** What the file's head was typed as: name, medium and notes. */
  readonly typed?: Readonly<Record<string, unknown>>;
  readonly circuits: readonly Circuit[];
  readonly nodes: readonly ServiceNode[];
  readonly runs: readonly Run[];
}

/** A kind's list in `Shell`: `members`. */
type ListName<K extends ListedKind> = K extends 'declared' ? K : `${K}s`;

/** Every list of records of a shell; circuits, nodes and runs of all services, in file order. */
export type ShellLists = { readonly [K in ListedKind as ListName<K>]: readonly RecordOf<(typeof LISTED)[K]>[] };

export interface Shell
  extends Omit<RecordBase, 'photos' | 'place' | 'planned' | 'corrected'>,
    Omit<ShellHead, 'shell' | 'title' | 'photos'>,
    ShellLists {
  /** The shell number, which is the folder's name. */
  readonly id: string;
  readonly title: string;
  readonly chassis: Chassis;
  readonly tanks: readonly Tank[];
  readonly seats: readonly Seat[];
  readonly bays: readonly Bay[];
  /** The shop's own loading conditions, beside the standard ones. */
  readonly conditions: readonly LoadingCondition[];
  readonly services: readonly Service[];
  /** Records of which a place hangs on another, by id. */
  readonly taped?: ReadonlyMap<string, Taped>;
  /** Every id of the shell → its record kind and record. Axles, tanks, seats and bays included. */
  readonly byId: ReadonlyMap<string, Entry>;
}

/** A place that was told as a tape tells it. */
export interface Taped {
  /** Root of the sum of squares: of the tape, of what it hangs on, of the face that was taken. */
  readonly uncertaintyMm: number;
  /** Ids that it hangs on. */
  readonly on: readonly string[];
  /** What was taken for want of better. */
  readonly said: readonly string[];
}

export interface Entry {
  readonly kind: RecordKind;
  readonly id: string;
  readonly record: unknown;
}

/** Name of a kind's list in `Shell`. */
export const listName = (kind: ListedKind): keyof ShellLists => (kind === 'declared' ? kind : `${kind}s`);
