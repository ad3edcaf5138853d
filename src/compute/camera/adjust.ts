import { CholeskyDecomposition, Matrix, pseudoInverse } from 'ml-matrix';
import { lazy } from '../lazy-value.js';

/** What an adjustment ends with. */
export interface Adjusted {
  /** Steps from the start, one for each unknown. */
  readonly values: readonly number[];
  /** Sum of the squared residuals, each in units of its own standard deviation. */
  readonly chiSquare: number;
  /** Covariance of the unknowns at the end, for residuals of standard deviation 1; worked out when it is asked for. */
  readonly covariance: () => Matrix;
}

const ROUNDS = 60;
const GOOD = 1e-10;

/**
 * Least squares by Levenberg and Marquardt (Marquardt, SIAM J. Appl. Math. 11, 1963) from `start`. `residuals` gives each divided by
 * its standard deviation, undefined where the unknowns are impossible; `steps` are small changes of each unknown for the derivatives.
 * Undefined where the start is impossible.
 */
export function adjust(
  residuals: (values: readonly number[]) => readonly number[] | undefined,
  start: readonly number[],
  steps: readonly number[],
): Adjusted | undefined {
  let values = [...start];
  let left = residuals(values);
  if (!left) return undefined;
  let sum = squares(left);
  let damping = 1e-3;
  for (let round = 0; round < ROUNDS; round++) {
    const slopes = slopesAt(residuals, values, left, steps);
    const across = slopes.transpose();
    const normal = across.mmul(slopes);
    const pull = across.mmul(Matrix.columnVector([...left]));
    const better = stepDown(residuals, values, normal, pull, sum, damping);
    if (!better) break;
    const gain = sum - better.sum;
    ({ values, left, sum, damping } = better);
    if (gain <= GOOD * Math.max(sum, GOOD)) break;
  }
  const [end, rest] = [values, left];
  return { values, chiSquare: sum, covariance: lazy(() => inverseOfNormal(slopesAt(residuals, end, rest, steps))) };
}

interface Step {
  readonly values: number[];
  readonly left: readonly number[];
  readonly sum: number;
  readonly damping: number;
}

/** The first step that makes the sum smaller, with more damping until one does; undefined where none does. */
function stepDown(
  residuals: (values: readonly number[]) => readonly number[] | undefined,
  values: readonly number[],
  normal: Matrix,
  pull: Matrix,
  sum: number,
  damping: number,
): Step | undefined {
  for (let factor = damping; factor < 1e12; factor *= 8) {
    const damped = normal.clone();
    for (let i = 0; i < values.length; i++) damped.set(i, i, normal.get(i, i) * (1 + factor) + 1e-30);
    const cholesky = new CholeskyDecomposition(damped);
    if (!cholesky.isPositiveDefinite()) continue;
    const move = cholesky.solve(pull).to1DArray();
    const tried = values.map((value, i) => value - (move[i] as number));
    const left = residuals(tried);
    const next = left ? squares(left) : Number.POSITIVE_INFINITY;
    if (left && next < sum) return { values: tried, left, sum: next, damping: Math.max(factor / 10, 1e-12) };
  }
  return undefined;
}

/** Derivatives by central differences; a side that is impossible is left out. */
function slopesAt(
  residuals: (values: readonly number[]) => readonly number[] | undefined,
  values: readonly number[],
  here: readonly number[],
  steps: readonly number[],
): Matrix {
  const rows = here.map(() => new Array<number>(values.length).fill(0));
  const tried = [...values];
  for (const [k, value] of values.entries()) {
    const step = steps[k] as number;
    tried[k] = value + step;
    const up = residuals(tried) ?? here;
    tried[k] = value - step;
    const down = residuals(tried) ?? here;
    tried[k] = value;
    for (const [i, row] of rows.entries()) row[k] = ((up[i] as number) - (down[i] as number)) / (2 * step);
  }
  return new Matrix(rows);
}

const inverseOfNormal = (slopes: Matrix): Matrix => {
  const lengths = [...Array(slopes.columns).keys()].map((k) => Math.max(slopes.getColumnVector(k).norm(), 1e-300));
  // Unknowns of very different sizes (radians and millimetres) lose digits unless each is scaled first.
  const scaled = Matrix.zeros(slopes.columns, slopes.columns);
  for (let i = 0; i < slopes.columns; i++)
    for (let k = 0; k < slopes.columns; k++)
      scaled.set(
        i,
        k,
        slopes.getColumnVector(i).dot(slopes.getColumnVector(k)) / ((lengths[i] as number) * (lengths[k] as number)),
      );
  const inverse = pseudoInverse(scaled, 1e-13);
  for (let i = 0; i < slopes.columns; i++)
    for (let k = 0; k < slopes.columns; k++)
      inverse.set(i, k, inverse.get(i, k) / ((lengths[i] as number) * (lengths[k] as number)));
  return inverse;
};

const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);
