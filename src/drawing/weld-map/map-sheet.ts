import type { Drawing } from '../compose.js';

/** A sheet of the weld map that has no number yet. */
export interface MapSheet extends Drawing {
  readonly stage: string;
  readonly welds: readonly string[];
}
