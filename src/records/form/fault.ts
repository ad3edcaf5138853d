import type { core } from 'zod';

/** What a field has to say about a value that it cannot take. Becomes one finding. */
export interface Fault {
  /** `format.wrong-value` unless said otherwise. */
  readonly rule?: string;
  /** Follows `Found`: with its quote marks. */
  readonly found: string;
  /** Follows `expected`. */
  readonly expected: string;
  /** Where within the field, as `[1]` of a position. */
  readonly path?: readonly (string | number)[];
}

export type Say = (fault: Fault) => void;

/** The shape that faults travel in through zod. */
export function issueOf(fault: Fault, input: unknown): core.$ZodRawIssue {
  return { code: 'custom', input, path: [...(fault.path ?? [])], params: { fault }, message: fault.expected };
}

export const faultOf = (issue: core.$ZodIssue): Fault | undefined =>
  issue.code === 'custom' ? (issue.params as { fault?: Fault } | undefined)?.fault : undefined;
