import type { Model } from '../../model/shell.js';
import type { KeepApart, Run, Zone } from '../../records/index.js';
import { zoneClearMm2 } from '../access/zones.js';
import { pipeOf } from '../takeoff/services/pipes.js';
import { fullestSection } from './fullest-section.js';
import type { SharedZone, ZoneFill } from './types.js';

/** Runs by the zone that they are in. */
function runsByZone(
  runs: readonly Run[],
  zonesOf: ReadonlyMap<string, ReadonlySet<string>>,
): ReadonlyMap<string, readonly Run[]> {
  const byZone = new Map<string, Run[]>();
  for (const run of runs) {
    for (const zone of zonesOf.get(run.id) ?? []) {
      const list = byZone.get(zone);
      if (list) list.push(run);
      else byZone.set(zone, [run]);
    }
  }
  return byZone;
}

/** Most of a conduit that wires may fill, by their number: NEC Chapter 9 Table 1. */
const CONDUIT_FILL = [0.53, 0.31, 0.4] as const;
export const conduitFill = (wires: number): number => CONDUIT_FILL[Math.min(3, Math.max(1, wires)) - 1] as number;

/** Inside of a conduit by the tables of its kind (NEC Chapter 9 Table 4), of any other cavity its clear section, mm². */
function clearOf(zone: Zone): number | undefined {
  const inside = zone.conduit && pipeOf(zone.conduit)?.insideMm;
  return inside === undefined ? zoneClearMm2(zone) : (Math.PI / 4) * inside ** 2;
}

/**
 * How full each cavity is: the outside circles of the runs that lie side by side at its fullest place over the clear
 * area square to its way.
 */
export function zoneFills(
  { shell }: Model,
  zonesOf: ReadonlyMap<string, ReadonlySet<string>>,
  outsideMm: (run: Run) => number,
): readonly ZoneFill[] {
  const byZone = runsByZone(shell.runs, zonesOf);
  return shell.zones.flatMap((zone) => {
    const runs = byZone.get(zone.id) ?? [];
    const clearMm2 = clearOf(zone);
    if (!clearMm2) return [];
    const fullest = fullestSection(zone, runs, (run) => (Math.PI / 4) * outsideMm(run) ** 2);
    return [
      {
        id: zone.id,
        clearMm2,
        filledMm2: fullest.filledMm2,
        fill: fullest.filledMm2 / clearMm2,
        runs: fullest.runs,
        ...(zone.conduit ? { limit: conduitFill(fullest.runs.length) } : {}),
        unknown: runs.filter((run) => outsideMm(run) === 0).map((run) => run.id),
      },
    ];
  });
}

/** Cavities that hold two media that must not share one. */
export function sharedZones(
  { shell }: Model,
  zonesOf: ReadonlyMap<string, ReadonlySet<string>>,
  keepApart: readonly KeepApart[],
): readonly SharedZone[] {
  const byZone = runsByZone(shell.runs, zonesOf);
  return shell.zones.flatMap((zone) =>
    keepApart
      .filter((limit) => limit.shareZone === false)
      .flatMap(({ media }) => {
        const of = (medium: string): readonly string[] =>
          (byZone.get(zone.id) ?? []).filter((run) => run.medium === medium).map((run) => run.id);
        const runs = [of(media[0]), of(media[1])] as const;
        return runs[0].length > 0 && runs[1].length > 0 ? [{ zone: zone.id, media, runs }] : [];
      }),
  );
}
