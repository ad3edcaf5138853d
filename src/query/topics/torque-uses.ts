import type { Shell } from '../../records/index.js';

/** A torque as somebody specified it: the limit of the newest torque test of a thing. */
export interface SpecifiedTorque {
  /** Test record that it stands in. */
  readonly test: string;
  readonly leastNm: number;
  /** What the test notes beside it, as its tolerance. */
  readonly note?: string;
}

/** Of things that one test covers together; undefined where no torque test covers them all. */
export function torqueSpecified({ tests }: Pick<Shell, 'tests'>, ids: readonly string[]): SpecifiedTorque | undefined {
  const [newest] = tests
    .filter((one) => one.testKind === 'torque' && one.limit?.dimension === 'torque' && ids.every((id) => one.of.includes(id)))
    .sort((a, b) => (a.date ?? '').localeCompare(b.date ?? ''))
    .reverse();
  if (!newest?.limit) return undefined;
  return { test: newest.id, leastNm: newest.limit.value, ...(newest.note ? { note: newest.note } : {}) };
}
