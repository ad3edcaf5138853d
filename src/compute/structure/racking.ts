import type { Opening } from '../../records/index.js';

type Triple = [number, number, number];

/**
 * Racking angle of an opening, degrees (0 is square), without a side to it: the record does not say which diagonal is which.
 *
 * The opening is taken as a parallelogram of sides a, b whose corner is off square by γ; its diagonals are
 * √(a² + b² ± 2ab sin γ) (law of cosines). All readings (two or fewer of each side, both diagonals) are fitted by least squares
 * (Gauss–Newton); a side that was not read stands at its nominal size. From squared diagonals alone, sin γ = (d1² − d2²)/4ab.
 * Undefined without both diagonals. Worked: 2000 × 1000 racked by 0.2° has diagonals 2239.1879 and 2232.9437.
 */
export function rackingDeg({
  measured,
  widthMm,
  heightMm,
}: Pick<Opening, 'measured' | 'widthMm' | 'heightMm'>): number | undefined {
  const diagonals = measured?.diagonalsMm;
  if (!diagonals || widthMm <= 0 || heightMm <= 0) return undefined;
  const widths = readings(measured.topMm, measured.bottomMm, widthMm);
  const heights = readings(measured.frontMm, measured.rearMm, heightMm);
  let [a, b] = [mean(widths), mean(heights)];
  let skew = clamp((diagonals[0] ** 2 - diagonals[1] ** 2) / (4 * a * b));
  for (let round = 0; round < 20; round++) {
    const step = gaussNewtonStep(a, b, skew, widths, heights, diagonals);
    if (!step) break;
    [a, b, skew] = [a + step[0], b + step[1], clamp(skew + step[2])];
    if (Math.abs(step[2]) < 1e-14) break;
  }
  return Math.abs((Math.asin(skew) * 180) / Math.PI);
}

const readings = (one: number | undefined, other: number | undefined, nominal: number): readonly number[] => {
  const read = [one, other].filter((value) => value !== undefined);
  return read.length > 0 ? read : [nominal];
};
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const clamp = (sine: number): number => Math.min(0.999, Math.max(-0.999, sine));

/** One step of the fit: normal equations of residuals against (a, b, sin γ). */
function gaussNewtonStep(
  a: number,
  b: number,
  skew: number,
  widths: readonly number[],
  heights: readonly number[],
  diagonals: readonly [number, number],
): Triple | undefined {
  const rows: [Triple, number][] = [
    ...widths.map((read): [Triple, number] => [[1, 0, 0], read - a]),
    ...heights.map((read): [Triple, number] => [[0, 1, 0], read - b]),
    ...([1, -1] as const).map((sign, i): [Triple, number] => {
      const diagonal = Math.sqrt(a * a + b * b + sign * 2 * a * b * skew);
      return [
        [(a + sign * b * skew) / diagonal, (b + sign * a * skew) / diagonal, (sign * a * b) / diagonal],
        (diagonals[i] as number) - diagonal,
      ];
    }),
  ];
  const normal: Triple[] = [0, 1, 2].map(
    (i) => [0, 1, 2].map((j) => rows.reduce((s, [r]) => s + (r[i] as number) * (r[j] as number), 0)) as Triple,
  );
  const right = [0, 1, 2].map((i) => rows.reduce((s, [r, off]) => s + (r[i] as number) * off, 0)) as Triple;
  return solve(normal as [Triple, Triple, Triple], right);
}

/** Cramer's rule for three unknowns; undefined where they are not determined. */
function solve(m: [Triple, Triple, Triple], right: Triple): Triple | undefined {
  const whole = determinant(m);
  if (Math.abs(whole) < 1e-12) return undefined;
  return [0, 1, 2].map((k) => {
    const replaced = m.map((row, i) => row.map((value, j) => (j === k ? right[i] : value))) as [Triple, Triple, Triple];
    return determinant(replaced) / whole;
  }) as Triple;
}

const determinant = ([[a, b, c], [d, e, f], [g, h, i]]: [Triple, Triple, Triple]): number =>
  a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
