import { boundsOf, grow } from '../../geometry/box.js';
import { grid } from '../../geometry/grid.js';
import { nearestOfSegments } from '../../geometry/segment.js';
import { lerp, type Vec3 } from '../../geometry/vector.js';
import type { KeepApart, Run } from '../../records/index.js';
import { sheathServes } from './keep-apart.js';
import type { TooClose } from './types.js';

interface Stretch {
  readonly run: Run;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radiusMm: number;
  /** Half its thickness and the tolerance of its place. */
  readonly widenMm: number;
}

/**
 * Pairs of runs that may be nearer to each other than their media allow, each at its worst place; nearest first. Outside to outside,
 * less how well the place of each is known where that is recorded: both may lie that much nearer. Of wires
 * one in a sheath needs no gap.
 */
export function tooClose(
  runs: readonly Run[],
  keepApart: readonly KeepApart[],
  outsideMm: (run: Run) => number,
): readonly TooClose[] {
  const sheathed = new Set(runs.filter((run) => run.sheathed).map((run) => run.id));
  const stretches = (medium: string): readonly Stretch[] =>
    runs
      .filter((run) => run.medium === medium)
      .flatMap((run) =>
        run.path.slice(1).map((to, i) => ({
          run,
          from: run.path[i] as Vec3,
          to,
          radiusMm: outsideMm(run) / 2,
          widenMm: outsideMm(run) / 2 + (run.toleranceMm ?? 0),
        })),
      );
  return keepApart
    .flatMap((pair) => {
      const { media, distanceMm } = pair;
      if (distanceMm === undefined) return [];
      const found = pairsWithin(stretches(media[0]), stretches(media[1]), media, distanceMm);
      return sheathServes(pair) ? found.filter(({ runs: both }) => !both.some((id) => sheathed.has(id))) : found;
    })
    .sort((a, b) => a.distanceMm - b.distanceMm);
}

const meet = (a: Run, b: Run): boolean => [a.from, a.to].some((end) => end === b.from || end === b.to);

function pairsWithin(
  ours: readonly Stretch[],
  theirs: readonly Stretch[],
  media: TooClose['media'],
  limitMm: number,
): readonly TooClose[] {
  // Wires that end at one node meet there; a pipe and a wire do not.
  const isWires = sheathServes({ media });
  const widest = theirs.reduce((most, stretch) => Math.max(most, stretch.widenMm), 0);
  const index = grid(
    theirs.map(({ from, to }, i) => ({
      index: i,
      bounds: boundsOf([from, to]),
    })),
    500,
  );
  const worst = new Map<string, TooClose>();
  for (const one of ours) {
    for (const i of index.near(grow(boundsOf([one.from, one.to]), limitMm + one.widenMm + widest))) {
      const other = theirs[i] as Stretch;
      if (other.run === one.run || (isWires && meet(other.run, one.run))) continue;
      const near = nearestOfSegments(one.from, one.to, other.from, other.to);
      const distanceMm = Math.max(0, near.distance - one.widenMm - other.widenMm);
      if (distanceMm >= limitMm) continue;
      // Of one medium kept from itself, each pair comes up twice.
      const flipped = media[0] === media[1] && one.run.id > other.run.id;
      const runs = flipped ? ([other.run.id, one.run.id] as const) : ([one.run.id, other.run.id] as const);
      const key = runs.join('\n');
      if (distanceMm >= (worst.get(key)?.distanceMm ?? Infinity)) continue;
      worst.set(key, {
        runs,
        media,
        distanceMm,
        recordedMm: Math.max(0, near.distance - one.radiusMm - other.radiusMm),
        limitMm,
        at: lerp(near.onA, near.onB, 0.5),
      });
    }
  }
  return [...worst.values()];
}
