import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Member } from '../../records/index.js';
import type { Crossing } from '../services/types.js';
import type { RunFigure } from '../takeoff/types.js';
import { wallMm } from '../welding/base.js';
import { WELD_BAND_MM, weldedJoints } from '../welding/weld-bands.js';
import { isPrimary } from './materials.js';
import { bodyDistance, memberBody, pointBody } from './solids-of.js';
import type { Joint } from './types.js';

/** A hole in a primary member beside one of its welds. */
export interface DrilledNear {
  readonly member: string;
  readonly run: string;
  /** The member that the weld joins to it, and the weld. */
  readonly other: string;
  readonly weld: string;
  /** From the edge of the hole to the other member; 0 where it reaches it. */
  readonly distanceMm: number;
  readonly limitMm: number;
  readonly at: Vec3;
}

const WALLS = 3;

/**
 * Runs that pass through a primary member within an inch, or three walls, of a member welded to it. The hole is taken as wide as the
 * run; the weld as lying where the two meet.
 */
export function drilledNear(
  model: Model,
  crossings: readonly Crossing[],
  joints: readonly Joint[],
  runs: readonly RunFigure[],
): readonly DrilledNear[] {
  const members = new Map(model.shell.members.filter(isPrimary).map((member) => [member.id, member]));
  const byMember = weldedJoints(joints);
  const wide = new Map(runs.map(({ id, outsideDiameterMm }) => [id, outsideDiameterMm]));
  return crossings.flatMap((crossing) => {
    const member = crossing.kind === 'member' ? members.get(crossing.through) : undefined;
    if (!member) return [];
    const near = (byMember.get(member.id) ?? []).flatMap((joint) =>
      nearJoint(crossing, member, joint, members, (wide.get(crossing.run) ?? 0) / 2, model),
    );
    const nearest = near.sort((a, b) => a.distanceMm - b.distanceMm)[0];
    return nearest ? [nearest] : [];
  });
}

function nearJoint(
  { run, at }: Crossing,
  member: Member,
  joint: Joint,
  members: ReadonlyMap<string, Member>,
  radiusMm: number,
  model: Model,
): readonly DrilledNear[] {
  const other = members.get(joint.members[0] === member.id ? joint.members[1] : joint.members[0]);
  const body = other && memberBody(other, model);
  const limitMm = Math.max(WELD_BAND_MM, WALLS * (wallMm(member, model.library) ?? 0));
  const centreMm = body && bodyDistance(pointBody(run, at), body, limitMm + radiusMm);
  if (!other || centreMm === undefined || centreMm - radiusMm >= limitMm) return [];
  const distanceMm = Math.max(0, centreMm - radiusMm);
  return [{ member: member.id, run, other: other.id, weld: joint.welds[0] as string, distanceMm, limitMm, at }];
}
