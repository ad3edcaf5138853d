import type { Figures } from '../../assess.js';
import { type Bounds, type Box, boundsOf, boxBetween, boxBounds, clipToBox, grow } from '../../geometry/box.js';
import { type Facet, facet, height, nearestOnFacet, throughFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { alongRay, rayToBall, rayToTube } from '../../geometry/ray.js';
import { add, distance, dot, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { OUTWARD, type Panel, type PlateMember } from '../../model/structure.js';
import { componentBox, lineWalls } from '../access/walls.js';
import { memberBox } from '../solids.js';
import { ASSUMED_TOLERANCE_MM } from './faces.js';

/** How deep a screw is looked for: 6 in. */
export const LOOK_MM = 152.4;
/** No screw within this of a weld: the metal is soft there. MAT-44: 1 in each way, Aluminum Design Manual, from memory. */
export const WELD_BAND_MM = 25.4;
/** A screw of 1/4 in is taken: half its thickness. House value. */
const SCREW_RADIUS_MM = 3.175;
/** Metal that begins within this behind the face is something to screw into. House value. */
const BACKING_MM = 60;
/** A sheet that begins this close under the face is laid on it, and the screw goes through both. House value. */
const LAID_ON_MM = 12;
const CELL_MM = 150;

/** A sheet with the side that one drills from. */
export interface DrilledSheet {
  readonly panel: Panel;
  readonly facet: Facet;
  readonly bounds: Bounds;
  /** Into the sheet and what is behind it. */
  readonly into: Vec3;
}

/** Something that a screw would meet, and how deep under the face. */
export interface Met {
  readonly id: string;
  readonly kind: 'run' | 'node' | 'component' | 'weld' | 'panel';
  readonly depthMm: number;
}

export interface ScrewDepth {
  /** The longest screw under its head, from the face, that meets nothing recorded; at most how deep is looked. Never negative. */
  readonly depthMm: number;
  /** What ends it. Absent where nothing is met as deep as is looked. */
  readonly meets?: Met;
  /** The first run, node or component, whatever else comes before it. */
  readonly service?: Met;
  /** Members behind the face, nearest first: where metal begins and ends under the face. */
  readonly metal: readonly { readonly id: string; readonly fromMm: number; readonly toMm: number }[];
}

export interface Screws {
  readonly sheets: readonly DrilledSheet[];
  /** Square into the sheet at the place of it nearest to `at`; everything is `widenMm` thicker than its tolerance asks. */
  depthAt(sheet: DrilledSheet, at: Vec3, widenMm?: number): ScrewDepth;
  /** The sheet nearest to a place, and the place of its face. */
  nearest(at: Vec3): { readonly sheet: DrilledSheet; readonly at: Vec3; readonly distanceMm: number } | undefined;
}

/**
 * The deepest screw that meets nothing, at any place of any sheet: runs by their outside and nodes, each widened by its tolerance,
 * components with a size, 1 in each way about every joint of members, and the sheet on the other side. Members are no hindrance but something to screw into.
 */
export function screws({
  model,
  figures,
}: {
  readonly model: Model;
  readonly figures: Pick<Figures, 'takeOff' | 'joints'>;
}): Screws {
  const things = [
    ...runThings(model, figures),
    ...nodeThings(model),
    ...componentThings(model),
    ...weldThings(figures),
    ...sheetThings(model),
  ];
  const index = grid(
    things.map(({ bounds }, i) => ({ index: i, bounds: grow(bounds, CELL_WIDEN_MM) })),
    CELL_MM,
  );
  const metal = metalOf(model);
  const metalIndex = grid(
    metal.map(({ bounds }, i) => ({ index: i, bounds })),
    CELL_MM,
  );
  const sheets = drilledSheets(model);
  return {
    sheets,
    depthAt(sheet, at, widenMm = 0) {
      const start = onFace(sheet, at);
      const ray = boundsOf([start, alongRay(start, sheet.into, LOOK_MM)]);
      let meets: Met | undefined;
      let service: Met | undefined;
      index.visit(ray, (i) => {
        const { id, kind, met } = things[i] as Thing;
        const depthMm = met(start, sheet.into, SCREW_RADIUS_MM + widenMm);
        if (depthMm === undefined || depthMm >= LOOK_MM || (kind === 'panel' && depthMm < LAID_ON_MM)) return false;
        if (!meets || depthMm < meets.depthMm) meets = { id, kind, depthMm };
        const isService = kind !== 'weld' && kind !== 'panel';
        if (isService && (!service || depthMm < service.depthMm)) service = { id, kind, depthMm };
        return false;
      });
      const behind = metalIndex.near(ray).map((i) => metal[i] as Metal);
      const told = { ...(meets ? { meets } : {}), ...(service ? { service } : {}) };
      return { depthMm: (meets as Met | undefined)?.depthMm ?? LOOK_MM, ...told, metal: metalAlong(behind, start, sheet.into) };
    },
    nearest(at) {
      let best: ReturnType<Screws['nearest']>;
      for (const sheet of sheets) {
        const place = onFace(sheet, nearestOnFacet(at, sheet.facet));
        const distanceMm = distance(place, at);
        if (!best || distanceMm < best.distanceMm) best = { sheet, at: place, distanceMm };
      }
      return best;
    },
  };
}

/** Half the diagonal of a cell of a map at most: the index allows for it. */
export const CELL_WIDEN_MM = 22;

/** The place of the face that one drills from, straight over a place in the sheet's plane. */
function onFace({ panel, facet: flat, into }: DrilledSheet, at: Vec3): Vec3 {
  const inPlane = subtract(at, scale(flat.normal, height(at, flat)));
  return alongRay(inPlane, into, -(panel.thicknessMm ?? 0) / 2);
}

/** How deep under a sheet's face a place lies, and how far beside the sheet, mm. */
export function underFace(sheet: DrilledSheet, at: Vec3): { readonly depthMm: number; readonly besideMm: number } {
  const over = onFace(sheet, at);
  const inPlane = add(over, scale(sheet.into, (sheet.panel.thicknessMm ?? 0) / 2));
  return { depthMm: dot(subtract(at, over), sheet.into), besideMm: distance(inPlane, nearestOnFacet(inPlane, sheet.facet)) };
}

/** Every sheet but access panels, each with the side that one drills from. */
export function drilledSheets({ shell }: Model): readonly DrilledSheet[] {
  const flat = shell.panels.flatMap((panel) => {
    const sheet = panel.panelKind === 'access' ? undefined : facet(panel.outline, panel.holes);
    return sheet ? [{ panel, facet: sheet, bounds: boundsOf(panel.outline) }] : [];
  });
  if (flat.length === 0) return [];
  const all = boundsOf(flat.flatMap(({ panel }) => panel.outline));
  const middle = scale(add(all.min, all.max), 0.5);
  return flat.map((one) => {
    const { normal, center } = one.facet;
    const into = intoOf(one.panel, subtract(center, middle));
    return { ...one, into: dot(normal, into) >= 0 ? normal : scale(normal, -1) };
  });
}

/** Against the way a panel faces; else sheets outside are drilled towards the middle of the shell, linings away from it. */
function intoOf({ facing, panelKind }: Panel, away: Vec3): Vec3 {
  if (facing) return scale(OUTWARD[facing], -1);
  if (panelKind === 'belly') return OUTWARD.up;
  if (panelKind === 'roof') return OUTWARD.down;
  return panelKind === 'interior' ? away : scale(away, -1);
}

/** Something that a screw must not meet. */
interface Thing {
  readonly id: string;
  readonly kind: Met['kind'];
  readonly bounds: Bounds;
  /** How far along a ray it is met when it is so much thicker all round. */
  met(start: Vec3, along: Vec3, widenMm: number): number | undefined;
}

function runThings({ shell }: Model, { takeOff }: Pick<Figures, 'takeOff'>): readonly Thing[] {
  const outside = new Map(takeOff.runs.map((run) => [run.id, run.outsideDiameterMm ?? 0] as const));
  return shell.runs.flatMap((run) => {
    const radius = (outside.get(run.id) ?? 0) / 2 + (run.toleranceMm ?? ASSUMED_TOLERANCE_MM);
    return run.path.slice(1).map((to, i): Thing => {
      const from = run.path[i] as Vec3;
      return {
        id: run.id,
        kind: 'run',
        bounds: grow(boundsOf([from, to]), radius + SCREW_RADIUS_MM),
        met: (start, along, widenMm) => rayToTube(start, along, from, to, radius + widenMm),
      };
    });
  });
}

const nodeThings = ({ shell }: Model): readonly Thing[] =>
  shell.nodes.map(({ id, at, toleranceMm = ASSUMED_TOLERANCE_MM }) => ({
    id,
    kind: 'node',
    bounds: grow({ min: at, max: at }, toleranceMm + SCREW_RADIUS_MM),
    met: (start, along, widenMm) => rayToBall(start, along, at, toleranceMm + widenMm),
  }));

const componentThings = ({ shell }: Model): readonly Thing[] =>
  shell.components.flatMap((component) => {
    const box = componentBox(component);
    return box ? [boxThing(component.id, 'component', widened(box, component.toleranceMm ?? ASSUMED_TOLERANCE_MM))] : [];
  });

const weldThings = ({ joints }: Pick<Figures, 'joints'>): readonly Thing[] =>
  weldBands(joints).map(({ id, box }) => boxThing(id, 'weld', box));

/** The soft metal about each joint of members that is not clamped: its contact and 1 in each way. By weld id, else by the members. */
export function weldBands({ joints }: Figures['joints']): readonly { readonly id: string; readonly box: Box }[] {
  return joints.flatMap(({ bounds, welds, clamps, members }) => {
    if (!bounds || (welds.length === 0 && (clamps?.length ?? 0) > 0)) return [];
    const { min, max } = grow(bounds, WELD_BAND_MM);
    return [{ id: welds[0] ?? members.join(' and '), box: boxBetween(min, max) }];
  });
}

/** A screw that comes out through the sheet on the other side is too long. */
const sheetThings = ({ shell }: Model): readonly Thing[] =>
  shell.panels.flatMap((panel): readonly Thing[] => {
    const sheet = facet(panel.outline, panel.holes);
    if (!sheet) return [];
    const met: Thing['met'] = (start, along) => {
      const share = throughFacet(start, alongRay(start, along, LOOK_MM), sheet);
      return share === undefined ? undefined : Math.max(0, share * LOOK_MM - (panel.thicknessMm ?? 0) / 2);
    };
    return [{ id: panel.id, kind: 'panel', bounds: boundsOf(panel.outline), met }];
  });

const widened = (box: Box, by: number): Box => ({ ...box, half: box.half.map((half) => half + by) as unknown as Box['half'] });

function boxThing(id: string, kind: Thing['kind'], box: Box): Thing {
  return {
    id,
    kind,
    bounds: grow(boxBounds(box), SCREW_RADIUS_MM),
    met(start, along, widenMm) {
      const part = clipToBox(start, alongRay(start, along, LOOK_MM), widened(box, widenMm));
      return part && part[0] * LOOK_MM;
    },
  };
}

interface Metal {
  readonly id: string;
  readonly bounds: Bounds;
  /** Shares of a way (0–1) where it enters and leaves the metal. */
  through(from: Vec3, to: Vec3): readonly [number, number] | undefined;
}

/** Walls of line members, and plates. */
const metalOf = ({ shell, library }: Model): readonly Metal[] =>
  shell.members.flatMap((member): readonly Metal[] => {
    if (member.shape.kind === 'plate') return plateMetal(member.id, member.shape);
    const section = library.sections.get(member.shape.section);
    if (!section || memberBox(member.shape, section.dimensions).half[0] === 0) return [];
    return lineWalls(member, section.dimensions).map((box) => ({
      id: member.id,
      bounds: boxBounds(box),
      through: (from, to) => clipToBox(from, to, box),
    }));
  });

function plateMetal(id: string, { outline, thicknessMm }: PlateMember): readonly Metal[] {
  const sheet = facet(outline);
  if (!sheet) return [];
  const through: Metal['through'] = (from, to) => {
    const share = throughFacet(from, to, sheet);
    if (share === undefined) return undefined;
    const half = thicknessMm / 2 / Math.abs(height(to, sheet) - height(from, sheet));
    return [Math.max(0, share - half), share + half];
  };
  return [{ id, bounds: grow(boundsOf(outline), thicknessMm), through }];
}

function metalAlong(metal: readonly Metal[], start: Vec3, along: Vec3): ScrewDepth['metal'] {
  const end = alongRay(start, along, LOOK_MM);
  const first = new Map<string, ScrewDepth['metal'][number]>();
  for (const { id, through } of metal) {
    const part = through(start, end);
    if (!part || part[0] * LOOK_MM > BACKING_MM) continue;
    const [fromMm, toMm] = [part[0] * LOOK_MM, part[1] * LOOK_MM];
    const before = first.get(id);
    if (!before || fromMm < before.fromMm) first.set(id, { id, fromMm, toMm });
  }
  return [...first.values()].sort((a, b) => a.fromMm - b.fromMm || (a.id < b.id ? -1 : 1));
}
