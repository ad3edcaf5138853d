import { describe, expect, it } from 'vitest';
import { loadAt } from '../../../src/compute/weights/load.js';
import { completeSides } from '../../../src/compute/weights/sides.js';
import { twoAxles } from './support.js';

/** Two axles of 5 t with a track of 2 m; the ends of the front one weighed 100 kg apart from its middle. */
const AXLES = twoAxles();
const SHARED = { axlesKg: [5000, 5000], load: loadAt(10_000, [2500, 0, 0]) };
const sides = (sidesKg: readonly (number | undefined)[], kgMm: number) =>
  completeSides(sidesKg, AXLES, SHARED, { turnKgMm: [0, 0], causes: [{ name: 'records', kgMm }] }).turnKgMm;

describe('the moment to a side on an axle that was not weighed', () => {
  // 100 kg × 2 m on half of the vehicle tells of 400,000 kg·mm in all. Weighted mean of two values by their variances (GUM; any textbook).
  const front = 200_000;

  it('is in proportion to the weighed one where the records know nothing', () => {
    const [weighed, other] = sides([100, undefined], 1e12);
    expect(weighed).toBeCloseTo(front, 6);
    expect(other).toBeCloseTo(front, 3);
  });

  it('makes up the whole that the records have where they are sure of it', () => {
    const [weighed, other] = sides([100, undefined], 0);
    expect(weighed).toBeCloseTo(front, 6);
    expect(other).toBeCloseTo(-front, 6);
  });

  it('lies halfway where both know as much', () => {
    // ± 25 mm of rectangular spread on 5 t of the 10 t: √3 in the standard deviation, doubled for the whole.
    const [, other] = sides([100, undefined], (5000 * 25) / Math.sqrt(3) / 0.5);
    expect(other).toBeCloseTo(0, 3);
  });

  it('three quarters of the way to the surer where that is √3 as sure', () => {
    const [, other] = sides([100, undefined], 5000 * 25 * 2);
    // Weights 1/3 and 1: of 400,000 three quarters is told, less what the front has.
    expect(other).toBeCloseTo(0.75 * 400_000 - front, 3);
  });

  it('is what the records have where nothing was weighed, and as weighed where all was', () => {
    expect(completeSides([undefined, undefined], AXLES, SHARED, { turnKgMm: [7, -9], causes: [] }).turnKgMm).toEqual([7, -9]);
    const all = completeSides([100, -50], AXLES, SHARED, undefined);
    expect(all.turnKgMm.map((one) => Math.round(one))).toEqual([200_000, -100_000]);
    expect(all.sources).toEqual([]);
    expect(all.turnsFrom([1, 2])).toEqual([2000, 4000]);
  });
});
