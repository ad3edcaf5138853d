import { linePath, stationAt } from '../../compute/solids.js';
import { planarPolygon } from '../../geometry/polygon.js';
import { lerp, type Vec3 } from '../../geometry/vector.js';
import type { RecordKind, Shell } from '../../records/index.js';

/** One record of a shell as someone may ask for it. */
export interface Findable {
  readonly id: string;
  readonly kind: RecordKind;
  readonly name?: string;
  readonly marking?: string;
  readonly service?: string;
  readonly colour?: string;
  readonly position?: Vec3;
  readonly path: readonly Vec3[];
}

/** Everything that has a place or a name, what is asked for most first. Places are computed for those that are asked for. */
export function findables(shell: Shell): readonly Findable[] {
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
  const none: readonly Vec3[] = [];
  return [
    ...shell.circuits.map(({ id, name, marking, service, colour }) => ({
      id,
      colour,
      kind: 'circuit' as const,
      name,
      marking,
      service,
      path: none,
    })),
    ...shell.nodes.map(({ id, name, marking, service, at }) => {
      return { id, kind: 'node' as const, name, marking, service, position: at, path: none };
    }),
    ...shell.runs.map(({ id, marking, service, circuit, path, colour: own }) => {
      const owner = circuit === undefined ? undefined : circuits.get(circuit);
      const name = owner?.name;
      const colour = own ?? owner?.colour;
      return {
        id,
        kind: 'run' as const,
        name,
        marking: marking ?? owner?.marking,
        service,
        colour,
        get position() {
          return halfWay(path);
        },
        path,
      };
    }),
    ...shell.panels.map(({ id, name, outline }) => {
      return {
        id,
        kind: 'panel' as const,
        name,
        get position() {
          return planarPolygon(outline).centroid;
        },
        path: none,
      };
    }),
    ...shell.components.map(({ id, name, at }) => ({ id, kind: 'component' as const, name, position: at, path: none })),
    ...shell.members.map(({ id, part, shape }) => {
      const path: readonly Vec3[] = shape.kind === 'line' ? linePath(shape) : none;
      return {
        id,
        kind: 'member' as const,
        name: part,
        get position() {
          return shape.kind === 'line' ? stationAt(shape, 0.5).at : planarPolygon(shape.outline).centroid;
        },
        path,
      };
    }),
    ...shell.welds.map(({ id, at }) => ({ id, kind: 'weld' as const, position: at, path: none })),
    ...shell.zones.map(({ id, name, box, along }) => {
      const position = box ? lerp(box[0], box[1], 0.5) : along && halfWay(along);
      return { id, kind: 'zone' as const, name, position, path: along ?? none };
    }),
    ...shell.openings.map(({ id, openingKind, sill }) => ({
      id,
      kind: 'opening' as const,
      name: openingKind,
      position: halfWay(sill),
      path: none,
    })),
    ...shell.tanks.map(({ id, contents, at }) => ({ id, kind: 'tank' as const, name: contents, position: at, path: none })),
    ...shell.clamps.map(({ id, clampKind, at }) => ({ id, kind: 'clamp' as const, name: clampKind, position: at, path: none })),
    ...shell.declared.map(({ id, declaredKind, at }) => ({
      id,
      kind: 'declared' as const,
      name: declaredKind,
      position: at,
      path: none,
    })),
    ...shell.bays.map(({ id, name, at }) => ({ id, kind: 'bay' as const, name, position: at, path: none })),
    ...shell.seats.map(({ id, at }) => ({ id, kind: 'seat' as const, position: at, path: none })),
  ];
}

/** The place half way along a path; undefined for an empty one. */
function halfWay(path: readonly Vec3[]): Vec3 | undefined {
  const lengths = path.slice(1).map((to, i) => Math.hypot(...to.map((value, k) => value - ((path[i] as Vec3)[k] as number))));
  let left = lengths.reduce((sum, length) => sum + length, 0) / 2;
  for (let i = 0; i < lengths.length; i++) {
    const length = lengths[i] as number;
    if (left <= length) return length === 0 ? path[i] : lerp(path[i] as Vec3, path[i + 1] as Vec3, left / length);
    left -= length;
  }
  return path[0];
}
