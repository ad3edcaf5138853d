import type { Common } from './shared.js';
import type { Source } from './types.js';

/** What every record may carry, whatever its kind. Lengths mm, masses kg, and so on: the name carries the unit. */
export interface RecordBase extends Common {
  readonly source: Source;
  /** The record as plain data as it was typed (no units converted): what the fingerprint covers and editions carry. */
  readonly typed: Readonly<Record<string, unknown>>;
}
