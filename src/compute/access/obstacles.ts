import { type Bounds, type Box, boundsOf, boxBounds, clipToBox, grow, isInBox, overlap } from '../../geometry/box.js';
import { type Facet, facet, height, throughFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { nearestOfSegments, nearestOnSegment } from '../../geometry/segment.js';
import { add, dot, lerp, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { memberBox } from '../solids.js';
import { isOverOpening, type PanelOpening } from './opening.js';
import { componentBox, lineWalls } from './walls.js';

/** Something solid that a hand cannot pass. */
interface Obstacle {
  readonly id: string;
  readonly bounds: Bounds;
  /** Of a member on a line: the box about all its walls. */
  readonly whole?: Box;
  readonly forms: readonly Form[];
}

type Form =
  | { readonly kind: 'box'; readonly box: Box }
  | { readonly kind: 'sheet'; readonly facet: Facet }
  | { readonly kind: 'pipe'; readonly from: Vec3; readonly to: Vec3; readonly radiusMm: number };

export interface Obstacles {
  /** Ids of what stands between an opening's place and a target, each once. Empty: the way is clear. */
  between(start: Vec3, target: Vec3, opening: PanelOpening, ignore?: string): readonly string[];
}

/** What lies within this of either end of a ray does not block it: the thing stands on it, or the rim is it. mm */
const TOUCH_MM = 1;
/** A ray that slides along a face is clear: solids are taken this much smaller all round. mm */
const SKIN_MM = 0.25;
/** A panel within this behind the access panel's plane has the hole as well, mm. */
const SET_IN_MM = 40;
/** Ducts and pipes from this size up stand in the way; smaller ones and wires are pushed aside. House rule, mm. */
const STIFF_PIPE_MM = 50;
const CELL_MM = 250;

export function obstacles(model: Model): Obstacles {
  const all = [...memberObstacles(model), ...panelObstacles(model), ...componentObstacles(model), ...pipeObstacles(model)];
  const index = grid(
    all.flatMap((one, i) => pieces(one).map((bounds) => ({ index: i, bounds }))),
    CELL_MM,
  );
  return {
    between(start, target, opening, ignore) {
      const bounds = boundsOf([start, target]);
      const found = new Set<string>();
      for (const i of index.near(bounds)) {
        const one = all[i] as Obstacle;
        if (one.id === ignore || one.id === opening.panel.id || found.has(one.id)) continue;
        if (overlap(bounds, one.bounds) && one.forms.some((form) => stops(form, start, target, opening))) found.add(one.id);
      }
      return [...found];
    },
  };
}

function stops(form: Form, start: Vec3, target: Vec3, opening: PanelOpening): boolean {
  const way = subtract(target, start);
  const length = Math.sqrt(dot(way, way));
  if (form.kind === 'box') {
    const part = clipToBox(start, target, form.box);
    if (!part || part[1] * length <= TOUCH_MM || (1 - part[0]) * length <= TOUCH_MM) return false;
    return !isInBox(target, form.box, TOUCH_MM + SKIN_MM);
  }
  if (form.kind === 'pipe') {
    if (nearestOnSegment(target, form.from, form.to).distance <= form.radiusMm + TOUCH_MM) return false;
    return nearestOfSegments(start, target, form.from, form.to).distance < form.radiusMm - SKIN_MM;
  }
  const share = throughFacet(start, target, form.facet);
  if (share === undefined || share * length <= TOUCH_MM || (1 - share) * length <= TOUCH_MM) return false;
  return !isHole(form.facet, lerp(start, target, share), opening);
}

/** The panel that the access panel is set in, and a lining close against it, have the hole as well. */
function isHole(sheet: Facet, at: Vec3, opening: PanelOpening): boolean {
  const level = Math.abs(dot(sheet.normal, opening.inward)) > 0.95;
  return level && Math.abs(height(opening.center, sheet)) <= SET_IN_MM && isOverOpening(at, opening, SET_IN_MM);
}

const smaller = (box: Box): Box => ({
  ...box,
  half: box.half.map((half) => Math.max(half / 2, half - SKIN_MM)) as unknown as Box['half'],
});

const boxForm = (box: Box): Form => ({ kind: 'box', box: smaller(box) });

const sheetObstacle = (id: string, outline: readonly Vec3[], holes: readonly (readonly Vec3[])[] = []): readonly Obstacle[] => {
  const sheet = facet(outline, holes);
  return sheet ? [{ id, bounds: boundsOf(outline), forms: [{ kind: 'sheet', facet: sheet }] }] : [];
};

const memberObstacles = ({ shell, library }: Model): readonly Obstacle[] =>
  shell.members.flatMap((member) => {
    if (member.shape.kind === 'plate') return sheetObstacle(member.id, member.shape.outline);
    const section = library.sections.get(member.shape.section);
    if (!section) return [];
    const whole = memberBox(member.shape, section.dimensions);
    const forms = lineWalls(member, section.dimensions).map(boxForm);
    return [{ id: member.id, bounds: boxBounds(whole), whole, forms }];
  });

const panelObstacles = ({ shell }: Model): readonly Obstacle[] =>
  shell.panels.flatMap((panel) => sheetObstacle(panel.id, panel.outline, panel.holes));

const componentObstacles = ({ shell }: Model): readonly Obstacle[] =>
  shell.components.flatMap((component) => {
    const box = componentBox(component);
    return box ? [{ id: component.id, bounds: boxBounds(box), forms: [boxForm(box)] }] : [];
  });

function pipeObstacles({ shell }: Model): readonly Obstacle[] {
  return shell.runs.flatMap((run) => {
    const radiusMm = (run.size?.nominalMm ?? 0) / 2;
    if (radiusMm * 2 < STIFF_PIPE_MM) return [];
    return run.path.slice(1).map((to, i): Obstacle => {
      const from = run.path[i] as Vec3;
      return { id: run.id, bounds: grow(boundsOf([from, to]), radiusMm), forms: [{ kind: 'pipe', from, to, radiusMm }] };
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
