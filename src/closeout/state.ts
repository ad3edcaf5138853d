import type { Model } from '../model/shell.js';
import type { ClosedAs } from '../store/closed-as.js';
import { signedStages } from './signed.js';

/** How far a shell’s sign-offs have come, by its records alone. */
export interface Progress {
  /** The first stage that nobody has signed, or whose every sign-off has lapsed, in build order; null where none is. */
  readonly stage: string | null;
  /** Stages whose sign-off has lapsed, in build order. */
  readonly lapsed: readonly string[];
  /** There are amendments on or after the day of the last sign-off. */
  readonly amended: boolean;
  /** The library says what there is to sign. */
  readonly hasStages: boolean;
}

export function progressOf(model: Model): Progress {
  const { shell, library } = model;
  const signed = signedStages(model);
  const of = (stage: string) => signed.filter(({ signoff }) => signoff.stage === stage);
  const lapsed = library.stages.filter(({ id }) => of(id).some(({ standing }) => standing === 'lapsed')).map(({ id }) => id);
  const open = library.stages.find(({ id }) => of(id).length === 0 || of(id).every(({ standing }) => standing === 'lapsed'));
  const last =
    shell.signoffs
      .map(({ date }) => date)
      .sort()
      .at(-1) ?? '';
  return {
    stage: open?.id ?? null,
    lapsed,
    amended: shell.amendments.some(({ date }) => date >= last),
    hasStages: library.stages.length > 0,
  };
}

/**
 * in build: a stage is left to sign off. signed off: none is. closed: tagged, and nothing has changed since. amended: changed since it
 * was closed; outside Git, since the last stage was signed.
 */
export type StateName = 'in build' | 'signed off' | 'closed' | 'amended';

export function stateName({ stage, amended, hasStages }: Progress, closed?: ClosedAs): StateName {
  if (closed) return closed.unchanged ? 'closed' : 'amended';
  if (stage !== null || !hasStages) return 'in build';
  return amended ? 'amended' : 'signed off';
}
