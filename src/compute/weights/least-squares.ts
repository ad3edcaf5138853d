/** Weighted linear least squares for a handful of unknowns. */
export interface Adjustment {
  readonly solution: readonly number[];
  /** Observation less its adjusted value. */
  readonly residuals: readonly number[];
  /** Standard deviation of each residual; 0 where nothing else checks the observation. */
  readonly residualDeviation: readonly number[];
  /** Σ (residual ÷ u)². */
  readonly chiSquare: number;
}

/**
 * Minimises Σ ((l − A x) / u)² by the normal equations N x = Aᵀ W l, N = Aᵀ W A. The residuals have the covariance
 * W⁻¹ − A N⁻¹ Aᵀ (textbook adjustment of observations by parameters). Nothing where the unknowns are not determined.
 */
export function adjustReadings(
  design: readonly (readonly number[])[],
  observed: readonly number[],
  u: readonly number[],
): Adjustment | undefined {
  const unknowns = design[0]?.length ?? 0;
  const weights = u.map((one) => 1 / (one * one));
  const normal = table(unknowns, (i, j) => design.reduce((sum, row, k) => sum + at(row, i) * at(row, j) * at(weights, k), 0));
  const inverse = invert(normal);
  if (!inverse) return undefined;
  const right = Array.from({ length: unknowns }, (_, i) =>
    design.reduce((sum, row, k) => sum + at(row, i) * at(weights, k) * at(observed, k), 0),
  );
  const solution = inverse.map((row) => row.reduce((sum, value, j) => sum + value * at(right, j), 0));
  const residuals = design.map((row, k) => at(observed, k) - row.reduce((sum, value, j) => sum + value * at(solution, j), 0));
  const residualDeviation = design.map((row, k) => {
    const spread = row.reduce(
      (sum, a, i) => sum + row.reduce((inner, b, j) => inner + a * b * at(inverse[i] as number[], j), 0),
      0,
    );
    const variance = 1 / at(weights, k) - spread;
    return variance > 1e-9 / at(weights, k) ? Math.sqrt(variance) : 0;
  });
  const chiSquare = residuals.reduce((sum, v, k) => sum + v * v * at(weights, k), 0);
  return { solution, residuals, residualDeviation, chiSquare };
}

const at = (row: readonly number[], i: number): number => row[i] as number;

const table = (size: number, of: (i: number, j: number) => number): number[][] =>
  Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_unused, j) => of(i, j)));

/** Gauss–Jordan, without pivoting: normal equations are positive definite. Nothing for a singular matrix. */
function invert(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  const largest = Math.max(...matrix.flat());
  for (let column = 0; column < size; column++) {
    const lead = at(rows[column] as number[], column);
    if (lead <= 1e-12 * largest) return undefined;
    const pivot = (rows[column] as number[]).map((value) => value / lead);
    for (let i = 0; i < size; i++) {
      const factor = at(rows[i] as number[], column);
      rows[i] = i === column ? pivot : (rows[i] as number[]).map((value, j) => value - factor * at(pivot, j));
    }
  }
  return rows.map((row) => row.slice(size));
}

/** Least squares of observations whose errors go together. */
export interface CorrelatedAdjustment {
  readonly solution: readonly number[];
  /** G of x = G l: how each unknown follows from each observation, row by row. */
  readonly gain: readonly (readonly number[])[];
  /** Observation less its adjusted value. */
  readonly residuals: readonly number[];
  /** vᵀ V⁻¹ v. */
  readonly chiSquare: number;
}

/**
 * Minimises (l − A x)ᵀ V⁻¹ (l − A x): x = (Aᵀ V⁻¹ A)⁻¹ Aᵀ V⁻¹ l, the best linear unbiased estimate for observations with the
 * covariance V (Aitken's generalised least squares). Nothing where V or the normal equations are singular.
 */
export function adjustCorrelated(
  design: readonly (readonly number[])[],
  observed: readonly number[],
  covariance: readonly (readonly number[])[],
): CorrelatedAdjustment | undefined {
  const weight = invert(covariance);
  if (!weight || design.length === 0) return undefined;
  const unknowns = design[0]?.length ?? 0;
  const column = (i: number): readonly number[] => design.map((row) => at(row, i));
  const weighted = Array.from({ length: unknowns }, (_, i) => multiply(weight, column(i)));
  const inverse = invert(table(unknowns, (i, j) => dot(weighted[i] as number[], column(j))));
  if (!inverse) return undefined;
  const gain = inverse.map((row) =>
    observed.map((_, k) => row.reduce((sum, value, j) => sum + value * at(weighted[j] as number[], k), 0)),
  );
  const solution = gain.map((row) => dot(row, observed));
  const residuals = design.map((row, k) => at(observed, k) - dot(row, solution));
  return { solution, gain, residuals, chiSquare: dot(residuals, multiply(weight, residuals)) };
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, value, i) => sum + value * at(b, i), 0);

const multiply = (matrix: readonly (readonly number[])[], vector: readonly number[]): number[] =>
  matrix.map((row) => dot(row, vector));
