import { type ZoneMap, zoneMap } from '../../compute/access/zones.js';
import type { Finding } from '../../finding.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Run, Zone } from '../../records/index.js';
import { findables } from '../lookup/records.js';

/** What is open in one zone. No zone: what lies in none, or has no place. */
export interface OpenInZone<F extends Finding> {
  readonly zone?: Zone;
  readonly findings: readonly F[];
}

/** Findings by the zone of the first record that they blame and that lies in one; in the order of the zone records, no zone last. */
export function openByZone<F extends Finding>({ shell }: Model, findings: readonly F[]): readonly OpenInZone<F>[] {
  const zones = zoneMap(shell.zones);
  const places = new Map(findables(shell).map((one) => [one.id, one.position] as const));
  const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
  const found = new Map<string | undefined, F[]>();
  for (const finding of findings) {
    const at = finding.ids.map((id) => zoneOf(id, zones, places, runs)).find((id) => id !== undefined);
    found.set(at, [...(found.get(at) ?? []), finding]);
  }
  const named = shell.zones.flatMap((zone) => {
    const of = found.get(zone.id);
    return of ? [{ zone, findings: of }] : [];
  });
  const rest = found.get(undefined);
  return [...named, ...(rest ? [{ findings: rest }] : [])];
}

function zoneOf(
  id: string,
  zones: ZoneMap,
  places: ReadonlyMap<string, Vec3 | undefined>,
  runs: ReadonlyMap<string, Run>,
): string | undefined {
  if (zones.boxes.has(id)) return id;
  const named = runs.get(id)?.zones[0];
  if (named !== undefined && zones.boxes.has(named)) return named;
  const at = places.get(id);
  return at && zones.holding(at)[0]?.id;
}
