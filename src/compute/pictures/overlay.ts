import type { Box } from '../../geometry/box.js';
import { add, distance, dot, lerp, scale, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Medium } from '../../records/index.js';
import { type Pixel, projectPoint } from '../camera/camera.js';
import { type Fit, pixelsPerMm, shownAt } from '../camera/fit.js';
import { inSight, memberBoxesOf } from './in-sight.js';
import { openingCornerPoints } from './known-points.js';
import type { SolvedPhoto } from './solve-photo.js';
import { wasThere } from './was-there.js';

/** A stretch of a line in the picture, all of it in front or all of it behind something. */
export interface PictureStretch {
  readonly px: readonly Pixel[];
  readonly hidden: boolean;
}

/** One record as the picture shows it. */
export interface DrawnRecord {
  readonly id: string;
  readonly kind: 'member' | 'panel' | 'opening' | 'run' | 'node' | 'component';
  readonly medium?: Medium;
  /** A row of fasteners along a panel's edge is drawn as such. */
  readonly screws?: number;
  readonly stretches: readonly PictureStretch[];
}

/** What is recorded in a photo's view, drawn into it. Empty where the photo is not usable. */
export interface Overlay {
  readonly solved: SolvedPhoto;
  readonly drawn: readonly DrawnRecord[];
  /** Pixels that 1 mm fills at the middle of the known points. */
  readonly pxPerMm?: number;
}

/** On a plane only what lies within this of it is drawn, mm: the rest would be shown beside its place. */
export const ON_PLANE_MM = 25;
/** What lies farther behind the known points than an arm reaches is left out: it would hide what the picture is of. mm, ISO 15534-3 (unverified citation). */
const BEHIND_MM = 700;
/** Lines are looked at this often to tell what of them is hidden: each so many mm, or that share of the picture's width where it is more. */
const STEP_MM = 40;
const STEP_SHARE = 1 / 40;
const MOST_STEPS = 200;
/** Drawn as far as this share of the picture beyond its edge. */
const BEYOND = 0.05;

export function overlay(model: Model, solved: SolvedPhoto): Overlay {
  const { fit, photo } = solved;
  if (!solved.usable || !fit) return { solved, drawn: [] };
  const pen = new Pencil(model, solved, fit);
  const there = wasThere(model, photo);
  const { shell } = model;
  const drawn = [
    ...shell.members.filter(there).map((member) => {
      const boxes = memberBoxesOf(model, member).filter((box) => pen.maySee(box));
      const edges = boxes.length > 1 ? alongEdges : edgesOf;
      const lines = member.shape.kind === 'plate' ? [closed(member.shape.outline)] : boxes.flatMap((box) => edges(box, fit));
      const seen = pen.record({ id: member.id, kind: 'member' }, lines);
      // A tube behind another says nothing of services: only what is in plain sight is drawn of it.
      return { ...seen, stretches: seen.stretches.filter(({ hidden }) => !hidden) };
    }),
    ...shell.panels.map((panel) => {
      const screws = panel.fixing?.method === 'screws' ? panel.fixing?.count : undefined;
      return pen.record({ id: panel.id, kind: 'panel', ...(screws === undefined ? {} : { screws }) }, [closed(panel.outline)]);
    }),
    ...shell.openings.map((opening) => pen.record({ id: opening.id, kind: 'opening' }, [closed(openingCornerPoints(opening))])),
    ...shell.runs.map((run) => pen.record({ id: run.id, kind: 'run', medium: run.medium }, [run.path])),
    ...shell.nodes.map((node) => pen.record({ id: node.id, kind: 'node', medium: node.medium }, node.at ? [[node.at]] : [])),
  ].filter(({ stretches }) => stretches.length > 0);
  return { solved, drawn, pxPerMm: scaleAt(fit, middleOf(solved)) };
}

/** The middle of the known points. */
const middleOf = ({ points }: SolvedPhoto): Vec3 =>
  scale(
    points.reduce<Vec3>((sum, { at }) => add(sum, at), [0, 0, 0]),
    1 / points.length,
  );

/** Pixels that a millimetre across the line of sight fills at a place. */
export function scaleAt(fit: Fit, at: Vec3): number {
  if (fit.method === 'plane') return pixelsPerMm(fit.homography, fit.plane.on(at));
  const depth = dot(subtract(at, fit.camera.centre), fit.camera.look);
  return depth > 0 ? fit.camera.focalPx / depth : 0;
}

const closed = (outline: readonly Vec3[]): readonly Vec3[] => (outline.length > 0 ? [...outline, outline[0] as Vec3] : []);

/** The edges of a box that its outline in the picture may run along: those between a side that faces the camera and one that does not, and the near ones. */
function edgesOf({ center, axes, half }: Box, fit: Fit): readonly (readonly Vec3[])[] {
  const from = fit.method === 'camera' ? fit.camera.centre : add(center, scale(fit.plane.normal, 1e6));
  const faces = (k: number, sign: number): boolean => {
    const axis = axes[k] as Vec3;
    return sign * dot(subtract(from, center), axis) > (half[k] as number);
  };
  const place = (signs: readonly number[]): Vec3 =>
    signs.reduce<Vec3>((at, sign, k) => add(at, scale(axes[k] as Vec3, sign * (half[k] as number))), center);
  const edges: (readonly Vec3[])[] = [];
  for (const k of [0, 1, 2]) {
    const [i, j] = [0, 1, 2].filter((one) => one !== k) as [number, number];
    for (const a of [-1, 1])
      for (const b of [-1, 1]) {
        if (!faces(i, a) && !faces(j, b)) continue;
        const ends = [-1, 1].map((sign) => place([0, 1, 2].map((one) => (one === k ? sign : one === i ? a : b))));
        edges.push(ends);
      }
  }
  return edges;
}

/** Of a chord of a bend those that run along it: between chords there is no edge. */
const alongEdges = (box: Box, fit: Fit): readonly (readonly Vec3[])[] =>
  edgesOf(box, fit).filter(([a, b]) => Math.abs(dot(unit(subtract(b as Vec3, a as Vec3)), box.axes[0])) > 0.9);

/** Draws lines of the datum into one picture. */
class Pencil {
  private readonly sight;
  private readonly frame;
  private readonly deepestMm: number;
  private readonly facts: SolvedPhoto['facts'];
  private readonly stepMm: number;

  constructor(
    model: Model,
    solved: SolvedPhoto,
    private readonly fit: Fit,
  ) {
    this.sight = fit.method === 'camera' ? inSight(model, solved.photo) : undefined;
    this.facts = solved.facts;
    const perMm = scaleAt(fit, middleOf(solved));
    this.stepMm = perMm > 0 ? Math.max(STEP_MM, (solved.facts.widthPx * STEP_SHARE) / perMm) : STEP_MM;
    const { widthPx, heightPx } = solved.facts;
    this.deepestMm = BEHIND_MM + Math.max(...solved.points.map(({ at, leftOut }) => (leftOut ? 0 : this.depthOf(at))));
    this.frame = {
      left: -widthPx * BEYOND,
      right: widthPx * (1 + BEYOND),
      top: -heightPx * BEYOND,
      bottom: heightPx * (1 + BEYOND),
    };
  }

  record(record: Omit<DrawnRecord, 'stretches'>, lines: readonly (readonly Vec3[])[]): DrawnRecord {
    return { ...record, stretches: lines.flatMap((line) => this.line(line, record.id)) };
  }

  private line(line: readonly Vec3[], id: string): readonly PictureStretch[] {
    const own = new Set([id]);
    const stretches: { px: Pixel[]; hidden: boolean }[] = [];
    let open: { px: Pixel[]; hidden: boolean } | undefined;
    for (const at of steps(line, (a, b) => this.mayShow(a, b), this.stepMm)) {
      if (at === undefined) {
        open = undefined;
        continue;
      }
      const px = this.inFrame(at);
      if (!px) {
        open = undefined;
        continue;
      }
      const hidden = this.fit.method === 'camera' && this.sight?.hiddenBy(this.fit.camera.centre, at, own) !== undefined;
      if (!open || open.hidden !== hidden) {
        const last = open?.px.at(-1);
        open = { px: last ? [last] : [], hidden };
        stretches.push(open);
      }
      open.px.push(px);
    }
    return stretches.filter(({ px }) => px.length > (line.length > 1 ? 1 : 0));
  }

  /** Along the camera's axis; a plane has no depth. */
  private depthOf(at: Vec3): number {
    return this.fit.method === 'camera' ? dot(subtract(at, this.fit.camera.centre), this.fit.camera.look) : 0;
  }

  /** False where a ball about a box lies outside the picture for sure. */
  maySee({ center, half }: Box): boolean {
    if (this.fit.method === 'plane') return true;
    const { centre, look, right, down, focalPx } = this.fit.camera;
    const off = subtract(center, centre);
    const radius = Math.hypot(...half);
    const depth = dot(off, look);
    if (depth + radius <= 0 || depth - radius > this.deepestMm) return false;
    const { widthPx, heightPx } = this.facts;
    const beside = (across: number, sizePx: number): boolean =>
      Math.abs(across) - radius > ((0.5 + 2 * BEYOND) * sizePx * (depth + radius)) / focalPx;
    return !beside(dot(off, right), widthPx) && !beside(dot(off, down), heightPx);
  }

  /** False where a straight piece lies all on one side of what the picture shows: it is not looked at step by step then. */
  private mayShow(a: Vec3, b: Vec3): boolean {
    if (this.fit.method === 'plane') return true;
    const { centre, look, right, down, focalPx, principal } = this.fit.camera;
    const [p, q] = [a, b].map((at) => {
      const off = subtract(at, centre);
      return { depth: dot(off, look), x: dot(off, right), y: dot(off, down) };
    }) as [Seen, Seen];
    if (p.depth <= 0 && q.depth <= 0) return false;
    if (p.depth > this.deepestMm && q.depth > this.deepestMm) return false;
    if (p.depth <= 0 || q.depth <= 0) return true;
    const { left, right: most, top, bottom } = this.frame;
    // The lens bends little: twice the margin covers it.
    const beyond = (side: (one: Seen) => number): boolean => side(p) > 0 && side(q) > 0;
    return !(
      beyond(({ depth, x }) => 2 * left - principal[0] - (focalPx * x) / depth) ||
      beyond(({ depth, x }) => principal[0] + (focalPx * x) / depth - most + left) ||
      beyond(({ depth, y }) => 2 * top - principal[1] - (focalPx * y) / depth) ||
      beyond(({ depth, y }) => principal[1] + (focalPx * y) / depth - bottom + top)
    );
  }

  private inFrame(at: Vec3): Pixel | undefined {
    if (this.fit.method === 'plane' && Math.abs(dot(subtract(at, this.fit.plane.origin), this.fit.plane.normal)) > ON_PLANE_MM)
      return undefined;
    if (this.depthOf(at) > this.deepestMm) return undefined;
    const px = this.fit.method === 'camera' ? projectPoint(this.fit.camera, at)?.px : shownAt(this.fit, at);
    if (!px) return undefined;
    const { left, right, top, bottom } = this.frame;
    return px[0] >= left && px[0] <= right && px[1] >= top && px[1] <= bottom ? px : undefined;
  }
}

/** A place by a camera's own axes, mm. */
interface Seen {
  readonly depth: number;
  readonly x: number;
  readonly y: number;
}

/** Places along a line, close enough together to tell what is hidden; undefined for a piece that is not worth looking at. */
function* steps(line: readonly Vec3[], isWorth: (a: Vec3, b: Vec3) => boolean, stepMm: number): Generator<Vec3 | undefined> {
  if (line.length === 1) yield line[0];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Vec3, line[i] as Vec3];
    if (!isWorth(a, b)) {
      yield undefined;
      continue;
    }
    const count = Math.min(MOST_STEPS, Math.max(1, Math.ceil(distance(a, b) / stepMm)));
    for (let k = i === 1 ? 0 : 1; k <= count; k++) yield lerp(a, b, k / count);
  }
}
