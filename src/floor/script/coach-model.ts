import type { Model } from '../../model/shell.js';
import type { KindName } from '../../records/index.js';
import type { FloorCoach } from '../floor-data.js';

/** The records of the page as the shop’s own functions take them. What a page does not carry is not there, so only those may be asked that read no more. */
export function coachModel({ shell, taped, units, limits, ...library }: FloorCoach): Model {
  const byId = new Map<string, { readonly kind: KindName; readonly record: unknown }>();
  for (const [list, kind] of Object.entries(KINDS))
    for (const record of shell[list as keyof typeof KINDS]) byId.set(record.id, { kind, record });
  for (const axle of shell.chassis.axles) byId.set(axle.id, { kind: 'axle', record: axle });
  const mapOf = <T extends { readonly id: string }>(list: readonly T[]) => new Map(list.map((one) => [one.id, one]));
  return {
    shell: { ...shell, byId, taped: new Map(taped.map(([id, uncertaintyMm]) => [id, { uncertaintyMm, on: [], said: [] }])) },
    library: {
      sections: mapOf(library.sections),
      materials: mapOf(library.materials),
      people: mapOf(library.people),
      procedures: mapOf(library.procedures),
      instruments: mapOf(library.instruments),
    },
    shop: { units, limits },
  } as unknown as Model;
}

const KINDS = {
  members: 'member',
  panels: 'panel',
  openings: 'opening',
  zones: 'zone',
  nodes: 'node',
  circuits: 'circuit',
  runs: 'run',
  seats: 'seat',
  tanks: 'tank',
  bays: 'bay',
  components: 'component',
  welds: 'weld',
  tests: 'test',
} as const satisfies Readonly<Record<string, KindName>>;
