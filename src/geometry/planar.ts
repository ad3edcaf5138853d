/** Polygons on paper: area, clipping, sides that cross. Corners in space are laid flat by facet.ts. */

export type Point = readonly [number, number];

/** Twice the signed area of a triangle: positive where the corners run anticlockwise. */
export const turn = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Signed area of a flat polygon: positive where its corners run anticlockwise. */
export function signedArea(corners: readonly Point[]): number {
  let twice = 0;
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i] as Point;
    const b = corners[(i + 1) % corners.length] as Point;
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return twice / 2;
}

/**
 * The part of a polygon inside a convex one (Sutherland and Hodgman, "Reentrant polygon clipping", CACM 17, 1974).
 * The convex one's corners run anticlockwise. A subject that falls into several parts comes back as one with seams of no width:
 * its area and centroid hold.
 */
export function clipToConvex(subject: readonly Point[], convex: readonly Point[]): readonly Point[] {
  let kept: readonly Point[] = subject;
  for (let i = 0; i < convex.length; i++) {
    kept = clipToSide(kept, convex[i] as Point, convex[(i + 1) % convex.length] as Point);
  }
  return kept;
}

function clipToSide(subject: readonly Point[], a: Point, b: Point): readonly Point[] {
  const kept: Point[] = [];
  for (let i = 0; i < subject.length; i++) {
    const from = subject[i] as Point;
    const to = subject[(i + 1) % subject.length] as Point;
    const fromSide = turn(a, b, from);
    const toSide = turn(a, b, to);
    if (fromSide >= 0) kept.push(from);
    if (fromSide * toSide < 0) {
      const t = fromSide / (fromSide - toSide);
      kept.push([from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t]);
    }
  }
  return kept;
}

/** The first two sides, no neighbours, that cross; each by the number of the corner that it starts at. */
export function crossingSides(corners: readonly Point[]): readonly [number, number] | undefined {
  const count = corners.length;
  const corner = (i: number): Point => corners[i % count] as Point;
  for (let i = 0; i < count; i++) {
    for (let j = i + 2; j < count; j++) {
      // The first and the last side are neighbours too, and like all that share a corner do not cross.
      if (cross(corner(i), corner(i + 1), corner(j), corner(j + 1))) return [i, j];
    }
  }
  return undefined;
}

const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

/** A polygon without crossing sides as triangles (ear clipping), each anticlockwise, by corner numbers. */
export function triangles(corners: readonly Point[]): readonly (readonly [number, number, number])[] {
  const left = corners.map((_, i) => i);
  if (signedArea(corners) < 0) left.reverse();
  const found: [number, number, number][] = [];
  while (left.length > 3) {
    const ear = left.findIndex((_, k) => isEar(left, k, corners));
    // A polygon that crosses itself may have no ear left: any corner keeps the loop finite.
    const k = Math.max(ear, 0);
    found.push(cornersAt(left, k));
    left.splice(k, 1);
  }
  if (left.length === 3) found.push(left as [number, number, number]);
  return found;
}

const cornersAt = (left: readonly number[], k: number): [number, number, number] => [
  left[(k + left.length - 1) % left.length] as number,
  left[k] as number,
  left[(k + 1) % left.length] as number,
];

function isEar(left: readonly number[], k: number, corners: readonly Point[]): boolean {
  const ear = cornersAt(left, k);
  const [a, b, c] = ear.map((i) => corners[i] as Point) as [Point, Point, Point];
  if (turn(a, b, c) <= 0) return false;
  return left.every((i) => {
    if (ear.includes(i)) return true;
    const p = corners[i] as Point;
    return turn(a, b, p) < 0 || turn(b, c, p) < 0 || turn(c, a, p) < 0;
  });
}

/** True where no corner turns inward; the corners run anticlockwise. */
export function isConvex(corners: readonly Point[]): boolean {
  const count = corners.length;
  return corners.every(
    (corner, i) => turn(corners[(i + count - 1) % count] as Point, corner, corners[(i + 1) % count] as Point) >= 0,
  );
}
