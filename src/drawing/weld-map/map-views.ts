import type { Model } from '../../model/shell.js';
import type { Member } from '../../records/index.js';
import { shellExtent, viewBounds } from '../extent.js';
import { type Group, groupsOf, stagesOf } from '../frame-groups.js';
import type { View } from '../projection.js';
import { overlaps, type Rect } from '../scene.js';
import type { CrossFrame } from '../views/cross-frames.js';
import { memberCorners } from '../visibility.js';
import type { WeldPoint } from './points.js';

/** What one elevation or plan of the weld map shows, before it is cut into sheets. */
export interface MapView {
  readonly stage: string;
  readonly stageName: string;
  readonly name: string;
  readonly view: View;
  readonly points: readonly WeldPoint[];
  /** Members of this stage that stand in the view. */
  readonly members: readonly Member[];
  /** Members of other stages that a weld here joins. */
  readonly joined: readonly Member[];
}

/** The frames across the vehicle of one stage, each with its own welds. */
export interface MapFrames {
  readonly stage: string;
  readonly stageName: string;
  readonly frames: readonly (CrossFrame & { readonly points: readonly WeldPoint[] })[];
}

interface Home {
  readonly stage: string;
  readonly order: number;
  readonly group: Group;
  readonly frame: CrossFrame | undefined;
}

/**
 * Each weld goes to the view in which the later of its two parts is drawn: the view of the weld's own stage where one of the parts
 * belongs to it. Welds within a frame across the vehicle go to that frame, where they do not hide each other.
 */
export function mapViews(
  model: Model,
  points: readonly WeldPoint[],
): { readonly views: readonly MapView[]; readonly frames: readonly MapFrames[] } {
  const shell = shellExtent(model);
  const stages = stagesOf(model).map((stage) => ({ ...stage, groups: groupsOf(stage.members, model, shell) }));
  const homes = new Map<string, Home>();
  stages.forEach(({ stage, groups }, order) => {
    for (const group of groups)
      for (const member of group.members)
        homes.set(member.id, { stage, order, group, frame: group.crossFrames.find((one) => one.members.includes(member)) });
  });
  const chosen = new Map(points.map((point) => [point, homeOf(point, homes)]));
  const byId = new Map(model.shell.members.map((member) => [member.id, member]));
  const views = stages.flatMap(({ stage, name, groups }) =>
    groups.flatMap((group): readonly MapView[] => {
      const own = points.filter((point) => chosen.get(point)?.group === group && !chosen.get(point)?.frame);
      if (own.length === 0) return [];
      const ids = new Set(own.flatMap((point) => point.pair));
      const joined = [...ids].flatMap((id) => byId.get(id) ?? []).filter((member) => !group.members.includes(member));
      return [{ stage, stageName: name, name: group.name, view: group.view, points: own, members: group.members, joined }];
    }),
  );
  const frames = stages.flatMap(({ stage, name, groups }): readonly MapFrames[] => {
    const across = groups
      .flatMap((group) => group.crossFrames)
      .map((frame) => ({ ...frame, points: points.filter((point) => chosen.get(point)?.frame === frame) }))
      .filter((frame) => frame.points.length > 0);
    return across.length > 0 ? [{ stage, stageName: name, frames: across }] : [];
  });
  return { views, frames };
}

function homeOf({ weld, pair }: WeldPoint, homes: ReadonlyMap<string, Home>): Home | undefined {
  const found = pair.flatMap((id) => homes.get(id) ?? []);
  const [first, second] = found;
  if (!first) return undefined;
  if (second && first.frame !== undefined && first.frame === second.frame) return first;
  const own = found.filter((home) => home.stage === weld.stage);
  const later = (own.length > 0 ? own : found).reduce((best, home) => (home.order > best.order ? home : best));
  return { ...later, frame: undefined };
}

/** Those of a view's members that show within a part of it. */
export function membersWithin(map: MapView, bounds: Rect, model: Model): Pick<MapView, 'members' | 'joined'> {
  const shows = (member: Member): boolean => overlaps(viewBounds(map.view, memberCorners(member, model.library)), bounds);
  return { members: map.members.filter(shows), joined: map.joined.filter(shows) };
}
