import type { Computed } from '../../compute/figures.js';
import { isolate } from '../isolate/index.js';
import { sourcesReaching } from '../isolate/proof.js';
import type { Isolation } from './types.js';

/** What a distribution panel is still fed by when one of its switches alone is open. */
export interface StillLive {
  readonly panel: string;
  readonly isolation: Isolation;
  readonly opened: readonly Opened[];
}

/** One switch of a panel, open alone. */
export interface Opened {
  readonly id: string;
  readonly circuit?: string;
  /** What still feeds the panel. */
  readonly sources: readonly string[];
  /** Runs that end on the switch and stay live, and what feeds any of them. */
  readonly before: { readonly runs: readonly string[]; readonly sources: readonly string[] };
}

/** For every distribution panel of mains and direct current: what feeds it, what opens it all, and what one main alone leaves live. */
export function stillLive(assessment: Computed): readonly StillLive[] {
  const { shell } = assessment.model;
  return shell.nodes
    .filter((node) => node.nodeKind === 'panel' && (node.medium === 'dc' || node.medium === 'ac'))
    .flatMap((panel) => {
      const isolation = isolate(assessment, panel.id);
      if (!isolation) return [];
      const opened = isolation.actions
        .filter(({ step }) => step === 'source')
        .map(({ id, circuit }): Opened => {
          const done = {
            nodes: new Set(circuit === undefined ? [id] : []),
            circuits: new Set(circuit === undefined ? [] : [circuit]),
          };
          const fed = shell.runs
            .filter(({ from, to }) => from === id || to === id)
            .map((run) => ({ run: run.id, sources: sourcesReaching(shell, { nodes: [], runs: [run.id] }, done) }))
            .filter(({ sources }) => sources.length > 0);
          return {
            id,
            ...(circuit === undefined ? {} : { circuit }),
            sources: sourcesReaching(shell, { nodes: [panel.id], runs: [] }, done),
            before: { runs: fed.map(({ run }) => run), sources: [...new Set(fed.flatMap(({ sources }) => sources))] },
          };
        });
      return [{ panel: panel.id, isolation, opened }];
    });
}
