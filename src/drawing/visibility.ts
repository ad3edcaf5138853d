import type { Box } from '../geometry/box.js';
import { add, dot, scale, type Vec3 } from '../geometry/vector.js';
import type { Library, LineMember, Member } from '../records/index.js';
import { sectionEnvelope } from '../sections/index.js';
import { linePath, memberBoxes, plateFaces, stationsOf } from '../sections/solids.js';
import { convexHull } from './outline.js';
import { project, type View } from './projection.js';
import { overlaps, type Point, type Rect, rectAbout } from './scene.js';

/** A member as its silhouette in a view, before it is put on a sheet. */
export interface Silhouette {
  readonly member: Member;
  readonly corners: readonly Vec3[];
  readonly ring: readonly Point[];
  readonly bounds: Rect;
}

export function boxCorners(box: Box): readonly Vec3[] {
  const corners: Vec3[] = [];
  for (const a of [-1, 1]) {
    for (const b of [-1, 1]) {
      for (const c of [-1, 1]) {
        const offset = add(
          add(scale(box.axes[0], a * box.half[0]), scale(box.axes[1], b * box.half[1])),
          scale(box.axes[2], c * box.half[2]),
        );
        corners.push(add(box.center, offset));
      }
    }
  }
  return corners;
}

/** Corners of a member's solid; a member whose section is unknown is drawn as its line. */
export function memberCorners(member: Member, library: Library): readonly Vec3[] {
  const { shape } = member;
  if (shape.kind === 'plate') return plateFaces(shape.outline, shape.thicknessMm).flat();
  const section = library.sections.get(shape.section);
  return section ? memberBoxes(shape, section.dimensions).flatMap(boxCorners) : linePath(shape);
}

/** Outline of a member in a view: its own corners for a plate that faces the viewer, else the hull of its solid. */
export function silhouette(member: Member, library: Library, view: View): Silhouette | undefined {
  const corners = memberCorners(member, library);
  const hull = convexHull(corners.map((corner) => project(view, corner)));
  const ring =
    member.shape.kind === 'plate' ? plateRing(member.shape.outline, hull, view) : bentRing(member.shape, hull, library, view);
  const bounds = rectAbout(ring);
  return bounds && { member, corners, ring, bounds };
}

/** A plate may be notched: seen from the front its own outline is true, seen from the edge its hull is. */
function plateRing(outline: readonly Vec3[], hull: readonly Point[], view: View): readonly Point[] {
  const flat = outline.map((corner) => project(view, corner));
  return ringArea(flat) > 0.25 * ringArea(hull) ? flat : hull;
}

/** A bent member seen in the plane of its bend is a band that follows it; seen from its edge its hull is true. */
function bentRing(line: LineMember, hull: readonly Point[], { sections }: Library, view: View): readonly Point[] {
  const section = sections.get(line.section);
  if (!line.bends || !section) return hull;
  const [depthMm, widthMm] = sectionEnvelope(section.dimensions);
  const sides: [Point[], Point[]] = [[], []];
  for (const { at, frame } of stationsOf(line)) {
    const flat = project(view, at);
    const [x, y] = project(view, frame.along);
    const across: Point = [-y, x];
    const size = Math.hypot(x, y);
    if (size < EDGE_ON) return hull;
    const reach = [-1, 1].flatMap((a) =>
      [-1, 1].map((b) => {
        const [u, v] = project(view, add(scale(frame.depth, (a * depthMm) / 2), scale(frame.width, (b * widthMm) / 2)));
        return (u * across[0] + v * across[1]) / size;
      }),
    );
    const place = (by: number): Point => [flat[0] + (across[0] * by) / size, flat[1] + (across[1] * by) / size];
    sides[0].push(place(Math.max(...reach)));
    sides[1].push(place(Math.min(...reach)));
  }
  return [...sides[0], ...sides[1].reverse()];
}
/** Sine of the angle under which a line still shows which way it runs. */
const EDGE_ON = 0.2;

function ringArea(ring: readonly Point[]): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x0, y0] = ring[i] as Point;
    const [x1, y1] = ring[(i + 1) % ring.length] as Point;
    twice += x0 * y1 - x1 * y0;
  }
  return Math.abs(twice) / 2;
}

/** Solids may touch or bite into each other by this much, as a weld gap or a rounded dimension does, mm. */
const BITE_MM = 3;

/**
 * Farther solids first, so that painting in order hides what is hidden. Pairs that overlap on the sheet are ordered by a
 * plane between them, across the vehicle's axes; where none parts them, by their middles. A ring of solids
 * that hide each other in turn is broken at its farthest.
 */
export function farthestFirst(solids: readonly Silhouette[], view: View): readonly Silhouette[] {
  const depths = solids.map((solid) => extentAlong(solid.corners, view.toViewer));
  const middle = depths.map(([low, high]) => (low + high) / 2);
  const behindOf: number[][] = solids.map(() => []);
  const waitsFor = solids.map(() => 0);
  for (let i = 0; i < solids.length; i++) {
    for (let j = i + 1; j < solids.length; j++) {
      const a = solids[i] as Silhouette;
      const b = solids[j] as Silhouette;
      if (!overlaps(a.bounds, b.bounds)) continue;
      const order = nearer(a, b, view) || (middle[i] as number) - (middle[j] as number);
      const [far, near] = order > 0 ? [j, i] : [i, j];
      (behindOf[far] as number[]).push(near);
      waitsFor[near] = (waitsFor[near] as number) + 1;
    }
  }
  return drain(solids, middle, behindOf, waitsFor);
}

/** Above 0 where `a` is nearer to the viewer than `b`, below 0 where farther, 0 where no axis of the vehicle parts them. */
function nearer(a: Silhouette, b: Silhouette, view: View): number {
  let best = 0;
  for (const axis of AXES) {
    const facing = dot(axis, view.toViewer);
    if (Math.abs(facing) < 0.2) continue;
    const [a0, a1] = extentAlong(a.corners, axis);
    const [b0, b1] = extentAlong(b.corners, axis);
    const gap = a0 - b1 > b0 - a1 ? a0 - b1 : a1 - b0;
    const parted = a0 - b1 > -BITE_MM || b0 - a1 > -BITE_MM;
    if (parted && Math.abs(gap * facing) > Math.abs(best)) best = gap * facing;
    else if (parted && best === 0) best = (a0 + a1 - b0 - b1) * facing;
  }
  return best;
}

const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

function extentAlong(corners: readonly Vec3[], axis: Vec3): readonly [number, number] {
  const values = corners.map((corner) => dot(corner, axis));
  return [Math.min(...values), Math.max(...values)];
}

function drain(
  solids: readonly Silhouette[],
  middle: readonly number[],
  behindOf: readonly (readonly number[])[],
  waitsFor: number[],
): readonly Silhouette[] {
  const waiting = new Set(solids.map((_, index) => index));
  const order: Silhouette[] = [];
  while (waiting.size > 0) {
    let next = -1;
    let free = false;
    for (const index of waiting) {
      const isFree = waitsFor[index] === 0;
      if (next === -1 || (isFree && !free) || (isFree === free && (middle[index] as number) < (middle[next] as number))) {
        next = index;
        free = isFree;
      }
    }
    waiting.delete(next);
    order.push(solids[next] as Silhouette);
    for (const near of behindOf[next] as readonly number[]) waitsFor[near] = (waitsFor[near] as number) - 1;
  }
  return order;
}

export const middleOf = (corners: readonly Vec3[]): Vec3 => {
  const sum = corners.reduce((total: Vec3, corner) => add(total, corner), [0, 0, 0]);
  return corners.length === 0 ? sum : scale(sum, 1 / corners.length);
};
