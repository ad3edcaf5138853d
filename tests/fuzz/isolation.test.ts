import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ServiceFacts } from '../../src/query/isolate/graph/facts.js';
import type { Link } from '../../src/query/isolate/graph/graph.js';
import { solve } from '../../src/query/isolate/graph/solve.js';
import { sourcesReaching } from '../../src/query/isolate/proof.js';
import { drawnServices } from '../query/isolate/drawn.js';
import { actionsOf, reachingIn, statesOf } from '../query/isolate/plain-search.js';

const RUNS = Number(process.env.SHELLBOOK_FUZZ ?? 200);
const SEED = Number(process.env.SHELLBOOK_SEED);
const options = { numRuns: RUNS, ...(Number.isFinite(SEED) ? { seed: SEED } : {}) };

const nameOf = ({ id, circuit }: Link): string => (circuit === undefined ? id : `${id} ${circuit}`);

/** Sources that reach the target in any state, with some actions done. */
const reached = (facts: ServiceFacts, target: Target, done: ReadonlySet<string>): ReadonlySet<string> =>
  new Set(statesOf(facts).flatMap((state) => reachingIn(facts, target, done, state)));

interface Target {
  readonly nodes: readonly string[];
  readonly runs: readonly string[];
}

function targetOf({ nodes, runs }: ServiceFacts, pick: number): Target {
  const all = [...nodes.map(({ id }) => id), ...runs.map(({ id }) => id)];
  const id = all[pick % all.length] as string;
  return id.startsWith('N') ? { nodes: [id], runs: [] } : { nodes: [], runs: [id] };
}

const isSmall = (facts: ServiceFacts): boolean => actionsOf(facts).length <= 9 && statesOf(facts).length <= 64;

describe('isolation against every state of every switch', () => {
  it('leaves no source that anything parts, opens no more than it must, and the proof agrees', () => {
    fc.assert(
      fc.property(drawnServices(0), fc.nat(99), (facts, pick) => {
        fc.pre(isSmall(facts));
        const target = targetOf(facts, pick);
        const actions = actionsOf(facts);
        const always = reached(facts, target, new Set(actions));
        const found = solve(facts, target, () => 1);
        const done = new Set(found.links.map(nameOf));
        expect([...found.sources].sort()).toEqual([...reached(facts, target, new Set())].sort());
        expect([...found.left].sort()).toEqual([...always].sort());
        expect([...reached(facts, target, done)].sort()).toEqual([...always].sort());
        let fewest = actions.length;
        for (let mask = 0; mask < 1 << actions.length; mask++) {
          const some = actions.filter((_, i) => (mask >> i) & 1);
          if (some.length < fewest && reached(facts, target, new Set(some)).size === always.size) fewest = some.length;
        }
        expect(done.size).toBe(fewest);
        const proof = sourcesReaching(facts, target, {
          nodes: new Set(found.links.filter((link) => link.of !== 'protection').map((link) => link.id)),
          circuits: new Set(found.links.flatMap((link) => link.circuit ?? [])),
        });

        expect([...proof].sort()).toEqual([...always].sort());
      }),
      options,
    );
  });

  it('the proof finds what is still fed whatever was done, too little of it or beside the point', () => {
    fc.assert(
      fc.property(drawnServices(0), fc.nat(99), fc.nat(511), (facts, pick, mask) => {
        fc.pre(isSmall(facts));
        const target = targetOf(facts, pick);
        // A battery with its leads off is live itself: what is asked for is left as it is.
        const some = actionsOf(facts).filter((one, i) => (mask >> i) & 1 && !target.nodes.includes(one));
        const proof = sourcesReaching(facts, target, {
          nodes: new Set(some.filter((one) => !one.includes(' '))),
          circuits: new Set(some.flatMap((one) => one.split(' ')[1] ?? [])),
        });
        expect([...proof].sort()).toEqual([...reached(facts, target, new Set(some))].sort());
      }),
      options,
    );
  });

  it('holds on whichever side a run ends that is not recorded', () => {
    fc.assert(
      fc.property(drawnServices(40), fc.nat(99), (facts, pick) => {
        fc.pre(isSmall(facts));
        const target = targetOf(facts, pick);
        const found = solve(facts, target, () => 1);
        const always = reached(facts, target, new Set(actionsOf(facts)));
        expect([...found.left].sort()).toEqual([...always].sort());
        expect([...reached(facts, target, new Set(found.links.map(nameOf)))].sort()).toEqual([...always].sort());
      }),
      options,
    );
  });
});
