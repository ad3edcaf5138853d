import { add, cross, distance, dot, scale, subtract, unit, type Vec3 } from '../geometry/vector.js';
import type { LineMember } from '../records/index.js';

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
