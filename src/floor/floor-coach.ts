import type { Computed } from '../compute/figures.js';
import { boundsOf } from '../geometry/box.js';
import { lerp, type Vec3 } from '../geometry/vector.js';
import { typedOrigin } from '../model/typed-origin.js';
import type { FloorCoach } from './floor-data.js';

function only<T extends object, K extends keyof T>(record: T, ...keys: readonly K[]): Pick<T, K> {
  return Object.fromEntries(keys.flatMap((key) => (record[key] === undefined ? [] : [[key, record[key]]]))) as Pick<T, K>;
}

/** What the page's checks, tape, drawings and pictures read of a record, by name: nothing else goes into the page with it. */
export function floorCoach({ model: { shell, library, shop }, figures }: Computed): FloorCoach {
  const used = new Set(shell.members.flatMap(({ shape }) => (shape.kind === 'line' ? [shape.section] : [])));
  const alloys = new Set([...shell.members, ...shell.panels].flatMap(({ alloy }) => alloy ?? []));
  return {
    shell: {
      members: shell.members.map((one) => only(one, 'id', 'shape', 'alloy')),
      panels: shell.panels.map((one) =>
        only(
          one,
          ...(['id', 'panelKind', 'of', 'outline', 'holes', 'thicknessMm', 'facing', 'alloy', 'date', 'fixing', 'bond'] as const),
        ),
      ),
      openings: shell.openings.map((one) => only(one, 'id', 'sill', 'widthMm', 'heightMm')),
      zones: shell.zones.map((one) => only(one, 'id', 'box', 'along', 'clearMm')),
      nodes: shell.nodes.map((one) => only(one, 'id', 'service', 'medium', 'nodeKind', 'circuit', 'at', 'toleranceMm')),
      circuits: shell.circuits.map((one) => only(one, 'id', 'service', 'medium')),
      runs: shell.runs.map((one) => only(one, 'id', 'medium', 'circuit', 'path')),
      seats: shell.seats.map((one) => only(one, 'id', 'at')),
      tanks: shell.tanks.map((one) => only(one, 'id', 'capacityM3', 'at', 'body', 'of')),
      bays: shell.bays.map((one) => only(one, 'id', 'at', 'body')),
      components: shell.components.map((one) => only(one, 'id', 'name', 'at', 'sizeMm', 'middle', 'outside')),
      welds: shell.welds.map((one) => only(one, 'id', 'joins', 'welder', 'date', 'inspections')),
      tests: shell.tests.map((one) =>
        only(one, 'id', 'testKind', 'of', 'measured', 'start', 'end', 'limit', 'instrument', 'date'),
      ),
      chassis: { frame: shell.chassis.frame, axles: shell.chassis.axles.map((one) => only(one, 'id', 'xMm')) },
      ...only(shell, 'envelope'),
    },
    taped: [...(shell.taped ?? [])].map(([id, { uncertaintyMm }]) => [id, uncertaintyMm]),
    sections: [...used].flatMap((id) => library.sections.get(id) ?? []).map((one) => only(one, 'id', 'dimensions')),
    materials: [...alloys].flatMap((id) => library.materials.get(id) ?? []).map((one) => only(one, 'id', 'group')),
    people: [...library.people.values()].map((one) => only(one, 'id', 'qualified')),
    procedures: [...library.procedures.values()].map((one) =>
      only(one, 'id', 'process', 'types', 'filler', 'positions', 'base', 'thicknessMm'),
    ),
    instruments: [...library.instruments.values()].map((one) => only(one, 'id', 'resolution', 'calibrated', 'due')),
    weldsAt: Object.fromEntries(
      figures.joints.joints.flatMap(({ welds, bounds }) =>
        bounds ? welds.map((id) => [id, lerp(bounds.min, bounds.max, 0.5).map(Math.round) as unknown as Vec3]) : [],
      ),
    ),
    origin: typedOrigin(shell),
    units: shop.units,
    limits: only(shop.limits, 'tapeMm', 'overlayMm'),
  } as unknown as FloorCoach;
}

/** The middle of what a record spans. */
export function middleOfPoints(points: readonly Vec3[]): Vec3 | undefined {
  if (points.length === 0) return undefined;
  const { min, max } = boundsOf(points);
  return lerp(min, max, 0.5).map(Math.round) as unknown as Vec3;
}
