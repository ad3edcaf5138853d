import { type Box, isInBox } from '../../geometry/box.js';
import { dot, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Run, Zone } from '../../records/index.js';
import { samples } from '../access/samples.js';
import { BOUNDARY_MM, zoneBoxes } from '../access/zones.js';

/** What fills a cavity at its fullest place. */
export interface FullestSection {
  readonly filledMm2: number;
  /** The runs that lie side by side there. */
  readonly runs: readonly string[];
}

/**
 * The cross-section of a cavity, square to its way, where the runs in it fill most. Runs that follow one another do not lie side by
 * side there. A run counts from the first to the last of its way in the cavity; one whose record names the cavity but whose
 * way misses it counts along the whole of it.
 */
export function fullestSection(zone: Zone, runs: readonly Run[], areaMm2: (run: Run) => number): FullestSection {
  const stretches = zoneBoxes(zone).map((box) => ({ box, way: longest(zone, box) }));
  const spans = runs.map((run) => ({ run, span: spanIn(stretches, run) }));
  let fullest: FullestSection = { filledMm2: 0, runs: [] };
  // The sum only grows where a run begins, so those are the places to look at.
  for (const at of spans.map(({ span }) => span[0])) {
    const side = spans.filter(({ span }) => span[0] <= at && at <= span[1]).map(({ run }) => run);
    const filledMm2 = side.reduce((sum, run) => sum + areaMm2(run), 0);
    if (filledMm2 > fullest.filledMm2) fullest = { filledMm2, runs: side.map((run) => run.id) };
  }
  return fullest;
}

/** From where to where along the cavity a run lies in it, mm from the cavity's beginning. */
function spanIn(stretches: readonly { readonly box: Box; readonly way: 0 | 1 | 2 }[], run: Run): readonly [number, number] {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { at } of samples(run.path)) {
    let before = 0;
    for (const { box, way } of stretches) {
      if (isInBox(at, box, BOUNDARY_MM)) {
        const station = before + box.half[way] + dot(subtract(at, box.center), box.axes[way] as Vec3);
        first = Math.min(first, station);
        last = Math.max(last, station);
      }
      before += 2 * box.half[way];
    }
  }
  return first <= last ? [first, last] : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
}

/** The axis that the cavity runs along: its line, or the longest side of its box. */
function longest(zone: Zone, box: Box): 0 | 1 | 2 {
  if (!zone.box) return 0;
  const [a, b, c] = box.half;
  return a >= b && a >= c ? 0 : b >= c ? 1 : 2;
}
