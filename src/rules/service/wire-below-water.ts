import { samples } from '../../compute/access/samples.js';
import { zoneMap } from '../../compute/access/zones.js';
import type { Finding } from '../../finding.js';
import type { Bounds } from '../../geometry/box.js';
import { type Grid, grid } from '../../geometry/grid.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Run } from '../../model/services.js';
import { length, position } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

const WIRES = ['dc', 'ac', 'data'];
const WET = ['water', 'drain'];
/** Side by side, seen from above, within this a drip meets the wire, mm. House value. */
const BESIDE_MM = 150;
/** Heights as measured with a tape, mm. House value. */
const TAPE_MM = 10;

/** A piece of a run within a concealed cavity. */
interface Piece {
  readonly run: Run;
  readonly at: Vec3;
  readonly zones: ReadonlySet<string>;
}

const around = ([x, y]: Vec3): Bounds => ({
  min: [x - BESIDE_MM, y - BESIDE_MM, Number.NEGATIVE_INFINITY],
  max: [x + BESIDE_MM, y + BESIDE_MM, Number.POSITIVE_INFINITY],
});

/** For each pipe, the piece of a wire that lies most below all of the pipe beside it in the same cavity. */
function worst(wire: readonly Piece[], pipes: readonly Piece[], near: Grid): ReadonlyMap<Run, Lies> {
  const found = new Map<Run, Lies>();
  for (const { at, zones } of wire) {
    const lowest = new Map<Run, number>();
    for (const i of near.near(around(at))) {
      const pipe = pipes[i] as Piece;
      if (Math.hypot(pipe.at[0] - at[0], pipe.at[1] - at[1]) > BESIDE_MM) continue;
      if (![...zones].some((zone) => pipe.zones.has(zone))) continue;
      lowest.set(pipe.run, Math.min(lowest.get(pipe.run) ?? Infinity, pipe.at[2]));
    }
    for (const [run, height] of lowest) {
      const belowMm = height - at[2];
      if (belowMm > TAPE_MM && belowMm > (found.get(run)?.belowMm ?? 0)) found.set(run, { at, belowMm });
    }
  }
  return found;
}

interface Lies {
  readonly at: Vec3;
  readonly belowMm: number;
}

export const wireBelowWater: Rule = {
  name: 'service.wire-below-water',
  severity: 'warning',
  finds: 'A wire that lies below a water or waste pipe beside it in the same cavity.',
  why: 'The first drip runs onto it.',
  source: 'common practice, no source',
  check({ model: { shell, shop } }) {
    const zones = zoneMap(shell.zones.filter((zone) => zone.concealed));
    const pieces = (run: Run): readonly Piece[] =>
      samples(run.path).flatMap(({ at }) => {
        const held = zones.holding(at);
        return held.length > 0 ? [{ run, at, zones: new Set(held.map((zone) => zone.id)) }] : [];
      });
    const pipes = shell.runs.filter((run) => WET.includes(run.medium)).flatMap(pieces);
    if (pipes.length === 0) return [];
    const near = grid(
      pipes.map(({ at }, index) => ({ index, bounds: { min: at, max: at } })),
      2 * BESIDE_MM,
    );
    return shell.runs
      .filter((run) => WIRES.includes(run.medium) && !run.abandoned)
      .flatMap((run): readonly Finding[] =>
        [...worst(pieces(run), pipes, near)].map(([pipe, { at, belowMm }]) => ({
          rule: 'service.wire-below-water',
          severity: 'warning',
          message: `${run.id} lies ${length(belowMm, shop.units)} below ${pipe.id} at ${position(at, shop.units)}, expected wires above water in one cavity: raise it, or move one of the two`,
          ids: [run.id, pipe.id],
          place: run.source.place('via'),
          related: [{ message: `${pipe.id}, the pipe above`, place: pipe.source.place('via') }],
        })),
      );
  },
};
