import type { KeepApart } from '../../model/library.js';
import type { Run } from '../../model/services.js';
import type { Model } from '../../model/shell.js';
import { zoneClearMm2 } from '../access/zones.js';
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

/**
 * How full each cavity with runs in it is: the outside circles of the runs that lie side by side at its fullest place over the clear
 * area square to its way.
 */
export function zoneFills(
  { shell }: Model,
  zonesOf: ReadonlyMap<string, ReadonlySet<string>>,
  outsideMm: (run: Run) => number,
): readonly ZoneFill[] {
  const byZone = runsByZone(shell.runs, zonesOf);
  return shell.zones.flatMap((zone) => {
    const runs = byZone.get(zone.id);
    const clearMm2 = zoneClearMm2(zone);
    if (!runs || !clearMm2) return [];
    const fullest = fullestSection(zone, runs, (run) => (Math.PI / 4) * outsideMm(run) ** 2);
    return [
      {
        id: zone.id,
        clearMm2,
        filledMm2: fullest.filledMm2,
        fill: fullest.filledMm2 / clearMm2,
        runs: fullest.runs,
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
