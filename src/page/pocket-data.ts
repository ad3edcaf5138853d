import type { Figures } from '../compute/figures.js';
import type { LoadLine } from '../compute/weights/types.js';
import type { Slab } from '../geometry/slab.js';
import type { Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import type { UnitSystem } from '../quantity/format.js';
import type { SearchEntry } from '../query/lookup/word-search.js';

/** A drawing of the coach: from a tap on it to a place. Lengths in mm; the drawing's upper left corner lies at (left, top) of the view's plane. */
export interface TapView {
  readonly key: string;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toViewer: Vec3;
  readonly left: number;
  readonly top: number;
  /** How far towards the viewer one stands: nothing in front of that is looked at. */
  readonly standsAt: number;
  /** The plane that a tap is taken in where no sheet is under it. */
  readonly planeAt: number;
  /** The part of the coach that it shows; all of it where absent. */
  readonly part?: Slab;
  /** Access panels that are drawn in it. */
  readonly access: readonly string[];
}

/** The records and figures that `near` and `screwAt` read, without anything that only describes. */
export interface NearData {
  readonly shell: Pick<
    Model['shell'],
    'runs' | 'nodes' | 'members' | 'panels' | 'components' | 'tanks' | 'bays' | 'zones' | 'chassis'
  >;
  readonly sections: readonly (readonly [string, unknown])[];
  readonly runs: Figures['takeOff']['runs'];
  readonly joints: Figures['joints']['joints'];
}

/** What loading is worked out from. */
export interface LoadingData {
  readonly gvwrKg?: number;
  readonly fullWithoutBaysKg?: number;
  readonly unladenUncertaintyKg: number;
  readonly lines: readonly LoadLine[];
  readonly bays: readonly { readonly id: string; readonly at: Vec3; readonly limitKg?: number }[];
}

/** Everything that the script of a pocket page reads. */
export interface PocketData {
  readonly shell: string;
  readonly edition: string;
  readonly revision: string | null;
  readonly fingerprint: string;
  /** ISO day of the record; absent where nothing was committed. */
  readonly date?: string;
  readonly oldAfterMonths: number;
  readonly units: UnitSystem;
  readonly words: Readonly<Record<string, string>>;
  /** Packed, since there are thousands: id, title, kind, names, more. */
  readonly search: readonly (readonly [id: string, title: string, kind: string, names: string, more: string])[];
  readonly views: readonly TapView[];
  readonly loading?: LoadingData;
}

export const searchEntries = ({ search }: Pick<PocketData, 'search'>): readonly SearchEntry[] =>
  search.map(([id, title, kind, names, more]) => ({ id, title, kind, names, more }));
