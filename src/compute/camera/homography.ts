import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import type { Pixel } from './camera.js';

/** Nine numbers, row by row: takes `[a, b, 1]` of a plane to `[u, v, 1]` of a picture but for a factor. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** A place on a plane by two coordinates, and where the picture shows it. */
export interface PlanePair {
  readonly on: readonly [number, number];
  readonly px: Pixel;
}

/**
 * The homography of four or more pairs by the normalised direct linear transform (Hartley and Zisserman, *Multiple View Geometry*,
 * 2nd ed. 2003, algorithm 4.2). Undefined where the pairs do not settle one: fewer than four, or three of four on a line.
 */
export function homographyOf(pairs: readonly PlanePair[]): Homography | undefined {
  if (pairs.length < 4) return undefined;
  const from = normalisation(pairs.map(({ on }) => on));
  const to = normalisation(pairs.map(({ px }) => px));
  if (!from || !to) return undefined;
  const rows = pairs.flatMap(({ on, px }) => {
    const [x, y] = apply(from, on);
    const [u, v] = apply(to, px);
    return [
      [0, 0, 0, -x, -y, -1, v * x, v * y, v],
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
    ];
  });
  const solution = nullVector(rows);
  if (!solution) return undefined;
  const h = new Matrix([solution.slice(0, 3), solution.slice(3, 6), solution.slice(6, 9)]);
  const back = inverseOf(to).mmul(h).mmul(matrixOf(from));
  const size = back.norm();
  const values = back.to1DArray().map((value) => value / size) as unknown as Homography;
  return Math.abs(determinant(values)) > 1e-15 ? values : undefined;
}

/** Where a homography shows a place of its plane; undefined on the picture's horizon. */
export function shownBy(h: Homography, [x, y]: readonly [number, number]): Pixel | undefined {
  const w = h[6] * x + h[7] * y + h[8];
  if (Math.abs(w) < 1e-12) return undefined;
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}

/** The homography back from the picture to the plane: the adjugate, which serves as inverse up to a factor. */
export function inverse(h: Homography): Homography {
  const [a, b, c, d, e, f, g, i, j] = h;
  return [
    e * j - f * i,
    c * i - b * j,
    b * f - c * e,
    f * g - d * j,
    a * j - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  ];
}

const determinant = ([a, b, c, d, e, f, g, i, j]: Homography): number =>
  a * (e * j - f * i) - b * (d * j - f * g) + c * (d * i - e * g);

/** Moves points to their middle and scales them to √2 from it on average (the same book, 4.4.4). */
export interface Normalisation {
  readonly middle: readonly [number, number];
  readonly factor: number;
}

/** Undefined where all points are one. */
export function normalisation(points: readonly (readonly [number, number])[]): Normalisation | undefined {
  const middle = [0, 1].map((k) => points.reduce((sum, point) => sum + (point[k] as number), 0) / points.length) as [
    number,
    number,
  ];
  const mean = points.reduce((sum, [x, y]) => sum + Math.hypot(x - middle[0], y - middle[1]), 0) / points.length;
  return mean > 0 ? { middle, factor: Math.SQRT2 / mean } : undefined;
}

const apply = ({ middle, factor }: Normalisation, [x, y]: readonly [number, number]): [number, number] => [
  (x - middle[0]) * factor,
  (y - middle[1]) * factor,
];

const matrixOf = ({ middle, factor }: Normalisation): Matrix =>
  new Matrix([
    [factor, 0, -middle[0] * factor],
    [0, factor, -middle[1] * factor],
    [0, 0, 1],
  ]);

const inverseOf = ({ middle, factor }: Normalisation): Matrix =>
  new Matrix([
    [1 / factor, 0, middle[0]],
    [0, 1 / factor, middle[1]],
    [0, 0, 1],
  ]);

/** A second singular value this small beside the greatest leaves more than one answer. */
const RANK = 1e-7;

/** The unit vector that homogeneous equations leave; undefined where they leave more than one. */
export function nullVector(rows: readonly (readonly number[])[]): readonly number[] | undefined {
  const columns = rows[0]?.length ?? 0;
  const padded = [...rows];
  while (padded.length < columns) padded.push(new Array<number>(columns).fill(0));
  const svd = new SingularValueDecomposition(new Matrix(padded.map((row) => [...row])), { autoTranspose: true });
  const order = svd.diagonal.map((value, i) => ({ value, i })).sort((a, b) => b.value - a.value);
  const [greatest, second, last] = [order[0], order[columns - 2], order[columns - 1]];
  if (!greatest || !second || !last || second.value <= greatest.value * RANK) return undefined;
  return svd.rightSingularVectors.getColumn(last.i);
}
