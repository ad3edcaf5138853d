import { type Bounds, type Box, boundsOf, boxBounds, clipToBox, grow, isInBox, overlap } from '../../geometry/box.js';
import { type Facet, facet, height, throughFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { nearestOfSegments, nearestOnSegment } from '../../geometry/segment.js';
import { mayComeWithin, segmentToBox } from '../../geometry/segment-box.js';
import { segmentToFacet } from '../../geometry/segment-facet.js';
import { add, distance, dot, lerp, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { lazy } from '../lazy-value.js';
import { memberBoxes } from '../solids.js';
import { isOverOpening, type PanelOpening } from './opening.js';
import { solids } from './standing.js';
import { lineWalls } from './walls.js';

/** Something solid that a hand cannot pass. */
interface Obstacle {
  readonly id: string;
  readonly bounds: Bounds;
  /** Of a member on a line, or of a chord of its bend: the box about all its walls. */
  readonly whole?: Box;
  readonly forms: () => readonly Form[];
}

type Form =
  | { readonly kind: 'box'; readonly box: Box }
  | { readonly kind: 'sheet'; readonly facet: Facet }
  | { readonly kind: 'pipe'; readonly from: Vec3; readonly to: Vec3; readonly radiusMm: number };

/** A way through an opening: the hand as thick as it is as far as `hand`, from there a fingertip to the target. */
export interface HandWay {
  readonly start: Vec3;
  readonly hand: Vec3;
  readonly target: Vec3;
  /** Half of what must be clear across as far as `hand`, mm; 0 for a line of sight. */
  readonly radiusMm: number;
}

/** Records that are not in their own way: the one looked at, and what it is part of. */
export type Ignored = string | readonly string[] | undefined;

export interface Obstacles {
  /** Ids of what stands in a way, each once. Empty: the way is clear. Without an opening nothing has a hole for it. */
  inTheWay(way: HandWay, opening?: PanelOpening, ignore?: Ignored): readonly string[];
  /** The same answer as whether there are none, and sooner. */
  isClear(way: HandWay, opening?: PanelOpening, ignore?: Ignored): boolean;
}

/** What lies within this of either end of a way does not block it: the thing stands on it, or the rim is it. mm */
const TOUCH_MM = 1;
/** A way that slides along a face is clear: solids are taken this much smaller all round. mm */
const SKIN_MM = 0.25;
/** A panel within this behind the access panel's plane has the hole as well, mm. */
const SET_IN_MM = 40;
/** Ducts and pipes from this size up stand in the way; smaller ones and wires are pushed aside. House rule, mm. */
export const STIFF_PIPE_MM = 50;
const CELL_MM = 200;

/** `cellMm` is the size of the index's cells; with an endless one every obstacle is looked at, which gives the same answers. */
export function obstacles(model: Model, cellMm = CELL_MM): Obstacles {
  const stock = lazy(() => {
    const all = [...memberObstacles(model), ...panelObstacles(model), ...solidObstacles(model), ...pipeObstacles(model)];
    const index = grid(
      all.flatMap((one, i) => pieces(one).map((bounds) => ({ index: i, bounds }))),
      cellMm,
    );
    return { all, index };
  });
  const stops = (one: Obstacle, bounds: Bounds, way: HandWay, opening: PanelOpening | undefined, ignore: Ignored) =>
    overlap(bounds, one.bounds) && !isIgnored(one.id, opening, ignore) ? stopper(one, way, opening) : undefined;
  // What stopped the last way often stops the next, which starts beside it: that wall alone is asked first.
  let last: { readonly id: string; readonly form: Form } | undefined;
  return {
    inTheWay(way, opening, ignore) {
      const { all, index } = stock();
      const found = new Set<string>();
      const bounds = boundsOfWay(way);
      index.visit(bounds, (i) => {
        const one = all[i] as Obstacle;
        if (stops(one, bounds, way, opening, ignore)) found.add(one.id);
        return false;
      });
      return [...found];
    },
    isClear(way, opening, ignore) {
      if (last && !isIgnored(last.id, opening, ignore) && formStops(last.form, way, opening)) return false;
      const { all, index } = stock();
      const bounds = boundsOfWay(way);
      return !index.visit(bounds, (i) => {
        const one = all[i] as Obstacle;
        const form = stops(one, bounds, way, opening, ignore);
        if (!form) return false;
        last = { id: one.id, form };
        return true;
      });
    },
  };
}

const isIgnored = (id: string, opening: PanelOpening | undefined, ignore: Ignored): boolean =>
  id === ignore || id === opening?.panel.id || (typeof ignore === 'object' && ignore.includes(id));

function boundsOfWay({ start, hand, target, radiusMm }: HandWay): Bounds {
  return {
    min: [
      Math.min(target[0], start[0] - radiusMm, hand[0] - radiusMm),
      Math.min(target[1], start[1] - radiusMm, hand[1] - radiusMm),
      Math.min(target[2], start[2] - radiusMm, hand[2] - radiusMm),
    ],
    max: [
      Math.max(target[0], start[0] + radiusMm, hand[0] + radiusMm),
      Math.max(target[1], start[1] + radiusMm, hand[1] + radiusMm),
      Math.max(target[2], start[2] + radiusMm, hand[2] + radiusMm),
    ],
  };
}

/** Which of an obstacle's forms stands in a way. */
function stopper({ whole, forms }: Obstacle, way: HandWay, opening: PanelOpening | undefined): Form | undefined {
  const { start, hand, target, radiusMm } = way;
  if (whole && !mayComeWithin(start, hand, whole, radiusMm) && !mayComeWithin(hand, target, whole, 0)) return undefined;
  for (const form of forms()) if (formStops(form, way, opening)) return form;
  return undefined;
}

const formStops = (form: Form, way: HandWay, opening: PanelOpening | undefined): boolean =>
  (way.radiusMm > 0 && stopsHand(form, way, opening)) || stopsFinger(form, way.hand, way.target, opening);

/** Whether a form stands in the bare line from one place to the target. */
function stopsFinger(form: Form, from: Vec3, target: Vec3, opening: PanelOpening | undefined): boolean {
  const length = distance(from, target);
  if (form.kind === 'box') {
    if (!mayComeWithin(from, target, form.box, 0)) return false;
    const part = clipToBox(from, target, form.box);
    if (!part || part[1] * length <= TOUCH_MM || (1 - part[0]) * length <= TOUCH_MM) return false;
    return !isInBox(target, form.box, TOUCH_MM + SKIN_MM);
  }
  if (form.kind === 'pipe') {
    if (nearestOnSegment(target, form.from, form.to).distance <= form.radiusMm + TOUCH_MM) return false;
    return nearestOfSegments(from, target, form.from, form.to).distance < form.radiusMm - SKIN_MM;
  }
  const share = throughFacet(from, target, form.facet);
  if (share === undefined || share * length <= TOUCH_MM || (1 - share) * length <= TOUCH_MM) return false;
  return !isHole(form.facet, lerp(from, target, share), opening);
}

/** Whether a form comes into the round way that a hand needs; what the target is in or on does not count. */
function stopsHand(form: Form, { start, hand, target, radiusMm }: HandWay, opening: PanelOpening | undefined): boolean {
  if (form.kind === 'box') {
    if (!mayComeWithin(start, hand, form.box, radiusMm)) return false;
    const through = mayComeWithin(start, hand, form.box, 0);
    if (!through && segmentToBox(start, hand, form.box).distance >= radiusMm) return false;
    return !isInBox(target, form.box, TOUCH_MM + SKIN_MM);
  }
  if (form.kind === 'pipe') {
    if (nearestOnSegment(target, form.from, form.to).distance <= form.radiusMm + TOUCH_MM) return false;
    return nearestOfSegments(start, hand, form.from, form.to).distance < form.radiusMm + radiusMm - SKIN_MM;
  }
  if (opening && isSetIn(form.facet, opening)) return stopsFinger(form, start, hand, opening);
  const [near, far] = [height(start, form.facet), height(hand, form.facet)];
  if (near * far > 0 && Math.min(Math.abs(near), Math.abs(far)) >= radiusMm) return false;
  if (segmentToFacet(start, hand, form.facet) >= radiusMm - SKIN_MM) return false;
  return segmentToFacet(target, target, form.facet) > TOUCH_MM;
}

/** The panel that the access panel is set in, and a lining close against it. */
const isSetIn = (sheet: Facet, opening: PanelOpening): boolean =>
  Math.abs(dot(sheet.normal, opening.inward)) > 0.95 && Math.abs(height(opening.center, sheet)) <= SET_IN_MM;

/** What the access panel is set in has the hole as well. */
const isHole = (sheet: Facet, at: Vec3, opening: PanelOpening | undefined): boolean =>
  opening !== undefined && isSetIn(sheet, opening) && isOverOpening(at, opening, SET_IN_MM);

const smaller = (box: Box): Box => ({
  ...box,
  half: box.half.map((half) => Math.max(half / 2, half - SKIN_MM)) as unknown as Box['half'],
});

const boxForm = (box: Box): Form => ({ kind: 'box', box: smaller(box) });

const sheetObstacle = (id: string, outline: readonly Vec3[], holes: readonly (readonly Vec3[])[] = []): readonly Obstacle[] => {
  const sheet = facet(outline, holes);
  const forms: readonly Form[] = sheet ? [{ kind: 'sheet', facet: sheet }] : [];
  return sheet ? [{ id, bounds: boundsOf(outline), forms: () => forms }] : [];
};

const memberObstacles = ({ shell, library }: Model): readonly Obstacle[] =>
  shell.members.flatMap((member) => {
    if (member.shape.kind === 'plate') return sheetObstacle(member.id, member.shape.outline);
    const section = library.sections.get(member.shape.section);
    if (!section) return [];
    const boxes = memberBoxes(member.shape, section.dimensions);
    const walls = lazy(() => lineWalls(member, section.dimensions));
    return boxes.map((whole, i) => {
      const forms = lazy(() => (boxes.length === 1 ? walls() : wallsOfPiece(walls(), boxes.length, i)).map(boxForm));
      return { id: member.id, bounds: boxBounds(whole), whole, forms };
    });
  });

/** Walls come piece after piece, each piece with as many. */
function wallsOfPiece(walls: readonly Box[], pieces: number, i: number): readonly Box[] {
  const each = walls.length / pieces;
  return walls.slice(i * each, (i + 1) * each);
}

const panelObstacles = ({ shell }: Model): readonly Obstacle[] =>
  shell.panels.flatMap((panel) => sheetObstacle(panel.id, panel.outline, panel.holes));

/** Equipment, tanks, bays and chassis rails. */
const solidObstacles = (model: Model): readonly Obstacle[] =>
  solids(model).map(({ id, box }) => ({ id, bounds: boxBounds(box), forms: lazy(() => [boxForm(box)]) }));

function pipeObstacles({ shell }: Model): readonly Obstacle[] {
  return shell.runs.flatMap((run) => {
    const radiusMm = (run.size?.nominalMm ?? 0) / 2;
    if (radiusMm * 2 < STIFF_PIPE_MM) return [];
    return run.path.slice(1).map((to, i): Obstacle => {
      const from = run.path[i] as Vec3;
      const forms: readonly Form[] = [{ kind: 'pipe', from, to, radiusMm }];
      return { id: run.id, bounds: grow(boundsOf([from, to]), radiusMm), forms: () => forms };
    });
  });
}

/** A long slanted member in short lengths, so that it fills few cells of the index. */
function pieces({ whole, bounds }: Obstacle): readonly Bounds[] {
  if (!whole || whole.axes[0].some((part) => Math.abs(part) > 0.999)) return [bounds];
  const count = Math.ceil(whole.half[0] / CELL_MM);
  const half = whole.half[0] / count;
  return Array.from({ length: count }, (_, i) => {
    const center = add(whole.center, scale(whole.axes[0], (2 * i + 1) * half - whole.half[0]));
    return boxBounds({ ...whole, center, half: [half, whole.half[1], whole.half[2]] });
  });
}
