import type { Model } from '../model/shell.js';
import type { Facing, Member } from '../records/index.js';
import { type Extent, extentCorners } from './extent.js';
import { nearness, VIEW_OF_FACE } from './projection.js';
import { memberCorners } from './visibility.js';

/** Members further in than this from an outside face are not shown dashed behind it, mm. */
const WALL_DEPTH_MM = 250;
/** The same for floor and roof, which are deeper. */
const FLOOR_DEPTH_MM = 400;

/** Members that lie wholly or partly within the wall, floor or roof of a face. */
export function membersNearFace(model: Model, shell: Extent, face: Facing): readonly Member[] {
  const view = VIEW_OF_FACE[face];
  const outer = Math.max(...extentCorners(shell).map((corner) => nearness(view, corner)));
  const reach = face === 'up' || face === 'down' ? FLOOR_DEPTH_MM : WALL_DEPTH_MM;
  return model.shell.members.filter((member) => {
    const depths = memberCorners(member, model.library).map((corner) => nearness(view, corner));
    return depths.reduce((sum, depth) => sum + depth, 0) / depths.length > outer - reach;
  });
}
