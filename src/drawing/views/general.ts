import type { Assessment } from '../../assess.js';
import type { Solid } from '../../compute/access/standing.js';
import { outOf, type Surface, surfacesInOrder, surfaceWords } from '../../compute/access/surfaces.js';
import { add, dot, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { length, lengthUp } from '../../quantity/format.js';
import { overallSizes, solidsIn } from '../../query/shown.js';
import type { Facing, Member, Panel } from '../../records/index.js';
import { readerOf } from '../../words/index.js';
import { compose, type Drawing, type DrawingOptions } from '../compose.js';
import { acrossDimension, uprightDimension } from '../dimensions.js';
import { type Extent, extentCorners, groundZMm, shellExtent, vehicleExtent, viewBounds } from '../extent.js';
import type { LabelWish } from '../labels.js';
import { axleWishes, chassisEnd, chassisNote, chassisPlan, chassisSide } from '../marks/chassis.js';
import { componentMarks, middleMarks, wishFor } from '../marks/equipment.js';
import { openingMarks } from '../marks/openings.js';
import { outsideOf, panelAnchor, panelMark, panelMiddle, panelsOfSurface } from '../marks/panels.js';
import { shellBox } from '../marks/shell-box.js';
import { memberContext, memberHidden, memberMarks } from '../marks/structure.js';
import { membersNearFace } from '../near-face.js';
import { convexHull } from '../outline.js';
import { nearness, project, VIEW_OF_FACE, VIEWS, type View, viewOfSurface } from '../projection.js';
import { type Mark, type Point, rectArea, textMark } from '../scene.js';
import { type Layout, layOut, type Port, type SheetSize, type ViewRequest } from '../sheet.js';
import { boxCorners, memberCorners } from '../visibility.js';
import { phraseFor, wordsFor } from '../wording.js';
import { openingsOf, surfaceId, surfaceNote } from './panels.js';

interface Sheet {
  readonly a: Assessment;
  readonly model: Model;
  readonly shell: Extent;
  readonly vehicle: Extent;
  readonly sheet: SheetSize;
  readonly options: DrawingOptions;
}

/** What one view shows of the shell, drawn through its port. */
interface GeneralView {
  readonly id: string;
  readonly title: string;
  readonly view: View;
  readonly where: string;
  readonly notes: readonly string[];
  readonly rest: string;
  draw(port: Port): { readonly marks: readonly Mark[]; readonly wishes: readonly LabelWish[] };
}

/** Plan at floor, roof plan, left, right, front, rear, underside, then each surface from inside: to scale with the main dimensions. */
export function generalArrangement(a: Assessment, sheet: SheetSize, options: DrawingOptions = {}): Drawing[] {
  const { model } = a;
  const all: Sheet = { a, model, shell: shellExtent(model), vehicle: vehicleExtent(model), sheet, options };
  const pairs: readonly (readonly GeneralView[])[] = [
    [floorPlan(all), outside(all, 'up')],
    [outside(all, 'left'), outside(all, 'right')],
    [outside(all, 'front'), outside(all, 'rear')],
    [outside(all, 'down')],
    ...insidePairs(all),
  ];
  return pairs.flatMap((sights) => sheetsOf(all, sights));
}

const DIMENSION_ROOM = { sideMm: 12, aboveMm: 12, belowMm: 20, mostMm: 30 } as const;
/** The same, where a second view shares the sheet. */
const PAIR_ROOM = { sideMm: 12, aboveMm: 11, belowMm: 16, mostMm: 22 } as const;
/** Views share a sheet where that makes them no smaller than by the next scale of the series. */
const PAIR_SMALLER = 1.25;

/** Both views on one sheet, below or beside one another, where they stay large enough; else a sheet each. */
function sheetsOf(all: Sheet, sights: readonly GeneralView[]): readonly Drawing[] {
  const alone = sights.map((sight) => ({ sights: [sight], layout: layOut([request(all, sight)], all.sheet, DIMENSION_ROOM) }));
  if (sights.length > 1) {
    const requests = sights.map((sight) => request(all, sight));
    const both = [layOut(requests, all.sheet, PAIR_ROOM), besideOneAnother(requests, all.sheet)];
    const best = both.reduce((p, q) => (q.reduction < p.reduction ? q : p));
    const least = Math.min(...alone.map(({ layout }) => layout.reduction));
    if (best.reduction <= least * PAIR_SMALLER + 1e-9) return [drawn(all, sights, best)];
  }
  return alone.map((one) => drawn(all, one.sights, one.layout));
}

const request = ({ vehicle }: Sheet, { view }: GeneralView): ViewRequest => ({
  view,
  bounds: viewBounds(view, extentCorners(vehicle)),
});

/** Each in its own half of the sheet, at one scale. */
function besideOneAnother(requests: readonly ViewRequest[], sheet: SheetSize): Layout {
  const widthMm = sheet.widthMm / requests.length;
  const own = requests.map((one) => layOut([one], { ...sheet, widthMm }, PAIR_ROOM));
  const smallest = own.reduce((p, q) => (q.reduction > p.reduction ? q : p));
  const ports = requests.map(({ view, bounds }, index): Port => {
    const frame = (smallest.ports[0] as Port).frame;
    const x0 = widthMm * (index + 0.5) - (bounds.x1 - bounds.x0) / smallest.reduction / 2;
    const placeFlat = ([x, up]: Point): Point => [
      x0 + (x - bounds.x0) / smallest.reduction,
      frame.y0 + (bounds.y1 - up) / smallest.reduction,
    ];
    const [x1, y1] = placeFlat([bounds.x1, bounds.y0]);
    return { view, placeFlat, place: (at) => placeFlat(project(view, at)), frame: { x0, y0: frame.y0, x1, y1 } };
  });
  return { ...smallest, ports, widthMm: sheet.widthMm, room: { ...smallest.room, x1: sheet.widthMm - smallest.room.x0 } };
}

function drawn({ model, options }: Sheet, sights: readonly GeneralView[], layout: Layout): Drawing {
  const w = wordsFor(model);
  const joined = (words: readonly string[]): string => words.reduce((one, other) => w('drawn.and', { one, other }));
  const parts = sights.map((sight, index) => sight.draw(layout.ports[index] as Port));
  const marks = parts.flatMap((part) => part.marks);
  if (sights.length > 1) {
    const beside = (layout.ports[0] as Port).frame.y0 === (layout.ports[1] as Port).frame.y0;
    sights.forEach(({ title }, index) => {
      const { x0, x1, y0, y1 } = (layout.ports[index] as Port).frame;
      marks.push(
        beside
          ? textMark('labels', 'name-strong', [(x0 + x1) / 2, y1 + 5], title, { anchor: 'middle' })
          : textMark('labels', 'name-strong', [x0, y0 - 9], title),
      );
    });
  }
  const fronts = new Set(sights.map(({ view }) => view.front));
  return compose(
    {
      id: (sights[0] as GeneralView).id,
      title: joined(sights.map(({ title }, index) => (index === 0 ? title : title.toLowerCase()))),
      alt: w('drawn.ga.alt', { shell: model.shell.id, what: sights.map(({ where }) => where).join('; ') }),
      ...layout,
      ...(fronts.size === 1 ? { front: (sights[0] as GeneralView).view.front } : {}),
      units: model.shop.units,
      reader: readerOf(model.shop),
      marks,
      wishes: parts.flatMap((part) => part.wishes),
      notes: [...new Set(sights.flatMap(({ notes }) => notes))],
      rest: joined([...new Set(sights.map(({ rest }) => rest))]),
    },
    options,
  );
}

function floorPlan({ model, shell, vehicle }: Sheet): GeneralView {
  const w = wordsFor(model);
  const floor = panelsOfSurface(model, { side: 'floor', seenFrom: 'inside', faces: 'up' });
  return {
    id: 'ga-plan',
    title: w('drawn.ga.plan'),
    view: VIEWS.plan,
    where: w('drawn.ga.plan.where'),
    notes: [model.shell.chassis.axles.length > 0 ? chassisNote(model) : '', w('drawn.kerb.up')].filter(Boolean),
    rest: w('drawn.rest.components'),
    draw(port) {
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
        wishes.push(wishFor(w('drawn.seat', { id: seat.id }), seat.id, port.place(seat.at), 35));
      }
      for (const panel of floor) {
        marks.push(panelMark(panel, port));
        if (panel.panelKind === 'access') wishes.push(accessWish(panel, port));
      }
      marks.push(...lengthDimensions(model, shell, port), ...acrossWidth(model, shell, port));
      return { marks, wishes };
    },
  };
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

/** Left and right wall, front and rear, ceiling, partitions: those that have any sheet. The floor is on the plan. */
function insidePairs(all: Sheet): readonly (readonly GeneralView[])[] {
  const inside = surfacesInOrder(all.model).filter(({ seenFrom, side }) => seenFrom === 'inside' && side !== 'floor');
  const of = (...sides: readonly Surface['side'][]) =>
    inside.filter(({ side }) => sides.includes(side)).map((one) => fromInside(all, one));
  const partitions = of('partition');
  return [of('left', 'right'), of('front', 'rear'), of('ceiling'), ...partitions.map((one) => [one])].filter(
    (views) => views.length > 0,
  );
}

/** A lining as a person in the coach sees it: its sheets, the access panels in it, openings, and the equipment that stands before it. */
function fromInside({ model, shell }: Sheet, surface: Surface): GeneralView {
  const panels = panelsOfSurface(model, surface);
  const w = wordsFor(model);
  const words = phraseFor(model)(surfaceWords(surface));
  return {
    id: `ga-${surfaceId(surface)}`,
    title: `${words[0]?.toUpperCase()}${words.slice(1)}`,
    view: viewOfSurface(surface),
    where: w('drawn.ga.lining', { where: words, count: panels.length }),
    notes: [surfaceNote(surface, model), w('drawn.ga.before')],
    rest: w('drawn.rest.panels'),
    draw(port) {
      const wall = openingsOf(surface);
      const openings = wall ? openingMarks(model, wall, port) : { marks: [], wishes: [] };
      const before = standsBefore(model, shell, surface, panels);
      return {
        marks: [
          shellBox(shell, port, 'skin-line'),
          ...panels.map((panel) => panelMark(panel, port, undefined, panel.panelKind === 'access')),
          ...openings.marks,
          ...before.map(({ id, box }) => rectArea('hidden', 'hidden', convexHull(boxCorners(box).map(port.place)), id)),
          ...(surface.side === 'ceiling' ? lengthDimensions(model, shell, port) : []),
        ],
        wishes: [
          ...panels.filter(({ panelKind }) => panelKind === 'access').map((panel) => accessWish(panel, port)),
          ...openings.wishes,
          ...before.map((one) => wishFor(nameOf(one, model), one.id, port.place(one.box.center), 30)),
        ],
      };
    },
  };
}

/** A tank is called by its contents, in the reader's words; other things as the shop named them. */
const nameOf = ({ kind, name }: Solid, model: Model): string => (kind === 'tank' ? phraseFor(model)(name) : name);

/** Equipment and tanks this near to a lining are drawn before it, mm. */
const BEFORE_MM = 900;

function standsBefore(model: Model, shell: Extent, surface: Surface, panels: readonly Panel[]): readonly Solid[] {
  const out = outOf(surface);
  const plane = panels.reduce((most, panel) => Math.max(most, dot(out, panelMiddle(panel))), -Infinity);
  const isInside = ({ box: { center } }: Solid): boolean =>
    center.every((at, k) => at > (shell.low[k] as number) && at < (shell.high[k] as number));
  return solidsIn(model).filter((one) => {
    const { box } = one;
    const depths = boxCorners(box).map((corner) => dot(out, corner));
    return isInside(one) && Math.min(...depths) > plane - 25 && Math.min(...depths) < plane + BEFORE_MM;
  });
}

const FACE_IDS: Readonly<Record<Facing, string>> = {
  up: 'ga-roof',
  down: 'ga-underside',
  left: 'ga-left',
  right: 'ga-right',
  front: 'ga-front',
  rear: 'ga-rear',
};

function outside(all: Sheet, face: Facing): GeneralView {
  const { model } = all;
  const w = wordsFor(model);
  const panels = panelsOfSurface(model, outsideOf(face));
  return {
    id: FACE_IDS[face],
    title: w(`drawn.ga.${face}`),
    view: VIEW_OF_FACE[face],
    where: w('drawn.ga.count', { where: w(`drawn.ga.where.${face}`), count: panels.length }),
    notes: outsideNotes(model, face, panels),
    rest: w('drawn.rest.panels'),
    draw: (port) => outsideParts(all, face, panels, port),
  };
}

function outsideParts(all: Sheet, face: Facing, panels: readonly Panel[], port: Port): ReturnType<GeneralView['draw']> {
  const { model, shell } = all;
  const marks: Mark[] = [
    ...chassisMarks(all, face, port),
    ...panels.map((panel) => panelMark(panel, port, undefined, panel.panelKind === 'access')),
    ...(panels.length > 0 ? memberHidden : memberContext)(membersNearFace(model, shell, face), model.library, port),
  ];
  const wishes: LabelWish[] = panels.filter((panel) => panel.panelKind === 'access').map((panel) => accessWish(panel, port));
  const openings = openingMarks(model, face, port);
  marks.push(...openings.marks);
  wishes.push(...openings.wishes);
  for (const one of outsideSolids(model, shell, face)) {
    const { id, box } = one;
    marks.push(rectArea('equipment', 'equipment', convexHull(boxCorners(box).map(port.place)), id));
    wishes.push(wishFor(nameOf(one, model), id, port.place(box.center), 30));
  }
  const side = face === 'left' || face === 'right';
  if (side) wishes.push(...axleWishes(model, port, (x) => [x, 0, groundZMm(model)]));
  if (side) marks.push(...lengthDimensions(model, shell, port), ...heightDimensions(model, shell, port));
  else if (face === 'front' || face === 'rear') marks.push(...endDimensions(model, shell, port));
  else marks.push(...lengthDimensions(model, shell, port), ...acrossWidth(model, shell, port));
  return { marks, wishes };
}

/** Roof units, awnings, tanks and lockers where they hang: those that stand out of the shell, and that this face’s viewer sees. */
function outsideSolids(model: Model, shell: Extent, face: Facing): readonly Solid[] {
  const view = VIEW_OF_FACE[face];
  const middle = nearness(view, scale(add(shell.low, shell.high), 0.5));
  return solidsIn(model).filter(({ box, kind }) => {
    const corners = boxCorners(box);
    const standsOut = corners.some((corner) =>
      corner.some((at, k) => at < (shell.low[k] as number) || at > (shell.high[k] as number)),
    );
    if (kind === 'rail' || kind === 'cross member' || !standsOut) return false;
    return Math.max(...corners.map((corner) => nearness(view, corner))) > middle;
  });
}

function outsideNotes(model: Model, face: Facing, panels: readonly Panel[]): readonly string[] {
  const w = wordsFor(model);
  const notes: string[] = [];
  if (face === 'up') notes.push(w('drawn.kerb.up'));
  if (face === 'down') notes.push(w('drawn.seen.below'));
  notes.push(panels.length > 0 ? w('drawn.ga.skin') : w('drawn.ga.bare'));
  if (model.shell.chassis.axles.length > 0 && face !== 'up') notes.push(chassisNote(model));
  return notes;
}

function chassisMarks({ model, vehicle }: Sheet, face: Facing, port: Port): readonly Mark[] {
  if (face === 'up') return [];
  if (face === 'down') return chassisPlan(model, vehicle, port);
  if (face === 'left' || face === 'right') return chassisSide(model, vehicle, port);
  return chassisEnd(model, vehicle, port, face);
}

const accessWish = (panel: Panel, port: Port): LabelWish => ({
  text: panel.id,
  anchor: panelAnchor(panel, port),
  style: 'id-strong',
  priority: 70,
  id: panel.id,
  centred: true,
});

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
  // Over roof units and all: the height that the owner's first page and the cab's placard give, rounded as there.
  const ground = groundZMm(model);
  const top = overallSizes(model)?.bounds.max[2] ?? shell.high[2];
  marks.push(...uprightDimension(y(top), y(ground), port.frame.x0 - 6, port.frame.x0, lengthUp(top - ground, units)));
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
