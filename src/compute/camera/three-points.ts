import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { add, cross, distance, dot, norm, scale, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { Camera, Pixel } from './camera.js';
import { rayThrough } from './camera.js';

/**
 * Where a camera of known focal length may stand that shows three places at three pixels: up to four answers, after Grunert (1841)
 * in the form of Haralick, Lee, Ottenberg and Nölle, "Review and analysis of solutions of the three point perspective pose
 * estimation problem", IJCV 13, 1994. `lens`: a camera with the focal length and axis; where it stands is not used.
 */
export function camerasOfThree(
  lens: Camera,
  places: readonly [Vec3, Vec3, Vec3],
  pixels: readonly [Pixel, Pixel, Pixel],
): readonly Camera[] {
  const flat: Camera = { ...lens, centre: [0, 0, 0], right: [1, 0, 0], down: [0, 1, 0], look: [0, 0, 1] };
  const rays = pixels.map((px) => rayThrough(flat, px)) as [Vec3, Vec3, Vec3];
  return distancesOf(places, rays).flatMap((distances) => {
    const seen = rays.map((ray, i) => scale(ray, distances[i] as number)) as [Vec3, Vec3, Vec3];
    const placed = standing(flat, seen, places);
    return placed ? [placed] : [];
  });
}

/** The distances from the camera to three places, mm, by Grunert's quartic. */
function distancesOf(
  [p1, p2, p3]: readonly [Vec3, Vec3, Vec3],
  [r1, r2, r3]: readonly [Vec3, Vec3, Vec3],
): readonly (readonly [number, number, number])[] {
  const [a, b, c] = [distance(p2, p3), distance(p1, p3), distance(p1, p2)];
  if (a * b * c === 0) return [];
  const [cosA, cosB, cosC] = [dot(r2, r3), dot(r1, r3), dot(r1, r2)];
  const [a2, b2, c2] = [a * a, b * b, c * c];
  const q = (a2 - c2) / b2;
  const s = (a2 + c2) / b2;
  const quartic = [
    (q - 1) ** 2 - (4 * c2 * cosA ** 2) / b2,
    4 * (q * (1 - q) * cosB - (1 - s) * cosA * cosC + (2 * c2 * cosA ** 2 * cosB) / b2),
    2 *
      (q * q -
        1 +
        2 * q * q * cosB ** 2 +
        (2 * (b2 - c2) * cosA ** 2) / b2 -
        4 * s * cosA * cosB * cosC +
        (2 * (b2 - a2) * cosC ** 2) / b2),
    4 * (-q * (1 + q) * cosB + (2 * a2 * cosC ** 2 * cosB) / b2 - (1 - s) * cosA * cosC),
    (1 + q) ** 2 - (4 * a2 * cosC ** 2) / b2,
  ];
  return realRoots(quartic).flatMap((v) => {
    const square = b2 / (1 + v * v - 2 * v * cosB);
    if (v <= 0 || square <= 0) return [];
    const first = Math.sqrt(square);
    return roots(-2 * v * cosA, v * v - a2 / square)
      .filter((u) => u > 0 && Math.abs(u * u + 1 - 2 * u * cosC - c2 / square) < SAME * (c2 / square))
      .map((u) => [first, u * first, v * first] as const);
  });
}

/** The third side must come out as it is, to this share: a root of the quartic loses half of its digits where two fall together. */
const SAME = 1e-3;

/** Of u² + p u + q; one that is none by rounding counts. */
function roots(p: number, q: number): readonly number[] {
  const under = Math.max((p * p) / 4 - q, -1e-9 * Math.abs(q));
  const half = Math.sqrt(Math.max(under, 0));
  return (p * p) / 4 - q < -1e-6 * Math.max(1, Math.abs(q)) ? [] : [-p / 2 + half, -p / 2 - half];
}

/** Real roots of a polynomial, highest power first, as eigenvalues of its companion matrix. */
function realRoots(coefficients: readonly number[]): readonly number[] {
  const largest = Math.max(...coefficients.map(Math.abs));
  const first = coefficients.findIndex((value) => Math.abs(value) > largest * 1e-12);
  const [lead, ...rest] = coefficients.slice(first) as [number, ...number[]];
  if (first < 0 || rest.length === 0) return [];
  const companion = Matrix.zeros(rest.length, rest.length);
  rest.forEach((value, i) => void companion.set(0, i, -value / lead));
  for (let i = 1; i < rest.length; i++) companion.set(i, i - 1, 1);
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(companion);
  return realEigenvalues.filter((value, i) => Math.abs(imaginaryEigenvalues[i] as number) < 1e-3 * Math.max(1, Math.abs(value)));
}

/** The camera that has three places of the datum at three of its own coordinates; undefined where they lie on a line. */
function standing(flat: Camera, seen: readonly [Vec3, Vec3, Vec3], places: readonly [Vec3, Vec3, Vec3]): Camera | undefined {
  const own = axesOf(seen);
  const datum = axesOf(places);
  if (!own || !datum) return undefined;
  const turned = (v: Vec3): Vec3 =>
    own.reduce((sum, axis, k) => add(sum, scale(datum[k] as Vec3, dot(axis, v))), [0, 0, 0] as Vec3);
  const [right, down, look] = [turned(flat.right), turned(flat.down), turned(flat.look)];
  return { ...flat, right, down, look, centre: subtract(places[0], turned(seen[0])) };
}

function axesOf([a, b, c]: readonly [Vec3, Vec3, Vec3]): readonly [Vec3, Vec3, Vec3] | undefined {
  const x = unit(subtract(b, a));
  const across = cross(x, subtract(c, a));
  if (norm(across) < 1e-6 * distance(a, c)) return undefined;
  const z = unit(across);
  return [x, cross(z, x), z];
}
