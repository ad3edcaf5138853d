import { samples } from '../../compute/access/samples.js';
import { zoneMap } from '../../compute/access/zones.js';
import type { Finding } from '../../finding.js';
import { nearestOnPolyline } from '../../geometry/segment.js';
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

const flat = ([x, y]: Vec3): Vec3 => [x, y, 0];

/** The place of a wire that lies most below a pipe beside it. */
function worst(wire: readonly Vec3[], pipe: Run): { readonly at: Vec3; readonly belowMm: number } | undefined {
  const above = pipe.path.map(flat);
  let found: { at: Vec3; belowMm: number } | undefined;
  for (const at of wire) {
    const near = nearestOnPolyline(flat(at), above);
    if (!near || near.distance > BESIDE_MM) continue;
    const heights = samples(pipe.path).filter((piece) => Math.hypot(piece.at[0] - at[0], piece.at[1] - at[1]) <= BESIDE_MM);
    const lowest = Math.min(...heights.map((piece) => piece.at[2]));
    const belowMm = lowest - at[2];
    if (Number.isFinite(belowMm) && belowMm > TAPE_MM && belowMm > (found?.belowMm ?? 0)) found = { at, belowMm };
  }
  return found;
}

export const wireBelowWater: Rule = {
  name: 'service.wire-below-water',
  severity: 'warning',
  finds: 'A wire that lies below a water or waste pipe beside it in the same cavity.',
  why: 'The first drip runs onto it.',
  source: 'common practice, no source',
  check({ model: { shell, shop } }) {
    const zones = zoneMap(shell.zones);
    const inside = (run: Run) =>
      samples(run.path).flatMap(({ at }) =>
        zones
          .holding(at)
          .filter((zone) => zone.concealed)
          .map((zone) => [zone.id, at] as const),
      );
    const pipes = shell.runs
      .filter((run) => WET.includes(run.medium))
      .map((run) => ({ run, in: new Set(inside(run).map(([id]) => id)) }));
    if (pipes.length === 0) return [];
    return shell.runs
      .filter((run) => WIRES.includes(run.medium) && !run.abandoned)
      .flatMap((run): readonly Finding[] => {
        const places = inside(run);
        return pipes.flatMap((pipe): readonly Finding[] => {
          const found = worst(
            places.filter(([zone]) => pipe.in.has(zone)).map(([, at]) => at),
            pipe.run,
          );
          if (!found) return [];
          return [
            {
              rule: 'service.wire-below-water',
              severity: 'warning',
              message: `${run.id} lies ${length(found.belowMm, shop.units)} below ${pipe.run.id} at ${position(found.at, shop.units)}, expected wires above water in one cavity: raise it, or move one of the two`,
              ids: [run.id, pipe.run.id],
              place: run.source.place('via'),
              related: [{ message: `${pipe.run.id}, the pipe above`, place: pipe.run.source.place('via') }],
            },
          ];
        });
      });
  },
};
