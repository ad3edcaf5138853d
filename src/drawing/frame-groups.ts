import type { Model } from '../model/shell.js';
import type { Facing, Member } from '../records/index.js';
import { type Extent, extentCorners, shellExtent } from './extent.js';
import { nearness, VIEW_OF_FACE, VIEWS, type View } from './projection.js';
import { type CrossFrame, crossFrames } from './views/cross-frames.js';
import { memberCorners, middleOf } from './visibility.js';

/** Members as they are drawn together: by stage, and within it by the face of the shell that they stand in. */

/** A group of fewer members than this is drawn with the rest of its stage. */
const SMALLEST_GROUP = 4;
/** How far inside a face a member's middle may lie to belong to it, mm. */
const FACE_DEPTH_MM = 300;

export interface Group {
  readonly name: string;
  readonly view: View;
  readonly members: readonly Member[];
  readonly crossFrames: readonly CrossFrame[];
  /** Drawn pale around the members, so that a few odd ones are found. */
  readonly around: readonly Member[];
}

export interface StageOf {
  readonly stage: string;
  readonly name: string;
  readonly members: readonly Member[];
}

/** Stages that have members, in build order; members without a stage come last. */
export function stagesOf(model: Model): readonly StageOf[] {
  const known = model.library.stages.map((stage) => stage.id);
  const used = [...new Set(model.shell.members.map((member) => member.stage ?? ''))];
  const order = [...known, ...used.filter((stage) => stage !== '' && !known.includes(stage)), ''];
  return order.flatMap((stage) => {
    const members = model.shell.members.filter((member) => (member.stage ?? '') === stage);
    const name = stage === '' ? 'Stage not recorded' : (model.library.stages.find(({ id }) => id === stage)?.name ?? stage);
    return members.length > 0 ? [{ stage: stage === '' ? 'none' : stage, name, members }] : [];
  });
}

const GROUPS: readonly (readonly [Facing, string])[] = [
  ['left', 'left wall'],
  ['right', 'right wall'],
  ['front', 'front'],
  ['rear', 'rear'],
  ['up', 'roof'],
  ['down', 'floor and below'],
];

/** The members of one stage by the face that they stand in; those in none, and groups too small for a drawing, together. */
export function groupsOf(members: readonly Member[], model: Model, whole: Extent): readonly Group[] {
  const shell = besides(members, model, whole);
  const faces = new Map(members.map((member) => [member, facesOfMember(member, model, shell)]));
  const count = (face: Facing): number => [...faces.values()].filter((near) => near.includes(face)).length;
  const chosen = chosenFaces(members, faces, count);
  const found: Group[] = [];
  const rest = members.filter((member) => chosen.get(member) === undefined);
  for (const [face, name] of GROUPS) {
    const own = members.filter((member) => chosen.get(member) === face);
    if (own.length > 0) {
      const level = face === 'up' || face === 'down';
      found.push({
        name,
        view: face === 'down' ? VIEWS.plan : VIEW_OF_FACE[face],
        members: own,
        crossFrames: level ? crossFrames(own, model) : [],
        around: [],
      });
    }
  }
  if (rest.length > 0)
    found.push({
      name: found.length > 0 ? 'other members' : 'all members',
      view: flattest(rest, model),
      members: rest,
      crossFrames: [],
      around: members.filter((member) => !rest.includes(member)),
    });
  return found;
}

/**
 * The face that each member is drawn in. A top rail lies in its wall and in the roof: it goes where more of its stage goes. Where
 * too few go to a face for a drawing, they go to another of theirs, or to none.
 */
function chosenFaces(
  members: readonly Member[],
  faces: ReadonlyMap<Member, readonly Facing[]>,
  count: (face: Facing) => number,
): ReadonlyMap<Member, Facing | undefined> {
  let open = GROUPS.map(([face]) => face);
  for (;;) {
    const chosen = new Map(
      members.map((member) => [
        member,
        (faces.get(member) ?? [])
          .filter((face) => open.includes(face))
          .reduce<Facing | undefined>((best, face) => (best === undefined || count(face) > count(best) ? face : best), undefined),
      ]),
    );
    const size = (face: Facing): number => [...chosen.values()].filter((one) => one === face).length;
    const few = open.filter((face) => size(face) > 0 && size(face) < SMALLEST_GROUP).sort((a, b) => size(a) - size(b))[0];
    if (few === undefined) return chosen;
    open = open.filter((face) => face !== few);
  }
}

/** As long and wide as the stage itself, as high as the shell: a wall may stand back from the end of the subframe. */
function besides(members: readonly Member[], model: Model, shell: Extent): Extent {
  const own = shellExtent({ ...model, shell: { ...model.shell, members, panels: [] } });
  return { low: [own.low[0], own.low[1], shell.low[2]], high: [own.high[0], own.high[1], shell.high[2]] };
}

/** The faces of the shell near which a member's middle lies. */
function facesOfMember(member: Member, model: Model, shell: Extent): readonly Facing[] {
  const middle = middleOf(memberCorners(member, model.library));
  const corners = extentCorners(shell);
  return GROUPS.flatMap(([face]) => {
    const view = VIEW_OF_FACE[face];
    const inside = Math.max(...corners.map((corner) => nearness(view, corner))) - nearness(view, middle);
    return inside < FACE_DEPTH_MM ? [face] : [];
  });
}

/** Of plan, side and front: the one that looks along the least spread of the members' middles. */
function flattest(members: readonly Member[], model: Model): View {
  const middles = members.map((member) => middleOf(memberCorners(member, model.library)));
  const spread = (view: View): number => {
    const depths = middles.map((middle) => nearness(view, middle));
    return Math.max(...depths) - Math.min(...depths);
  };
  return [VIEWS.plan, VIEWS.left, VIEWS.front].reduce((best, view) => (spread(view) < spread(best) - 1 ? view : best));
}
