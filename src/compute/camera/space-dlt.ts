import { determinant, LuDecomposition, Matrix, QrDecomposition } from 'ml-matrix';
import { cross, dot, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Camera, Pixel } from './camera.js';
import { normalisation, nullVector } from './homography.js';

/** A place in space, mm, and where the picture shows it. */
export interface SpacePair {
  readonly at: Vec3;
  readonly px: Pixel;
}

/**
 * Twelve numbers, row by row, of the projection that shows six or more places in space at their pixels: the normalised direct linear
 * transform (Hartley and Zisserman, *Multiple View Geometry*, 2nd ed. 2003, algorithm 7.1, first step). Undefined where the pairs do
 * not settle one: fewer than six, or all in one plane.
 */
export function projectionOf(pairs: readonly SpacePair[]): readonly number[] | undefined {
  if (pairs.length < 6) return undefined;
  const to = normalisation(pairs.map(({ px }) => px));
  const from = spaceNormalisation(pairs.map(({ at }) => at));
  if (!to || !from) return undefined;
  const rows = pairs.flatMap(({ at, px }) => {
    const place = [...at.map((value, k) => (value - (from.middle[k] as number)) * from.factor), 1];
    const u = (px[0] - to.middle[0]) * to.factor;
    const v = (px[1] - to.middle[1]) * to.factor;
    return [
      [0, 0, 0, 0, ...place.map((one) => -one), ...place.map((one) => v * one)],
      [...place, 0, 0, 0, 0, ...place.map((one) => -u * one)],
    ];
  });
  const solution = nullVector(rows);
  if (!solution) return undefined;
  const normalised = new Matrix([solution.slice(0, 4), solution.slice(4, 8), solution.slice(8, 12)]);
  const picture = new Matrix([
    [1 / to.factor, 0, to.middle[0]],
    [0, 1 / to.factor, to.middle[1]],
    [0, 0, 1],
  ]);
  const space = new Matrix([0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((k) => spaceEntry(from, i, k))));
  return picture.mmul(normalised).mmul(space).to1DArray();
}

interface SpaceNormalisation {
  readonly middle: Vec3;
  readonly factor: number;
}

function spaceNormalisation(points: readonly Vec3[]): SpaceNormalisation | undefined {
  const middle = [0, 1, 2].map(
    (k) => points.reduce((sum, point) => sum + (point[k] as number), 0) / points.length,
  ) as unknown as Vec3;
  const mean =
    points.reduce((sum, p) => sum + Math.hypot(p[0] - middle[0], p[1] - middle[1], p[2] - middle[2]), 0) / points.length;
  return mean > 0 ? { middle, factor: Math.sqrt(3) / mean } : undefined;
}

const spaceEntry = ({ middle, factor }: SpaceNormalisation, i: number, k: number): number => {
  if (i === 3) return k === 3 ? 1 : 0;
  return k === 3 ? -factor * (middle[i] as number) : i === k ? factor : 0;
};

/**
 * The camera of a projection: its calibration and rotation parted by RQ (the same book, 6.2.4 and A4.1.1), square pixels made of both.
 * `front`: a place that it must have before it. Undefined where no camera has that projection.
 */
export function cameraOfProjection(projection: readonly number[], principal: Pixel, front: Vec3): Camera | undefined {
  const p = new Matrix([projection.slice(0, 4), projection.slice(4, 8), projection.slice(8, 12)] as number[][]);
  const left = p.subMatrix(0, 2, 0, 2);
  const parted = rq(left);
  if (!parted) return undefined;
  const { k, r } = parted;
  const scaleOf = k.get(2, 2);
  const focalPx = Math.sqrt(Math.abs((k.get(0, 0) / scaleOf) * (k.get(1, 1) / scaleOf)));
  const centre = centreOf(p);
  if (!centre || !Number.isFinite(focalPx) || focalPx <= 0) return undefined;
  // The sign of a projection is free, that of a rotation is not.
  const sign = determinant(r) < 0 ? -1 : 1;
  const [right, look] = [0, 2].map((i) => r.getRow(i).map((value) => sign * value) as unknown as Vec3) as [Vec3, Vec3];
  // Behind the camera: no camera shows them so, only a mirrored picture.
  if (dot(subtract(front, centre), look) <= 0) return undefined;
  return { centre, right, down: cross(look, right), look, focalPx, k1: 0, principal };
}

/** The place that a projection shows nowhere. */
function centreOf(p: Matrix): Vec3 | undefined {
  const left = new LuDecomposition(p.subMatrix(0, 2, 0, 2));
  if (left.isSingular()) return undefined;
  return left
    .solve(Matrix.columnVector(p.getColumn(3)))
    .to1DArray()
    .map((value) => -value) as unknown as Vec3;
}

/** An upper triangle with a positive diagonal times a rotation (or its mirror). */
function rq(m: Matrix): { readonly k: Matrix; readonly r: Matrix } | undefined {
  const flip = new Matrix([
    [0, 0, 1],
    [0, 1, 0],
    [1, 0, 0],
  ]);
  const qr = new QrDecomposition(flip.mmul(m).transpose());
  const k = flip.mmul(qr.upperTriangularMatrix.transpose()).mmul(flip);
  const r = flip.mmul(qr.orthogonalMatrix.transpose());
  if ([0, 1, 2].some((i) => k.get(i, i) === 0)) return undefined;
  const signs = Matrix.diag([0, 1, 2].map((i) => Math.sign(k.get(i, i))));
  return { k: k.mmul(signs), r: signs.mmul(r) };
}
