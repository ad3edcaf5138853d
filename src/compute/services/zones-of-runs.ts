import type { Model } from '../../model/shell.js';
import { samples } from '../access/samples.js';
import { zoneMap } from '../access/zones.js';

/** A run that only crosses a cavity is not in it: this much of its way must lie inside, mm, unless its record names the zone. */
const INSIDE_MM = 300;

/** Run id → ids of the zones that it is in: those that its record names, and those that its way runs through for `leastMm` or more. */
export function zonesOfRuns({ shell }: Model, leastMm = INSIDE_MM): ReadonlyMap<string, ReadonlySet<string>> {
  const zones = zoneMap(shell.zones);
  const known = new Set(shell.zones.map((zone) => zone.id));
  return new Map(
    shell.runs.map((run) => {
      const inside = new Map<string, number>();
      for (const piece of samples(run.path)) {
        for (const zone of zones.holding(piece.at)) inside.set(zone.id, (inside.get(zone.id) ?? 0) + piece.lengthMm);
      }
      const through = [...inside].filter(([, lengthMm]) => lengthMm >= leastMm).map(([id]) => id);
      return [run.id, new Set([...run.zones.filter((id) => known.has(id)), ...through])] as const;
    }),
  );
}
