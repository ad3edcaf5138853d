import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Facing, Member } from '../../model/structure.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { memberContext, memberMarks } from '../marks/structure.js';
import { nearness, VIEW_OF_FACE, VIEWS, type View } from '../projection.js';
import type { Point } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { memberCorners, middleOf, silhouette } from '../visibility.js';

/** A group of fewer members than this is drawn with the rest of its stage. */
const SMALLEST_GROUP = 4;
/** How far inside a face a member's middle may lie to belong to it, mm. */
const FACE_DEPTH_MM = 300;

interface Group {
  readonly name: string;
  readonly view: View;
  readonly members: readonly Member[];
}

/**
 * Structure by stage: a pictorial of what the stage adds, then each face of the shell that it adds to, seen square on and
 * with every member's id.
 */
export function frameDrawings(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  const { model } = a;
  const shell = shellExtent(model);
  const drawings: Drawing[] = [];
  const before: Member[] = [];
  for (const [stage, name, members] of stages(model)) {
    drawings.push(pictorial(model, { stage, name, members, before }, sheet, options));
    for (const group of groups(members, model, shell)) drawings.push(frame(model, stage, name, group, sheet, options));
    before.push(...members);
  }
  return drawings;
}

/** Stage id, printed name and members, in build order; members without a stage come last. */
function stages(model: Model): readonly (readonly [string, string, readonly Member[]])[] {
  const known = model.library.stages.map((stage) => stage.id);
  const used = [...new Set(model.shell.members.map((member) => member.stage ?? ''))];
  const order = [...known, ...used.filter((stage) => stage !== '' && !known.includes(stage)), ''];
  return order.flatMap((stage) => {
    const members = model.shell.members.filter((member) => (member.stage ?? '') === stage);
    const name = stage === '' ? 'Stage not recorded' : (model.library.stages.find(({ id }) => id === stage)?.name ?? stage);
    return members.length > 0 ? [[stage === '' ? 'none' : stage, name, members] as const] : [];
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

function groups(members: readonly Member[], model: Model, shell: Extent): readonly Group[] {
  const byFace = new Map<Facing | 'inside', Member[]>();
  for (const member of members) {
    const face = faceOfMember(member, model, shell);
    byFace.set(face, [...(byFace.get(face) ?? []), member]);
  }
  const rest = [...(byFace.get('inside') ?? [])];
  const found: Group[] = [];
  for (const [face, name] of GROUPS) {
    const own = byFace.get(face) ?? [];
    if (own.length >= SMALLEST_GROUP) found.push({ name, view: face === 'down' ? VIEWS.plan : VIEW_OF_FACE[face], members: own });
    else rest.push(...own);
  }
  if (rest.length > 0)
    found.push({ name: found.length > 0 ? 'other members' : 'plan', view: flattest(rest, model), members: rest });
  return found;
}

/** Floor and roof first: a crossmember's middle is far from the walls, a post's far from the floor. */
function faceOfMember(member: Member, model: Model, shell: Extent): Facing | 'inside' {
  const middle = middleOf(memberCorners(member, model.library));
  const corners = extentCorners(shell);
  let best: Facing | 'inside' = 'inside';
  let bestIn = FACE_DEPTH_MM;
  for (const [face] of GROUPS) {
    const view = VIEW_OF_FACE[face];
    const inside = Math.max(...corners.map((corner) => nearness(view, corner))) - nearness(view, middle);
    if (inside < bestIn) {
      bestIn = inside;
      best = face;
    }
  }
  return best;
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

function frame(model: Model, stage: string, stageName: string, group: Group, sheet: SheetSize, options: DrawingOptions): Drawing {
  const corners = group.members.flatMap((member) => memberCorners(member, model.library));
  const layout = layOut([{ view: group.view, bounds: viewBounds(group.view, corners) }], sheet, {
    sideMm: 12,
    aboveMm: 10,
    belowMm: 10,
    mostMm: 42,
  });
  const port = layout.ports[0] as Port;
  const count = group.members.length;
  return compose(
    {
      id: `frame-${stage}-${group.name.replaceAll(' ', '-')}`,
      title: `${stageName}: ${group.name}`,
      alt: `${stageName}, ${group.name}, ${group.view.name} view: ${count} ${count === 1 ? 'member' : 'members'} drawn as solids, each with its id.`,
      ...layout,
      front: group.view.front,
      units: model.shop.units,
      marks: memberMarks(group.members, model.library, port, true),
      wishes: group.members.flatMap((member) => memberWish(member, model, port)),
      notes: group.view === VIEWS.plan ? ['Right (kerb) side up.'] : [],
      rest: 'in the member schedule',
    },
    options,
  );
}

/** On the member itself where it is the larger; small parts come first, for their room is scarcest. */
function memberWish(member: Member, model: Model, port: Port): readonly LabelWish[] {
  const solid = silhouette(member, model.library, port.view);
  if (!solid) return [];
  const ring = solid.ring.map(port.placeFlat);
  const anchor: Point = [
    ring.reduce((sum, point) => sum + point[0], 0) / ring.length,
    ring.reduce((sum, point) => sum + point[1], 0) / ring.length,
  ];
  return [{ text: member.id, anchor, style: 'id', priority: 30, id: member.id }];
}

interface StageOf {
  readonly stage: string;
  readonly name: string;
  readonly members: readonly Member[];
  readonly before: readonly Member[];
}

function pictorial(model: Model, { stage, name, members, before }: StageOf, sheet: SheetSize, options: DrawingOptions): Drawing {
  const view = VIEWS.pictorial;
  const corners: readonly Vec3[] = [...before, ...members].flatMap((member) => memberCorners(member, model.library));
  const half = { widthMm: sheet.widthMm, heightMm: Math.min(sheet.heightMm, sheet.widthMm * 0.75) };
  const layout = layOut([{ view, bounds: viewBounds(view, corners) }], half, { sideMm: 3, aboveMm: 2, belowMm: 2, mostMm: 2 });
  const port = layout.ports[0] as Port;
  const { reduction: _reduction, ...placed } = layout;
  return compose(
    {
      id: `frame-${stage}-pictorial`,
      title: `${name}: what this stage adds`,
      alt: `${name}, seen from the front left and above: ${members.length} members of this stage in dark lines over ${before.length} of the stages before.`,
      ...placed,
      front: 'left',
      units: model.shop.units,
      marks: [...memberContext(before, model.library, port), ...memberMarks(members, model.library, port, false)],
      wishes: [],
      notes: [`Isometric, not to scale. Dark: ${name}.${before.length > 0 ? ' Pale: earlier stages.' : ''}`],
    },
    options,
  );
}
