import type { Figures } from '../../assess.js';
import { WELD_BAND_MM } from '../../compute/release/index.js';
import { memberBox } from '../../compute/solids.js';
import { isPrimary } from '../../compute/structure/materials.js';
import { type Box, grow } from '../../geometry/box.js';
import { add, dot, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Library } from '../../model/library.js';
import type { Member } from '../../model/structure.js';
import { convexHull } from '../outline.js';
import { project } from '../projection.js';
import { area, type Mark } from '../scene.js';
import type { Port } from '../sheet.js';
import { mergedStretches } from '../stretches.js';
import { boxCorners } from '../visibility.js';

type Joints = Figures['joints']['joints'];

/** What the tint means, for the notes of a drawing. */
export const WELD_BAND_NOTE =
  'Tinted: primary members within 25 mm (1 in) of a weld, soft from its heat (a weld is taken as long as the contact). Drill nothing there.';

/** Joints by each of their two members: only those with a weld. */
export function weldedJoints(joints: Joints): ReadonlyMap<string, Joints> {
  const found = new Map<string, Joints[number][]>();
  for (const joint of joints) {
    if (joint.welds.length === 0) continue;
    for (const id of joint.members) found.set(id, [...(found.get(id) ?? []), joint]);
  }
  return found;
}

/**
 * Stretches of a primary member on a line that lie within 25 mm of one of its welds (MAT-44: 1 in each way from the weld, Aluminum
 * Design Manual, from memory), as bands over its whole section. The weld is taken as long as the contact along the member.
 */
export function weldBandMarks(
  member: Member,
  welded: ReadonlyMap<string, Joints>,
  library: Library,
  port: Port,
): readonly Mark[] {
  const { shape } = member;
  const section = shape.kind === 'line' ? library.sections.get(shape.section) : undefined;
  if (shape.kind !== 'line' || !section || !isPrimary(member)) return [];
  const box = memberBox(shape, section.dimensions);
  const stretches = (welded.get(member.id) ?? []).flatMap(({ bounds }) => {
    if (!bounds) return [];
    const { min, max } = grow(bounds, WELD_BAND_MM);
    const along = corners(min, max).map((corner) => dot(subtract(corner, box.center), box.axes[0]));
    const [from, to] = [Math.max(Math.min(...along), -box.half[0]), Math.min(Math.max(...along), box.half[0])];
    return to > from ? [[from, to] as const] : [];
  });
  return mergedStretches(stretches).map(([from, to]) => {
    const part: Box = {
      center: add(box.center, scale(box.axes[0], (from + to) / 2)),
      axes: box.axes,
      half: [(to - from) / 2, box.half[1], box.half[2]],
    };
    return area(
      'structure',
      'weld-band',
      convexHull(boxCorners(part).map((corner) => project(port.view, corner))).map(port.placeFlat),
    );
  });
}

function corners(min: Vec3, max: Vec3): readonly Vec3[] {
  return [min[0], max[0]].flatMap((x) => [min[1], max[1]].flatMap((y) => [min[2], max[2]].map((z): Vec3 => [x, y, z])));
}
