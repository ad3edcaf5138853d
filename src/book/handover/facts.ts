import type { Finding } from '../../finding.js';
import type { OpenInZone } from '../../query/release/index.js';

/** What the sheet tells beside what the record itself says. */
export interface HandOverFacts {
  /** `in build, next to sign off: belly`. */
  readonly state: string;
  /** Errors, and warnings that nobody has decided. */
  readonly open: readonly OpenInZone<Finding>[];
}
