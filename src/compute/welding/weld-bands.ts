import { type Box, boxBetween, grow } from '../../geometry/box.js';
import { nearestOnPolyline } from '../../geometry/segment.js';
import { dot, lerp, polylineLength, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { MM_PER_IN } from '../../quantity/units.js';
import type { LineMember } from '../../records/index.js';
import { developedLengthMm, linePath } from '../solids.js';
import { isPrimary } from '../structure/materials.js';
import type { Joint } from '../structure/types.js';

/** Where the metal of a primary member has lost strength to its welds. */
export interface WeldBands {
  readonly member: string;
  /** Along the member's line, mm from its start, in order; those that touch are one. */
  readonly bandsMm: readonly (readonly [number, number])[];
  /** Share of the line's length within a band. */
  readonly share: number;
}

/** The metal an inch each way from a weld counts as affected by it. Aluminum Design Manual, unverified citation. */
export const WELD_BAND_MM = MM_PER_IN;

/**
 * Weld-affected bands along each primary member on a line: of every welded joint the stretch that the other part covers, an inch more
 * at each end. On a member that runs askew the stretch is taken by the upright box about the contact, so never too short.
 */
export function heatAffectedZones({ shell }: Model, joints: readonly Joint[]): readonly WeldBands[] {
  const byMember = weldedJoints(joints);
  return shell.members.flatMap((member): readonly WeldBands[] => {
    const own = byMember.get(member.id);
    if (!own || member.shape.kind !== 'line' || !isPrimary(member)) return [];
    const { shape } = member;
    const length = developedLengthMm(shape);
    if (length === 0) return [];
    const bandsMm = merged(own.map((joint) => bandOf(joint, shape, length)));
    return [{ member: member.id, bandsMm, share: bandsMm.reduce((sum, [from, to]) => sum + to - from, 0) / length }];
  });
}

/** Joints that have a weld, by each of their two members. */
export function weldedJoints(joints: readonly Joint[]): ReadonlyMap<string, readonly Joint[]> {
  const found = new Map<string, Joint[]>();
  for (const joint of joints) {
    if (joint.welds.length === 0) continue;
    for (const id of joint.members) found.set(id, [...(found.get(id) ?? []), joint]);
  }
  return found;
}

/**
 * The soft metal in space about each joint of members that is not clamped: its contact and an inch each way. By weld id, else by the
 * members: a joint without a weld on record is taken as welded, so that no screw is sent there.
 */
export function heatAffectedMetal(joints: readonly Joint[]): readonly { readonly id: string; readonly box: Box }[] {
  return joints.flatMap(({ bounds, welds, clamps, members }) => {
    if (!bounds || (welds.length === 0 && (clamps?.length ?? 0) > 0)) return [];
    const { min, max } = grow(bounds, WELD_BAND_MM);
    return [{ id: welds[0] ?? members.join(' and '), box: boxBetween(min, max) }];
  });
}

type Band = readonly [number, number];

function bandOf({ at, bounds }: Joint, line: LineMember, length: number): Band {
  const { min, max } = bounds ?? { min: at, max: at };
  const { along, middle } = placeAlong(line, lerp(min, max, 0.5));
  // Half of the box's shadow on the line.
  const reach = dot(subtract(max, min), along.map(Math.abs) as unknown as Vec3) / 2 + WELD_BAND_MM;
  const clip = (place: number): number => Math.min(length, Math.max(0, place));
  return [clip(middle - reach), clip(middle + reach)];
}

/** How far along a member's middle line a place is, mm, and the way that the line runs there. */
function placeAlong(line: LineMember, at: Vec3): { readonly along: Vec3; readonly middle: number } {
  const path = linePath(line);
  const segment = line.bends ? Math.min(path.length - 2, nearestOnPolyline(at, path)?.segment ?? 0) : 0;
  const [from, to] = path.slice(segment, segment + 2) as [Vec3, Vec3];
  const along = unit(subtract(to, from));
  return { along, middle: polylineLength(path.slice(0, segment + 1)) + dot(subtract(at, from), along) };
}

function merged(bands: readonly Band[]): readonly Band[] {
  const kept: [number, number][] = [];
  for (const [from, to] of [...bands].sort((a, b) => a[0] - b[0])) {
    const last = kept.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else kept.push([from, to]);
  }
  return kept;
}
