import { boundsOf, grow } from '../../geometry/box.js';
import { grid } from '../../geometry/grid.js';
import { nearestOnSegment } from '../../geometry/segment.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Run } from '../../records/index.js';
import { samples } from '../access/samples.js';

/** Wires whose middles are within this lie together, mm. Project default: a laced loom or a narrow cavity. */
const TOGETHER_MM = 50;
/** Shorter stretches together need no adjustment, mm: 24 in, NEC Table 310.15(C)(1). */
const FREE_MM = 609.6;

/**
 * For each DC and AC run, the current-carrying conductors that lie within 50 mm of it over more than 24 in in all, its own
 * included. `carrying` gives the current-carrying conductors of one run.
 */
export function bundledConductors(runs: readonly Run[], carrying: (run: Run) => number): ReadonlyMap<string, number> {
  const electric = runs.filter((run) => run.medium === 'dc' || run.medium === 'ac');
  const stretches = electric.flatMap((run, index) =>
    run.path.slice(1).map((to, i) => ({ index, from: run.path[i] as Vec3, to })),
  );
  const near = grid(
    stretches.map(({ from, to }, index) => ({
      index,
      bounds: boundsOf([from, to]),
    })),
    500,
  );
  return new Map(
    electric.map((run, self) => {
      const together = new Map<number, number>();
      for (const piece of samples(run.path)) {
        const beside = new Set<number>();
        for (const i of near.near(grow({ min: piece.at, max: piece.at }, TOGETHER_MM))) {
          const { index, from, to } = stretches[i] as (typeof stretches)[number];
          if (index === self || beside.has(index)) continue;
          if (nearestOnSegment(piece.at, from, to).distance <= TOGETHER_MM) beside.add(index);
        }
        for (const other of beside) together.set(other, (together.get(other) ?? 0) + piece.lengthMm);
      }
      let count = carrying(run);
      for (const [other, lengthMm] of together) if (lengthMm > FREE_MM) count += carrying(electric[other] as Run);
      return [run.id, count] as const;
    }),
  );
}
