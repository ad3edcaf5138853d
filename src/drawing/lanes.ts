import type { Point } from './scene.js';

/** Lines that lie over each other on the sheet, drawn side by side. */

const LANE_MM = 0.8;
/** Segments nearer than this across, and as near in direction, share a corridor, mm. */
const SAME_MM = 0.7;
const SHORTEST_MM = 0.4;

interface Piece {
  readonly lineIndex: number;
  readonly segment: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Shifts the segments of every line sideways so that those in one corridor are told apart. Lanes are given in the order of
 * the lines: the same lines give the same lanes. Ends that were moved are tied back to where they began.
 */
export function spreadLines(lines: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  const shifts = lines.map((points) => points.map(() => 0));
  for (const corridor of corridors(lines)) {
    const lanes: Piece[][] = [];
    const pieces = [...corridor].sort((a, b) => a.lineIndex - b.lineIndex || a.segment - b.segment);
    const laneOf = new Map<Piece, number>();
    for (const piece of pieces) {
      let lane = lanes.findIndex((others) =>
        others.every(
          (other) => other.lineIndex === piece.lineIndex || other.to <= piece.from + 0.5 || other.from >= piece.to - 0.5,
        ),
      );
      if (lane === -1) lane = lanes.push([]) - 1;
      (lanes[lane] as Piece[]).push(piece);
      laneOf.set(piece, lane);
    }
    for (const [piece, lane] of laneOf) {
      (shifts[piece.lineIndex] as number[])[piece.segment] = (lane - (lanes.length - 1) / 2) * LANE_MM;
    }
  }
  return lines.map((points, index) => shifted(points, shifts[index] as number[]));
}

function corridors(lines: readonly (readonly Point[])[]): readonly (readonly Piece[])[] {
  const found: { readonly angle: number; readonly across: number; readonly pieces: Piece[] }[] = [];
  lines.forEach((points, lineIndex) => {
    for (let segment = 1; segment < points.length; segment++) {
      const a = points[segment - 1] as Point;
      const b = points[segment] as Point;
      if (Math.hypot(b[0] - a[0], b[1] - a[1]) < SHORTEST_MM) continue;
      const { angle, across, from, to } = corridorOf(a, b);
      const piece: Piece = { lineIndex, segment: segment - 1, from, to };
      const same = found.find((other) => Math.abs(other.angle - angle) < 0.02 && Math.abs(other.across - across) < SAME_MM);
      if (same) same.pieces.push(piece);
      else found.push({ angle, across, pieces: [piece] });
    }
  });
  return found.map(({ pieces }) => pieces);
}

/** Direction without sense (0 to π), distance of the line from the sheet's origin, and where along it the segment lies. */
function corridorOf(a: Point, b: Point): { angle: number; across: number; from: number; to: number } {
  const normal = direction(a, b);
  const angle = Math.atan2(normal[1], normal[0]);
  const along = (p: Point): number => p[0] * normal[0] + p[1] * normal[1];
  return {
    angle,
    across: a[0] * -normal[1] + a[1] * normal[0],
    from: Math.min(along(a), along(b)),
    to: Math.max(along(a), along(b)),
  };
}

/** Unit direction, turned so that it points right, or down where it is upright. */
function direction(a: Point, b: Point): Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const d: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  return d[0] < -1e-3 || (Math.abs(d[0]) <= 1e-3 && d[1] < 0) ? [-d[0], -d[1]] : d;
}

function shifted(points: readonly Point[], shifts: readonly number[]): readonly Point[] {
  const out: Point[] = [];
  const moved: { readonly a: Point; readonly b: Point }[] = [];
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] as Point;
    const b = points[i] as Point;
    const d = direction(a, b);
    const by = shifts[i - 1] as number;
    const move = ([x, y]: Point): Point => [x - d[1] * by, y + d[0] * by];
    moved.push({ a: move(a), b: move(b) });
  }
  const first = points[0];
  const last = points.at(-1);
  if (first) out.push(first);
  moved.forEach((piece, index) => {
    const before = moved[index - 1];
    const corner = before && meet(before.a, before.b, piece.a, piece.b);
    if (corner && Math.hypot(corner[0] - piece.a[0], corner[1] - piece.a[1]) < 4 * LANE_MM + 4) out.push(corner);
    else if (before) out.push(before.b, piece.a);
    else out.push(piece.a);
    if (index === moved.length - 1) out.push(piece.b);
  });
  if (last) out.push(last);
  return out.filter(
    (point, index) =>
      index === 0 || Math.hypot(point[0] - (out[index - 1] as Point)[0], point[1] - (out[index - 1] as Point)[1]) > 1e-3,
  );
}

/** Where two lines cross, unless they are parallel. */
function meet(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const r: Point = [b[0] - a[0], b[1] - a[1]];
  const s: Point = [d[0] - c[0], d[1] - c[1]];
  const denominator = r[0] * s[1] - r[1] * s[0];
  if (Math.abs(denominator) < 1e-6 * (Math.hypot(...r) * Math.hypot(...s) + 1e-9)) return undefined;
  const t = ((c[0] - a[0]) * s[1] - (c[1] - a[1]) * s[0]) / denominator;
  return [a[0] + r[0] * t, a[1] + r[1] * t];
}
