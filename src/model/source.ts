import type { Place } from '../finding.js';

/** Where a record was typed. Made once by the reader, so that no rule ever searches for a place to point at. */
export interface Source {
  readonly file: string;
  /** The place of a field (`place('axles', 0, 'gawr')`); of its nearest known parent where that field was not typed. */
  place(...path: readonly (string | number)[]): Place;
}

/** What every record may carry, whatever its kind. Lengths mm, masses kg, and so on: the name carries the unit. */
export interface RecordBase {
  readonly id: string;
  readonly source: Source;
  /** The record as plain data as it was typed (no units converted): what the fingerprint covers and editions carry. */
  readonly typed: Readonly<Record<string, unknown>>;
  readonly note?: string;
  readonly photos: readonly string[];
  readonly by?: string;
  /** ISO 8601 date. */
  readonly date?: string;
  readonly stage?: string;
  /** Where it is, in the shop's own words. */
  readonly place?: string;
  /** It is not in the coach yet. */
  readonly planned?: boolean;
  /** A mended entry: the coach did not change. */
  readonly corrected?: Statement;
}

/** A word given by a person on a day. */
export interface Statement {
  readonly date: string;
  readonly by: string;
  readonly why: string;
}
