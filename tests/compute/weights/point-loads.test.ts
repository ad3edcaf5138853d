import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import { loadAt } from '../../../src/compute/weights/load.js';
import { evenShares, GRAVITY } from '../../../src/compute/weights/point-loads.js';
import { KG_PER_LB } from '../../../src/quantity/units.js';
import { declaredBelowLoad } from '../../../src/rules/weight/declared-below-load.js';
import { judge } from '../../rules/weight/judge.js';
import { record } from '../../support/build.js';
import { takeOffOf, ticket, twoAxles, vehicle } from './support.js';

describe('shares of a mass on points', () => {
  it('a quarter on each corner under the middle, and by the lever where it is off', () => {
    const corners = [
      [0, -500],
      [0, 500],
      [4000, -500],
      [4000, 500],
    ] as const;
    expect(evenShares(corners, loadAt(4000, [2000, 0, 0]))).toEqual([1000, 1000, 1000, 1000].map((kg) => expect.closeTo(kg, 6)));
    // A quarter of the way from the front: three quarters on the front pair (lever rule).
    expect(evenShares(corners, loadAt(4000, [1000, 0, 0]))).toEqual([1500, 1500, 500, 500].map((kg) => expect.closeTo(kg, 6)));
  });
  it('balance the mass and its moments, as a matrix library has the least squares', () => {
    const point = fc.tuple(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: -1200, max: 1200 }));
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 8 }), point, (points, [x, y]) => {
        const a = new Matrix([points.map(() => 1), points.map(([px]) => px / 1000), points.map(([, py]) => py / 1000)]);
        const normal = a.mmul(a.transpose());
        fc.pre(Math.abs(normal.get(1, 1) * normal.get(2, 2)) > 0 && Math.abs(determinant(normal)) > 1e-3);
        const expected = a
          .transpose()
          .mmul(solve(normal, Matrix.columnVector([1000, x, y])))
          .to1DArray();
        evenShares(points, loadAt(1000, [x, y, 0])).forEach((kg, i) => {
          expect(Math.abs(kg - (expected[i] as number))).toBeLessThan(1e-3 * (1 + Math.abs(expected[i] as number)));
        });
      }),
    );
  });
  const determinant = (m: Matrix): number =>
    m.get(0, 0) * (m.get(1, 1) * m.get(2, 2) - m.get(1, 2) ** 2) -
    m.get(0, 1) * (m.get(0, 1) * m.get(2, 2) - m.get(1, 2) * m.get(0, 2)) +
    m.get(0, 2) * (m.get(0, 1) * m.get(1, 2) - m.get(1, 1) * m.get(0, 2));
});

describe('four lifting points of 8,093 lb under a vehicle of 38,102 lb', () => {
  const point = (id: string, x: number, y: number, more: object = {}) => ({
    ...record(id),
    declaredKind: 'lift',
    at: [x, y, 0] as const,
    rating: { value: 8093 * KG_PER_LB * GRAVITY, dimension: 'force', text: '36 kN' },
    by: 'A. Example, PE',
    of: [],
    ...more,
  });
  const model = (more: object) =>
    vehicle(
      { axles: twoAxles(5000, { gawrKg: 15000 }), gvwrKg: 25000 },
      {
        tickets: [ticket('T-1', { front: 8641, rear: 8642 })],
        declared: [
          point('L1', 0, -400, more),
          point('L2', 0, 400, more),
          point('L3', 5000, -400, more),
          point('L4', 5000, 400, more),
        ],
      },
    );
  it('are over, each by its share', () => {
    const { pointLoads } = weights(model({}), takeOffOf());
    // 17,283 kg and its uncertainty, a quarter each: 9,526 lb and more.
    for (const one of pointLoads) expect(one.loadKg).toBeGreaterThan(17283 / 4);
    expect(judge(declaredBelowLoad, model({})).map((one) => one.severity ?? 'error')).toContain('error');
    expect(
      judge(declaredBelowLoad, model({})).some((one) => one.message.includes('does not say that only the shell is lifted')),
    ).toBe(true);
  });
  it('are judged by the shell alone where the record says so', () => {
    const said = { lifts: 'shell', unboltFirst: ['U-bolts'] };
    expect(judge(declaredBelowLoad, model(said))).toEqual([]);
  });
});
