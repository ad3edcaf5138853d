import type { Box } from '../geometry/box.js';
import { planarPolygon } from '../geometry/polygon.js';
import { add, cross, distance, dot, lerp, scale, subtract, unit, type Vec3 } from '../geometry/vector.js';
import type { LineMember, Opening, SectionShape } from '../records/index.js';
import { sectionEnvelope } from './index.js';

/** The directions of a member on a line; see {@link LineMember} for the convention. */
export interface MemberFrame {
  readonly along: Vec3;
  readonly depth: Vec3;
  readonly width: Vec3;
  readonly lengthMm: number;
}

/** A line within 0.06° of upright counts as upright. */
const UPRIGHT = 1 - 5e-7;

export function memberFrame(line: Pick<LineMember, 'from' | 'to' | 'rollDeg'>): MemberFrame {
  const along = unit(subtract(line.to, line.from));
  const reference: Vec3 = Math.abs(along[2]) > UPRIGHT ? [1, 0, 0] : [0, 0, 1];
  const depth0 = unit(subtract(reference, scale(along, dot(reference, along))));
  const roll = (line.rollDeg * Math.PI) / 180;
  const depth = add(scale(depth0, Math.cos(roll)), scale(cross(along, depth0), Math.sin(roll)));
  return { along, depth, width: cross(depth, along), lengthMm: distance(line.from, line.to) };
}

/** Joints, access, services and more ask for the same boxes. */
const BOXES = new WeakMap<LineMember, { readonly shape: SectionShape; readonly box: Box }>();

/** The box that a member on a line fills: axes are along, depth, width. */
export function memberBox(line: LineMember, shape: SectionShape): Box {
  const known = BOXES.get(line);
  if (known?.shape === shape) return known.box;
  const frame = memberFrame(line);
  const [depthMm, widthMm] = sectionEnvelope(shape);
  const box: Box = {
    center: lerp(line.from, line.to, 0.5),
    axes: [frame.along, frame.depth, frame.width],
    half: [frame.lengthMm / 2, depthMm / 2, widthMm / 2],
  };
  BOXES.set(line, { shape, box });
  return box;
}

/** Corners of the two faces of a plate or panel of some thickness about its outline: [one face, other face]. */
export function plateFaces(outline: readonly Vec3[], thicknessMm: number): readonly [readonly Vec3[], readonly Vec3[]] {
  const offset = scale(planarPolygon(outline).normal, thicknessMm / 2);
  return [outline.map((corner) => add(corner, offset)), outline.map((corner) => subtract(corner, offset))];
}

/** Corners of an opening: along its sill, up by its height. Undefined where the sill is no line. */
export function openingCorners(opening: Opening): readonly [Vec3, Vec3, Vec3, Vec3] | undefined {
  const front = opening.sill[0];
  const rear = opening.sill.at(-1);
  if (!front || !rear || opening.sill.length < 2) return undefined;
  const up: Vec3 = [0, 0, opening.heightMm];
  return [front, rear, add(rear, up), add(front, up)];
}
