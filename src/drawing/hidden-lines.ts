import { nearestOnSegment } from '../geometry/segment.js';
import type { Vec3 } from '../geometry/vector.js';
import { line, type Mark, overlaps, type Point } from './scene.js';
import type { Port } from './sheet.js';
import { singleLines } from './single-lines.js';
import { mergedStretches, type Stretch } from './stretches.js';
import type { Silhouette } from './visibility.js';

/** A stretch shorter than this is no more than a crossing: its dashes would say nothing, mm on the sheet. */
const SHORTEST_MM = 2.4;
/** Edges that lie on the outline of what is in front are drawn there already, mm on the sheet. */
const INSIDE_MM = 0.25;

/**
 * Edges of solids where nearer ones are in front of them, dashed (ISO 128): so that what is behind is not lost. `ordered` is farthest
 * first, as they are painted.
 */
export function hiddenLines(ordered: readonly Silhouette[], port: Port): readonly Mark[] {
  const flat = ordered.map((solid) => ({ ...solid, ring: solid.ring.map(port.placeFlat) }));
  const covered: (readonly Point[])[] = [];
  flat.forEach((solid, index) => {
    const nearer = flat.slice(index + 1).filter((other) => other.ring.length >= 3 && overlaps(solid.bounds, other.bounds));
    if (nearer.length === 0) return;
    for (let k = 0; k < solid.ring.length; k++) {
      const [a, b] = [solid.ring[k] as Point, solid.ring[(k + 1) % solid.ring.length] as Point];
      for (const [from, to] of mergedStretches(nearer.flatMap(({ ring }) => within(a, b, ring)))) {
        const piece = [at(a, b, from), at(a, b, to)] as const;
        if (Math.hypot(piece[1][0] - piece[0][0], piece[1][1] - piece[0][1]) >= SHORTEST_MM) covered.push(piece);
      }
    }
  });
  return singleLines(covered).map((piece) => line('hidden', 'hidden', piece));
}

const space = ([x, y]: Point): Vec3 => [x, y, 0];

const at = (a: Point, b: Point, t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];

/** Shares of a line that lie inside a ring, by the ring's crossings with it. */
function within(a: Point, b: Point, ring: readonly Point[]): readonly Stretch[] {
  const stops = [0, 1];
  for (let k = 0; k < ring.length; k++) {
    const t = crossing(a, b, ring[k] as Point, ring[(k + 1) % ring.length] as Point);
    if (t !== undefined) stops.push(t);
  }
  stops.sort((p, q) => p - q);
  const found: Stretch[] = [];
  for (let k = 1; k < stops.length; k++) {
    const [from, to] = [stops[k - 1] as number, stops[k] as number];
    if (to - from > 1e-9 && deepInside(at(a, b, (from + to) / 2), ring)) found.push([from, to]);
  }
  return found;
}

/** Where along a–b the line c–d crosses it. */
function crossing(a: Point, b: Point, c: Point, d: Point): number | undefined {
  const [rx, ry, sx, sy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const denominator = rx * sy - ry * sx;
  if (Math.abs(denominator) < 1e-12) return undefined;
  const t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / denominator;
  const u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / denominator;
  return t > 0 && t < 1 && u >= 0 && u <= 1 ? t : undefined;
}

/** Inside by the even-odd rule, and not on the outline. */
function deepInside(p: Point, ring: readonly Point[]): boolean {
  let inside = false;
  for (let k = 0; k < ring.length; k++) {
    const [a, b] = [ring[k] as Point, ring[(k + 1) % ring.length] as Point];
    if (nearestOnSegment(space(p), space(a), space(b)).distance < INSIDE_MM) return false;
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside;
  }
  return inside;
}
