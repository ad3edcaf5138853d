import type { Point, Rect } from './scene.js';

/** Plane shapes on the sheet or in a view's plane. */

const turn = (o: Point, a: Point, b: Point): number => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Convex hull by Andrew's monotone chain; corners on a straight edge are left out. */
export function convexHull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (ordered: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const point of ordered) {
      while (out.length >= 2 && turn(out[out.length - 2] as Point, out[out.length - 1] as Point, point) <= 1e-9) out.pop();
      out.push(point);
    }
    out.pop();
    return out;
  };
  const hull = [...chain(sorted), ...chain(sorted.reverse())];
  return hull.length > 0 ? hull : sorted.slice(0, 1);
}

/** The share of the way where the segment last looked at is inside its rectangle; kept, since a sheet asks a million times. */
const inside = { from: 0, to: 1 };

/** Clips at one side: `p` is how fast the segment leaves it, `q` how far inside of it the segment starts. */
function clipSide(p: number, q: number): boolean {
  if (p === 0) return q >= 0;
  if (p < 0) inside.from = Math.max(inside.from, q / p);
  else inside.to = Math.min(inside.to, q / p);
  return true;
}

/** Whether any part of a segment is inside a rectangle, its edges included (Liang and Barsky). */
export function crossesRect(a: Point, b: Point, r: Rect): boolean {
  // Most are far from each other, which is seen without any division.
  if ((a[0] < r.x0 && b[0] < r.x0) || (a[0] > r.x1 && b[0] > r.x1)) return false;
  if ((a[1] < r.y0 && b[1] < r.y0) || (a[1] > r.y1 && b[1] > r.y1)) return false;
  inside.from = 0;
  inside.to = 1;
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  return (
    clipSide(-dx, a[0] - r.x0) &&
    clipSide(dx, r.x1 - a[0]) &&
    clipSide(-dy, a[1] - r.y0) &&
    clipSide(dy, r.y1 - a[1]) &&
    inside.from <= inside.to
  );
}

/** The part of a segment inside a rectangle, or nothing. */
export function clipSegment(a: Point, b: Point, r: Rect): readonly [Point, Point] | undefined {
  if (!crossesRect(a, b, r)) return undefined;
  const at = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  return [at(inside.from), at(inside.to)];
}

/** A line clipped to a rectangle, in as many pieces as it takes. */
export function clipLine(points: readonly Point[], r: Rect): readonly (readonly Point[])[] {
  const pieces: Point[][] = [];
  for (let i = 1; i < points.length; i++) {
    const part = clipSegment(points[i - 1] as Point, points[i] as Point, r);
    if (!part) continue;
    const last = pieces.at(-1);
    const end = last?.at(-1);
    if (last && end && Math.hypot(end[0] - part[0][0], end[1] - part[0][1]) < 1e-6) last.push(part[1]);
    else pieces.push([part[0], part[1]]);
  }
  return pieces;
}

/** A ring clipped to a rectangle (Sutherland and Hodgman). Empty where nothing is left. */
export function clipRing(ring: readonly Point[], r: Rect): readonly Point[] {
  const sides: readonly ((p: Point) => number)[] = [
    (p) => p[0] - r.x0,
    (p) => r.x1 - p[0],
    (p) => p[1] - r.y0,
    (p) => r.y1 - p[1],
  ];
  let out: Point[] = [...ring];
  for (const inside of sides) {
    const input = out;
    out = [];
    for (let i = 0; i < input.length; i++) {
      const a = input[i] as Point;
      const b = input[(i + 1) % input.length] as Point;
      const da = inside(a);
      const db = inside(b);
      if (da >= 0) out.push(a);
      if (da >= 0 !== db >= 0) {
        const t = da / (da - db);
        out.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
      }
    }
  }
  return out.length >= 3 ? out : [];
}

/** Point at a distance along a line, with the direction there. */
export function alongLine(points: readonly Point[], distanceMm: number): { readonly at: Point; readonly angle: number } {
  let left = distanceMm;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    const step = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (left <= step || i === points.length - 1) {
      const t = step === 0 ? 0 : Math.min(1, left / step);
      return { at: [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t], angle: Math.atan2(b[1] - a[1], b[0] - a[0]) };
    }
    left -= step;
  }
  return { at: points[0] ?? [0, 0], angle: 0 };
}

export function lineLengthMm(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}
