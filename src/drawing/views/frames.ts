import type { Assessment } from '../../assess.js';
import { lerp, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Facing, Member } from '../../model/structure.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import { clipMarks, type Part, partsOf } from '../halves.js';
import type { LabelWish } from '../labels.js';
import { memberContext, memberEdges, memberMarks } from '../marks/structure.js';
import { nearness, VIEW_OF_FACE, VIEWS, type View } from '../projection.js';
import { grow, holds, type Point } from '../scene.js';
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
    for (const group of groups(members, model, shell)) drawings.push(...frames(model, stage, name, group, sheet, options));
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
  const faces = new Map(members.map((member) => [member, facesOfMember(member, model, shell)]));
  const count = (face: Facing): number => [...faces.values()].filter((near) => near.includes(face)).length;
  // A top rail lies in its wall and in the roof: it goes where more of its stage goes.
  const chosen = new Map(
    members.map((member) => [
      member,
      (faces.get(member) ?? []).reduce<Facing | undefined>(
        (best, face) => (best === undefined || count(face) > count(best) ? face : best),
        undefined,
      ),
    ]),
  );
  const found: Group[] = [];
  const rest: Member[] = members.filter((member) => chosen.get(member) === undefined);
  for (const [face, name] of GROUPS) {
    const own = members.filter((member) => chosen.get(member) === face);
    if (own.length >= SMALLEST_GROUP) found.push({ name, view: face === 'down' ? VIEWS.plan : VIEW_OF_FACE[face], members: own });
    else rest.push(...own);
  }
  if (rest.length > 0)
    found.push({ name: found.length > 0 ? 'other members' : 'all members', view: flattest(rest, model), members: rest });
  return found;
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

function frames(
  model: Model,
  stage: string,
  stageName: string,
  group: Group,
  sheet: SheetSize,
  options: DrawingOptions,
): readonly Drawing[] {
  const corners = group.members.flatMap((member) => memberCorners(member, model.library));
  const whole = viewBounds(group.view, corners);
  return partsOf(whole, group.members.length, group.view.front).map((part) =>
    frame(model, { stage, stageName, group, part }, sheet, options),
  );
}

interface FrameOf {
  readonly stage: string;
  readonly stageName: string;
  readonly group: Group;
  readonly part: Part;
}

function frame(model: Model, { stage, stageName, group, part }: FrameOf, sheet: SheetSize, options: DrawingOptions): Drawing {
  const count = group.members.length;
  const size = { widthMm: sheet.widthMm, heightMm: Math.min(sheet.heightMm, Math.max(90, 60 + 3.5 * count)) };
  const mostMm = Math.min(40, 10 + 0.5 * count);
  const layout = layOut([{ view: group.view, bounds: part.bounds }], size, { sideMm: 12, aboveMm: 8, belowMm: 8, mostMm });
  const port = layout.ports[0] as Port;
  const half = part.suffix === '' ? '' : `, ${part.suffix}`;
  return compose(
    {
      id: `frame-${stage}-${group.name}${half}`.replaceAll(/[ ,]+/gu, '-'),
      title: `${stageName}: ${group.name}${half}`,
      alt: `${stageName}, ${group.name}${half}, ${group.view.name} view: ${count} ${count === 1 ? 'member' : 'members'} drawn as solids, each with its id.`,
      ...layout,
      front: group.view.front,
      units: model.shop.units,
      marks: clipMarks(memberMarks(group.members, model.library, port, true), grow(port.frame, 0.5)),
      wishes: group.members.flatMap((member) => memberWish(member, model, port)),
      notes: group.view === VIEWS.plan ? ['Right (kerb) side up.'] : [],
      rest: 'in the member schedule',
    },
    options,
  );
}

/** Where along a member its id may stand, the middle first. */
const ALONG = [0.5, 0.38, 0.62, 0.25, 0.75, 0.12, 0.88] as const;

function memberWish(member: Member, model: Model, port: Port): readonly LabelWish[] {
  const solid = silhouette(member, model.library, port.view);
  if (!solid) return [];
  const { shape } = member;
  const middle = solid.ring.map(port.placeFlat);
  const places: readonly Point[] =
    shape.kind === 'line'
      ? ALONG.map((share) => port.place(lerp(shape.from, shape.to, share)))
      : [
          [
            middle.reduce((sum, point) => sum + point[0], 0) / middle.length,
            middle.reduce((sum, point) => sum + point[1], 0) / middle.length,
          ],
        ];
  const [anchor, ...also] = places.filter((place) => holds(port.frame, place));
  return anchor ? [{ text: member.id, anchor, also, style: 'id', priority: 30, id: member.id }] : [];
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
      marks: [...memberContext(before, model.library, port), ...memberEdges(members, model.library, port)],
      wishes: [],
      notes: [`Isometric, not to scale. Dark: ${name}.${before.length > 0 ? ' Pale: earlier stages.' : ''}`],
    },
    options,
  );
}
