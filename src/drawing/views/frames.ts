import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Facing, Member } from '../../model/structure.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { type Extent, extentCorners, shellExtent, viewBounds } from '../extent.js';
import { clipMarks, type Part, partsOf } from '../halves.js';
import { memberContext, memberEdges, memberMarks } from '../marks/structure.js';
import { nearness, VIEW_OF_FACE, VIEWS, type View } from '../projection.js';
import { grow } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { memberCorners, middleOf } from '../visibility.js';
import { type CrossFrame, crossFrameDrawings, crossFrames, topOf } from './cross-frames.js';
import { memberWish } from './member-wish.js';

/** A group of fewer members than this is drawn with the rest of its stage. */
const SMALLEST_GROUP = 4;
/** How far inside a face a member's middle may lie to belong to it, mm. */
const FACE_DEPTH_MM = 300;

interface Group {
  readonly name: string;
  readonly view: View;
  readonly members: readonly Member[];
  readonly crossFrames: readonly CrossFrame[];
  /** Drawn pale around the members, so that a few odd ones are found. */
  readonly around: readonly Member[];
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

function groups(members: readonly Member[], model: Model, whole: Extent): readonly Group[] {
  const shell = besides(members, model, whole);
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
    if (own.length >= SMALLEST_GROUP) {
      const level = face === 'up' || face === 'down';
      found.push({
        name,
        view: face === 'down' ? VIEWS.plan : VIEW_OF_FACE[face],
        members: own,
        crossFrames: level ? crossFrames(own, model) : [],
        around: [],
      });
    } else rest.push(...own);
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

function frames(
  model: Model,
  stage: string,
  stageName: string,
  group: Group,
  sheet: SheetSize,
  options: DrawingOptions,
): readonly Drawing[] {
  const corners = [...group.members, ...group.around].flatMap((member) => memberCorners(member, model.library));
  const parts = partsOf(viewBounds(group.view, corners), group.members.length, group.view.front);
  return [
    ...parts.map((part) => frame(model, { stage, stageName, group, part }, sheet, options)),
    ...crossFrameDrawings(model, { stage, stageName, frames: group.crossFrames }, sheet, options),
  ];
}

interface FrameOf {
  readonly stage: string;
  readonly stageName: string;
  readonly group: Group;
  readonly part: Part;
}

function frame(model: Model, { stage, stageName, group, part }: FrameOf, sheet: SheetSize, options: DrawingOptions): Drawing {
  const count = group.members.length;
  // What stands in a cross frame has its id there: from above its parts hide each other.
  const inFrames = new Set(group.crossFrames.flatMap((one) => one.members));
  const tops = new Set(group.crossFrames.map((one) => topOf(one, model)));
  const labelled = group.members.filter((member) => !inFrames.has(member) || tops.has(member));
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
      marks: clipMarks(
        [...memberContext(group.around, model.library, port), ...memberMarks(group.members, model.library, port, true)],
        grow(port.frame, 0.5),
      ),
      wishes: labelled.flatMap((member) => memberWish(member, model, port)),
      notes: [
        group.view === VIEWS.plan ? 'Right (kerb) side up.' : '',
        group.crossFrames.length > 0
          ? 'Frames across the vehicle: each is named by its top member here; its parts are on the sheets that follow.'
          : '',
      ].filter(Boolean),
      rest: 'in the member schedule',
    },
    options,
  );
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
