import type { Model } from '../../model/shell.js';

export interface State {
  /** in build: a stage is left to sign off. signed off: none is. amended: changed after the last was. */
  readonly state: 'in build' | 'signed off' | 'amended';
  /** The first stage without a sign-off, in build order; null where none is left or the library has no stages. */
  readonly stage: string | null;
}

export function stateOf({ shell, library }: Model): State {
  const signed = new Set(shell.signoffs.map((signoff) => signoff.stage));
  const next = library.stages.find((stage) => !signed.has(stage.id));
  if (next || library.stages.length === 0) return { state: 'in build', stage: next?.id ?? null };
  const last =
    shell.signoffs
      .map((signoff) => signoff.date)
      .sort()
      .at(-1) ?? '';
  return { state: shell.amendments.some((amendment) => amendment.date >= last) ? 'amended' : 'signed off', stage: null };
}
