import type { Computed } from '../../compute/figures.js';
import { isPlanned } from '../../model/planned.js';
import type { RecordKind, Shell } from '../../records/index.js';
import { ONE_ACTION } from './actions.js';
import type { Link } from './graph/graph.js';
import { solve } from './graph/solve.js';
import { notesOf } from './notes.js';
import { type Done, sourcesReaching } from './proof.js';
import { emptiedOnce, loadSteps, proofSteps, storedSteps } from './steps.js';
import { surroundings } from './surroundings.js';
import { targetsOf } from './targets.js';
import type { Isolation, IsolationAction, Unknown } from './types.js';

/**
 * What to switch off, shut and take off before work on a record, in order; the sources that are left; and what the record would have to
 * say for a proof. Takes a node, run, circuit, component, tank, zone or access panel; undefined for an unknown id and for other kinds.
 */
export function isolate(assessment: Computed, id: string): Isolation | undefined {
  const { shell } = assessment.model;
  const entry = shell.byId.get(id);
  const targets = entry && targetsOf(entry, assessment);
  if (!entry || !targets) return undefined;
  const around = surroundings(assessment);
  const solution = solve(shell, targets, around.costOf);
  const sourceSteps = emptiedOnce(
    inOrder(solution.links, around).map((link) => around.sourceStep(link)),
    around,
  );
  const proved = sourcesReaching(shell, targets, doneBy(solution.links));
  const unknown = [
    ...targets.unknown,
    ...solution.unknown,
    ...plannedOf([id, ...solution.links.flatMap((link) => [link.id, link.circuit ?? link.id])], shell),
  ];
  const sourcesLeft = shell.nodes
    .filter(({ id: one }) => solution.left.includes(one) || proved.includes(one))
    .map((one) => one.id);
  const actions: readonly IsolationAction[] = [
    ...loadSteps(targets, solution, around),
    ...sourceSteps,
    ...storedSteps(targets, solution, around),
    ...proofSteps(targets, solution, around),
  ];
  return {
    id,
    kind: entry.kind as RecordKind,
    media: around.mediaOf(targets),
    actions,
    sources: solution.sources,
    sourcesLeft,
    verified: solution.sources.length > 0 && unknown.length === 0,
    unknown,
    notes: notesOf(targets, { solution, sourcesLeft, around }),
  };
}

/** An answer that rests on what is not in the coach yet is no answer. */
const plannedOf = (ids: readonly string[], shell: Shell): readonly Unknown[] =>
  [...new Set(ids)]
    .filter((one) => isPlanned(shell, one))
    .map((one) => ({ id: one, what: 'it is planned and not in the coach yet: take `planned` away once it is, and ask again' }));

/** Switches and valves first, then what is unplugged; leads come off when everything that can be switched off is off. */
const inOrder = (links: readonly Link[], { costOf }: { costOf(link: Link): number }): readonly Link[] =>
  [...links].sort((a, b) => Math.floor(costOf(a) / (ONE_ACTION * 1000)) - Math.floor(costOf(b) / (ONE_ACTION * 1000)));

const doneBy = (links: readonly Link[]): Done => ({
  nodes: new Set(links.filter((link) => link.of !== 'protection').map((link) => link.id)),
  circuits: new Set(links.flatMap((link) => link.circuit ?? [])),
});
