import type { Assessment } from '../../assess.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Facing, Member, Panel } from '../../model/structure.js';
import { length } from '../../quantity/format.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { acrossDimension, uprightDimension } from '../dimensions.js';
import { type Extent, extentCorners, groundZMm, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { axleWishes, chassisEnd, chassisPlan, chassisSide, TYRE_NOTE } from '../marks/chassis.js';
import { componentMarks, middleMarks, wishFor } from '../marks/equipment.js';
import { openingMarks } from '../marks/openings.js';
import { panelAnchor, panelMark, panelsOfFace } from '../marks/panels.js';
import { memberContext, memberHidden, memberMarks } from '../marks/structure.js';
import { nearness, VIEW_OF_FACE, VIEWS } from '../projection.js';
import type { Mark } from '../scene.js';
import { layOut, type Port, type SheetSize } from '../sheet.js';
import { memberCorners } from '../visibility.js';

/** Members further in than this from an outside face are not shown dashed behind it, mm. */
const WALL_DEPTH_MM = 250;
/** The same for floor and roof, which are deeper. */
const FLOOR_DEPTH_MM = 400;

interface Sheet {
  readonly a: Assessment;
  readonly model: Model;
  readonly shell: Extent;
  readonly vehicle: Extent;
  readonly sheet: SheetSize;
  readonly options: DrawingOptions;
}

/** Plan at floor, roof plan, left, right, front, rear, underside: the whole shell to scale with its main dimensions. */
export function generalArrangement(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  const { model } = a;
  const all: Sheet = { a, model, shell: shellExtent(model), vehicle: vehicleExtent(model), sheet, options };
  return [
    floorPlan(all),
    outside(all, 'up', 'Roof plan'),
    outside(all, 'left', 'Left side'),
    outside(all, 'right', 'Right side'),
    outside(all, 'front', 'Front'),
    outside(all, 'rear', 'Rear'),
    outside(all, 'down', 'Underside'),
  ];
}

const DIMENSION_ROOM = { sideMm: 12, aboveMm: 12, belowMm: 20, mostMm: 30 } as const;

function floorPlan({ model, shell, vehicle, sheet, options }: Sheet): Drawing {
  const layout = layOut([{ view: VIEWS.plan, bounds: viewBounds(VIEWS.plan, extentCorners(vehicle)) }], sheet, DIMENSION_ROOM);
  const port = layout.ports[0] as Port;
  const { below, cut } = cutAt(model, (shell.low[2] + shell.high[2]) / 2);
  const marks: Mark[] = [...chassisPlan(model, vehicle, port), ...memberContext(below, model.library, port)];
  for (const mark of memberMarks(cut, model.library, port, false)) {
    marks.push(mark.kind === 'shape' ? { ...mark, layer: 'outlines', pen: 'member-cut' } : mark);
  }
  const wishes: LabelWish[] = [...axleWishes(model, port, (x) => [x, vehicle.low[1], 0])];
  for (const component of model.shell.components) {
    // Without a size it is a mass somewhere (paint, insulation), not a thing to find on a plan.
    if (!component.sizeMm || component.at[2] > shell.high[2] - 100) continue;
    marks.push(...componentMarks(component, port));
    wishes.push(wishFor(component.name, component.id, port.place(component.at), 30));
  }
  for (const seat of model.shell.seats) {
    marks.push(...middleMarks(port.place(seat.at), seat.id));
    wishes.push(wishFor(`seat ${seat.id}`, seat.id, port.place(seat.at), 35));
  }
  marks.push(...lengthDimensions(model, shell, port), ...acrossWidth(model, shell, port));
  return compose(
    {
      id: 'ga-plan',
      title: 'Plan at floor',
      alt: altText(model, 'plan seen from above, cut at half height, front to the left and the right (kerb) side up'),
      ...layout,
      front: 'left',
      units: model.shop.units,
      marks,
      wishes,
      notes: [model.shell.chassis.axles.length > 0 ? TYRE_NOTE : '', 'Right (kerb) side up.'].filter(Boolean),
      rest: 'in the component list',
    },
    options,
  );
}

/** Members that the cutting plane goes through, and those wholly below it. */
function cutAt(model: Model, zMm: number): { readonly below: readonly Member[]; readonly cut: readonly Member[] } {
  const below: Member[] = [];
  const cut: Member[] = [];
  for (const member of model.shell.members) {
    const heights = memberCorners(member, model.library).map((corner) => corner[2]);
    if (Math.max(...heights) <= zMm) below.push(member);
    else if (Math.min(...heights) < zMm) cut.push(member);
  }
  return { below, cut };
}

const FACE_IDS: Readonly<Record<Facing, string>> = {
  up: 'ga-roof',
  down: 'ga-underside',
  left: 'ga-left',
  right: 'ga-right',
  front: 'ga-front',
  rear: 'ga-rear',
};

function outside(all: Sheet, face: Facing, title: string): Drawing {
  const { model, shell, vehicle, sheet, options } = all;
  const view = VIEW_OF_FACE[face];
  const side = face === 'left' || face === 'right';
  const layout = layOut([{ view, bounds: viewBounds(view, extentCorners(vehicle)) }], sheet, DIMENSION_ROOM);
  const port = layout.ports[0] as Port;
  const panels = panelsOfFace(model.shell.panels, face, shell);
  const marks: Mark[] = [
    ...chassisMarks(all, face, port),
    ...panels.map((panel) => panelMark(panel, port, undefined, panel.panelKind === 'access')),
    ...(panels.length > 0 ? memberHidden : memberContext)(nearFace(model, shell, face), model.library, port),
  ];
  const wishes: LabelWish[] = panels.filter((panel) => panel.panelKind === 'access').map((panel) => accessWish(panel, port));
  const openings = openingMarks(model, face, port);
  marks.push(...openings.marks);
  wishes.push(...openings.wishes);
  for (const component of model.shell.components) {
    if (!component.sizeMm || face !== 'up' || component.at[2] < shell.high[2] - 150) continue;
    marks.push(...componentMarks(component, port));
    wishes.push(wishFor(component.name, component.id, port.place(component.at), 30));
  }
  if (side) wishes.push(...axleWishes(model, port, (x) => [x, 0, groundZMm(model)]));
  if (side) marks.push(...lengthDimensions(model, shell, port), ...heightDimensions(model, shell, port));
  else if (face === 'front' || face === 'rear') marks.push(...endDimensions(model, shell, port));
  else marks.push(...lengthDimensions(model, shell, port), ...acrossWidth(model, shell, port));
  const where =
    face === 'up' ? 'seen from above' : face === 'down' ? 'seen from below, the left side up' : `${face} seen from outside`;
  return compose(
    {
      id: FACE_IDS[face],
      title,
      alt: altText(
        model,
        `${where}, with ${panels.length} panels, ${openings.marks.length > 0 ? 'openings, ' : ''}and the main dimensions`,
      ),
      ...layout,
      front: view.front,
      units: model.shop.units,
      marks,
      wishes,
      notes: outsideNotes(model, face, panels),
      rest: 'in the panel schedule',
    },
    options,
  );
}

function outsideNotes(model: Model, face: Facing, panels: readonly Panel[]): readonly string[] {
  const notes: string[] = [];
  if (face === 'up') notes.push('Right (kerb) side up.');
  if (face === 'down') notes.push('Seen from below: left side up.');
  if (panels.length > 0) notes.push('Dashed: members behind the skin.');
  else notes.push('No panel of this face is on record: members shown.');
  if (model.shell.chassis.axles.length > 0 && face !== 'up') notes.push(TYRE_NOTE);
  return notes;
}

function chassisMarks({ model, vehicle }: Sheet, face: Facing, port: Port): readonly Mark[] {
  if (face === 'up') return [];
  if (face === 'down') return chassisPlan(model, vehicle, port);
  if (face === 'left' || face === 'right') return chassisSide(model, vehicle, port);
  return chassisEnd(model, vehicle, port, face);
}

export const accessWish = (panel: Panel, port: Port): LabelWish => ({
  text: panel.id,
  anchor: panelAnchor(panel, port),
  style: 'id-strong',
  priority: 70,
  id: panel.id,
  centred: true,
});

/** Members that lie wholly or partly within the wall, floor or roof of a face. */
export function nearFace(model: Model, shell: Extent, face: Facing): readonly Member[] {
  const view = VIEW_OF_FACE[face];
  const outer = Math.max(...extentCorners(shell).map((corner) => nearness(view, corner)));
  const reach = face === 'up' || face === 'down' ? FLOOR_DEPTH_MM : WALL_DEPTH_MM;
  return model.shell.members.filter((member) => {
    const depths = memberCorners(member, model.library).map((corner) => nearness(view, corner));
    return depths.reduce((sum, depth) => sum + depth, 0) / depths.length > outer - reach;
  });
}

/** Overall length above, axle spacings below. */
function lengthDimensions(model: Model, shell: Extent, port: Port): readonly Mark[] {
  const units = model.shop.units;
  const x = (at: number): number => port.place([at, 0, 0])[0];
  const marks: Mark[] = [];
  const [low, high] = [x(shell.low[0]), x(shell.high[0])].sort((p, q) => p - q) as [number, number];
  const overall = shell.high[0] - shell.low[0];
  marks.push(...acrossDimension(low, high, port.frame.y0 - 6, port.frame.y0, length(overall, units)));
  const stations = model.shell.chassis.axles.map((axle) => axle.xMm);
  const y = port.frame.y1 + 9;
  for (let i = 1; i < stations.length; i++) {
    const [from, to] = [stations[i - 1] as number, stations[i] as number];
    const [x0, x1] = [x(from), x(to)].sort((p, q) => p - q) as [number, number];
    const words = length(to - from, units);
    // A short tandem spacing under both unit systems would run into its neighbour: it steps down.
    marks.push(...acrossDimension(x0, x1, y + ((i - 1) % 2) * 5, port.frame.y1, words));
  }
  return marks;
}

function acrossWidth(model: Model, shell: Extent, port: Port): readonly Mark[] {
  const y = [port.place([0, shell.low[1], 0])[1], port.place([0, shell.high[1], 0])[1]].sort((p, q) => p - q) as [number, number];
  return uprightDimension(y[0], y[1], port.frame.x1 + 6, port.frame.x1, length(shell.high[1] - shell.low[1], model.shop.units));
}

function heightDimensions(model: Model, shell: Extent, port: Port): readonly Mark[] {
  const units = model.shop.units;
  const y = (z: number): number => port.place([0, 0, z])[1];
  const marks = [
    ...uprightDimension(
      y(shell.high[2]),
      y(shell.low[2]),
      port.frame.x1 + 6,
      port.frame.x1,
      length(shell.high[2] - shell.low[2], units),
    ),
  ];
  if (model.shell.chassis.frame.railTopAboveGroundMm === undefined) return marks;
  const ground = groundZMm(model);
  marks.push(
    ...uprightDimension(y(shell.high[2]), y(ground), port.frame.x0 - 6, port.frame.x0, length(shell.high[2] - ground, units)),
  );
  return marks;
}

function endDimensions(model: Model, shell: Extent, port: Port): readonly Mark[] {
  const corner = (y: number): Vec3 => [0, y, 0];
  const [x0, x1] = [port.place(corner(shell.low[1]))[0], port.place(corner(shell.high[1]))[0]].sort((p, q) => p - q) as [
    number,
    number,
  ];
  const width = length(shell.high[1] - shell.low[1], model.shop.units);
  return [...acrossDimension(x0, x1, port.frame.y0 - 6, port.frame.y0, width), ...heightDimensions(model, shell, port)];
}

const altText = (model: Model, what: string): string => `Shell ${model.shell.id}: ${what}.`;
