import type { Model } from '../../model/shell.js';
import type { Weld } from '../../records/index.js';

/** The stage of a weld that is signed off: its own where it has one, else of the parts that it joins. */
export function signedStage(weld: Weld, { shell }: Model): string | undefined {
  const signed = new Set(shell.signoffs.map(({ stage }) => stage));
  const stages = weld.stage === undefined ? weld.joins.flat().flatMap((id) => stageOf(shell.byId.get(id)?.record)) : [weld.stage];
  return stages.find((stage) => signed.has(stage));
}

function stageOf(record: unknown): readonly string[] {
  const stage = (record as { readonly stage?: unknown } | undefined)?.stage;
  return typeof stage === 'string' ? [stage] : [];
}
