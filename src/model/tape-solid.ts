import { type Bounds, type Box, boundsOf, boxBounds, clipToBox } from '../geometry/box.js';
import { facet, throughFacet } from '../geometry/facet.js';
import { add, scale, type Vec3 } from '../geometry/vector.js';
import type { FilledBox, KindName, Library, Member, Opening, Panel, Zone } from '../records/index.js';
import { lineWalls } from '../sections/line-walls.js';
import { openingCorners } from '../sections/solids.js';

/** What a tape is held to: its outside along the datum's axes, and what of it a line along one axis meets. */
export interface TapeSolid {
  readonly bounds: Bounds;
  /** Least and greatest coordinate on that axis of what the line through `at` meets; undefined where it meets nothing. */
  meets(axis: 0 | 1 | 2, at: Vec3): readonly [number, number] | undefined;
}

/** How far a line is followed to either side, mm. */
const FAR = 1e5;

/** Undefined for a record that has no place of its own, as one whose section is unknown. `record`: as the model has it. */
export function tapeSolid(kind: KindName, record: unknown, library: Library): TapeSolid | undefined {
  if (record === undefined) return undefined;
  if (kind === 'member') return memberSolid(record as Member, library);
  if (kind === 'panel') return plateSolid((record as Panel).outline, (record as Panel).thicknessMm ?? 0);
  if (kind === 'opening') {
    const corners = openingCorners(record as Opening);
    return corners && plateSolid(corners, 0);
  }
  if (kind === 'zone') return zoneSolid(record as Zone);
  const { at, body, ...own } = record as { readonly at?: Vec3; readonly body?: FilledBox } & FilledBox;
  const { middle = at, sizeMm } = kind === 'component' ? own : (body ?? {});
  const half: Vec3 = sizeMm ? scale(sizeMm, 0.5) : [0, 0, 0];
  return middle && ofBounds({ min: add(middle, scale(half, -1)), max: add(middle, half) });
}

function memberSolid(member: Member, library: Library): TapeSolid | undefined {
  if (member.shape.kind === 'plate') return plateSolid(member.shape.outline, member.shape.thicknessMm);
  const section = library.sections.get(member.shape.section);
  return section && ofBoxes(lineWalls(member, section.dimensions));
}

/** A swept cavity is as wide on the axes that its line does not run along. */
function zoneSolid(zone: Zone): TapeSolid | undefined {
  if (zone.box) return ofBounds(boundsOf(zone.box));
  if (!zone.along) return undefined;
  const { min, max } = boundsOf(zone.along);
  const [across, up] = zone.clearMm ?? [0, 0];
  const half = [across / 2, across / 2, up / 2].map((by, axis) => ((max[axis] as number) - (min[axis] as number) > 1 ? 0 : by));
  return ofBounds({ min: add(min, scale(half as unknown as Vec3, -1)), max: add(max, half as unknown as Vec3) });
}

const ofBounds = (bounds: Bounds): TapeSolid => ({
  bounds,
  meets(axis, at) {
    const inside = [0, 1, 2].every(
      (k) => k === axis || ((at[k] as number) >= (bounds.min[k] as number) && (at[k] as number) <= (bounds.max[k] as number)),
    );
    return inside ? [bounds.min[axis], bounds.max[axis]] : undefined;
  },
});

function ofBoxes(boxes: readonly Box[]): TapeSolid {
  const all = boxes.map(boxBounds);
  const bounds = boundsOf(all.flatMap(({ min, max }) => [min, max]));
  return {
    bounds,
    meets(axis, at) {
      const [from, to] = lineThrough(axis, at);
      const met = boxes.flatMap((box) => clipToBox(from, to, box) ?? []).map((t) => -FAR + 2 * FAR * t);
      return met.length === 0 ? undefined : [Math.min(...met), Math.max(...met)];
    },
  };
}

function plateSolid(outline: readonly Vec3[], thicknessMm: number): TapeSolid | undefined {
  const plane = facet(outline);
  if (!plane) return undefined;
  const grown = plane.normal.map((part) => (Math.abs(part) * thicknessMm) / 2) as unknown as Vec3;
  const { min, max } = boundsOf(outline);
  return {
    bounds: { min: add(min, scale(grown, -1)), max: add(max, grown) },
    meets(axis, at) {
      const t = throughFacet(...lineThrough(axis, at), plane);
      const slope = Math.abs(plane.normal[axis]);
      if (t === undefined || slope < 1e-6) return undefined;
      const [middle, half] = [-FAR + 2 * FAR * t, thicknessMm / 2 / slope];
      return [middle - half, middle + half];
    },
  };
}

function lineThrough(axis: 0 | 1 | 2, at: Vec3): readonly [Vec3, Vec3] {
  const end = (coordinate: number): Vec3 => at.map((one, k) => (k === axis ? coordinate : one)) as unknown as Vec3;
  return [end(-FAR), end(FAR)];
}
