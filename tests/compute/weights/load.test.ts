import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axleModelOf } from '../../../src/compute/weights/axle-reactions.js';
import { centroidOf, type Load, loadAt, NO_LOAD, plus, sumOf, times } from '../../../src/compute/weights/load.js';
import {
  carrying,
  endsOf,
  minus,
  nothingWeighed,
  placedOn,
  solveAxleLoads,
  turnOf,
} from '../../../src/compute/weights/vehicle-load.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { axle, twoAxles } from './support.js';

const place = fc.tuple(
  fc.integer({ min: -3000, max: 12000 }),
  fc.integer({ min: -1300, max: 1300 }),
  fc.integer({ min: -500, max: 3200 }),
);
const mass = fc.integer({ min: 1, max: 5000 });
const masses = fc.array(fc.tuple(mass, place), { minLength: 1, maxLength: 8 });
const near = (found: Vec3, expected: readonly number[]) =>
  expect(found).toEqual(expected.map((value) => expect.closeTo(value, 6)));

describe('masses held by their first moments', () => {
  it('are centred at the weighted mean of their places, along, across and up', () => {
    fc.assert(
      fc.property(masses, (list) => {
        const sum = sumOf(list.map(([kg, at]) => loadAt(kg, at)));
        const total = list.reduce((so, [kg]) => so + kg, 0);
        expect(sum.massKg).toBe(total);
        near(
          centroidOf(sum),
          [0, 1, 2].map((i) => list.reduce((so, [kg, at]) => so + kg * (at[i] as number), 0) / total),
        );
      }),
    );
  });
  it('keep their place when they grow, and go when they are taken off', () => {
    fc.assert(
      fc.property(mass, place, fc.double({ min: 0.1, max: 9, noNaN: true }), (kg, at, factor) => {
        const one = loadAt(kg, at);
        expect(times(one, factor).massKg).toBeCloseTo(kg * factor, 6);
        near(centroidOf(times(one, factor)), at);
        const gone = plus(one, times(one, -1));
        expect(Object.values(gone).map(Math.abs)).toEqual([0, 0, 0, 0]);
      }),
    );
  });
  it('of nothing are at the datum', () => expect(centroidOf(NO_LOAD)).toEqual([0, 0, 0]));
});

describe('a vehicle on its axles', () => {
  const axles = twoAxles();
  const found = axleModelOf(axles);
  const axleModel = 'axleModel' in found ? found.axleModel : undefined;
  /** The moment that the ends of all axles show, to the right, kg·mm: both tracks are 2,000 mm. */
  const turn = ({ leftKg, rightKg }: ReturnType<typeof solveAxleLoads>) =>
    rightKg.reduce<number>((sum, kg, i) => sum + (((kg as number) - (leftKg[i] as number)) * 2000) / 2, 0);

  it('has the ends of its axles add to the axles, and their moment to that of the masses', () => {
    fc.assert(
      fc.property(masses, (list) => {
        const sum = sumOf(list.map(([kg, at]) => loadAt(kg, at)));
        const standing = solveAxleLoads(placedOn(axles, sum), axles, axleModel);
        standing.axlesKg.forEach((kg, i) => {
          expect((standing.leftKg[i] as number) + (standing.rightKg[i] as number)).toBeCloseTo(kg, 6);
        });
        expect(turn(standing) / 1e6).toBeCloseTo(sum.yKgMm / 1e6, 6);
        near(standing.centroid, centroidOf(sum));
      }),
    );
  });
  it('keeps what ends were weighed at, with what was put on since', () => {
    // By hand: weighed 2,600 and 2,400 kg in front, 3,000 and 3,000 kg behind; 500 kg at 2.5 m and 400 mm to the right.
    const weighed = { axlesKg: [5000, 6000], turnKgMm: [-200_000, 0] };
    const vehicleLoad = carrying({ weighed, placed: NO_LOAD, heightKgMm: 11_000 * 700 }, loadAt(500, [2500, 400, 300]));
    const standing = solveAxleLoads(vehicleLoad, axles, axleModel);
    expect(standing.axlesKg).toEqual([5250, 6250]);
    // The moment of 200,000 kg·mm is shared as 5250 : 6250, half of it over half the track.
    const share = [(200_000 * 5250) / 11_500, (200_000 * 6250) / 11_500] as const;
    expect(standing.leftKg).toEqual([
      expect.closeTo(2625 - (share[0] - 200_000) / 2000, 6),
      expect.closeTo(3125 - share[1] / 2000, 6),
    ]);
    expect(standing.centroid).toEqual([
      expect.closeTo((6000 * 5000 + 500 * 2500) / 11_500, 6),
      expect.closeTo(0, 6),
      expect.closeTo((11_000 * 700 + 500 * 300) / 11_500, 6),
    ]);
    expect(solveAxleLoads(minus(vehicleLoad, loadAt(500, [2500, 400, 300])), axles, axleModel).leftKg).toEqual([
      expect.closeTo(2600, 6),
      expect.closeTo(3000, 6),
    ]);
  });
  it('that weighs nothing has nothing on its ends', () => {
    expect(solveAxleLoads(placedOn(axles, NO_LOAD), axles, axleModel)).toMatchObject({
      axlesKg: [0, 0],
      leftKg: [0, 0],
      rightKg: [0, 0],
    });
    expect(nothingWeighed(axles)).toEqual({ axlesKg: [0, 0], turnKgMm: [0, 0] });
  });
  it('has its total and its centre where the layout is not determined, and no axle loads', () => {
    const load: Load = loadAt(700, [1000, 20, 30]);
    const lone = [axle('only', 0)];
    expect(solveAxleLoads(placedOn(lone, load), lone, undefined)).toEqual({
      total: load,
      centroid: [1000, 20, 30],
      axlesKg: [],
      leftKg: [],
      rightKg: [],
    });
  });
  it('has no ends without a track', () => {
    expect([undefined, 0, -2000].map((trackMm) => endsOf(1000, 0, trackMm))).toEqual([undefined, undefined, undefined]);
    expect(turnOf(undefined, 2000)).toBeUndefined();
    expect(turnOf({ totalKg: 1000, leftKg: 500 }, 2000)).toBeUndefined();
    expect(turnOf({ totalKg: 1000, rightKg: 500 }, 2000)).toBeUndefined();
    expect(turnOf({ totalKg: 1000, leftKg: 400, rightKg: 600 }, undefined)).toBeUndefined();
    expect(turnOf({ totalKg: 1000, leftKg: 400, rightKg: 600 }, 2000)).toBe(200_000);
  });
});
