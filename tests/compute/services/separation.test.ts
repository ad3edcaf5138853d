import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tooClose } from '../../../src/compute/services/separation.js';
import { nearestOfSegments } from '../../../src/geometry/segment.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Run } from '../../../src/records/index.js';
import { node, run } from '../../support/services.js';

const straight = (id: string, medium: Run['medium'], from: Vec3, to: Vec3, more: Partial<Run> = {}): Run =>
  run(id, node(`${id}a`, from, { medium }), node(`${id}b`, to, { medium }), [], more);
const APART = [{ media: ['gas', 'ac'] as const, distanceMm: 30 }];

describe('runs that must keep apart', () => {
  // GEO-13: outside 20 and 12, axes 40 apart: 24 between the outsides
  const gas = straight('G', 'gas', [0, 0, 0], [1000, 0, 0]);
  const sizes = (one: Run): number => (one.medium === 'gas' ? 20 : 12);
  const mains = (toleranceMm?: number) =>
    straight('M', 'ac', [0, 40, 0], [1000, 40, 0], toleranceMm === undefined ? {} : { toleranceMm });

  it('are measured from outside to outside', () => {
    expect(tooClose([gas, mains()], APART, sizes)[0]).toMatchObject({ distanceMm: 24, recordedMm: 24, limitMm: 30 });
  });

  it('are judged as if each lay nearer by its tolerance', () => {
    const found = tooClose([{ ...gas, toleranceMm: 5 }, mains(10)], APART, sizes)[0];
    expect(found).toMatchObject({ distanceMm: 9, recordedMm: 24 });
    const apart = straight('M', 'ac', [0, 60, 0], [1000, 60, 0], { toleranceMm: 15 });
    expect(tooClose([gas, { ...apart, toleranceMm: 14 }], APART, sizes)).toEqual([]);
    expect(tooClose([gas, apart], APART, sizes)[0]?.distanceMm).toBe(29);
  });

  it('are those that a look at every pair of stretches finds', () => {
    const place = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -300, max: 300 }))) as unknown as fc.Arbitrary<Vec3>;
    const one = fc.record({ path: fc.array(place, { minLength: 2, maxLength: 4 }), toleranceMm: fc.nat(20), gas: fc.boolean() });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 8 }), (drawn) => {
        const runs = drawn.map(({ path, toleranceMm, gas: isGas }, i) => {
          const [a, b] = [path[0] as Vec3, path.at(-1) as Vec3];
          const medium = isGas ? 'gas' : 'ac';
          return run(`R${i}`, node('a', a, { medium }), node('b', b, { medium }), path.slice(1, -1), { toleranceMm });
        });
        const expected = new Map<string, number>();
        for (const a of runs.filter((each) => each.medium === 'gas')) {
          for (const b of runs.filter((each) => each.medium === 'ac')) {
            let least = Infinity;
            for (let i = 1; i < a.path.length; i++) {
              for (let k = 1; k < b.path.length; k++) {
                const [a0, a1, b0, b1] = [a.path[i - 1], a.path[i], b.path[k - 1], b.path[k]] as [Vec3, Vec3, Vec3, Vec3];
                least = Math.min(
                  least,
                  nearestOfSegments(a0, a1, b0, b1).distance - 16 - (a.toleranceMm ?? 0) - (b.toleranceMm ?? 0),
                );
              }
            }
            if (Math.max(0, least) < 30) expected.set(`${a.id} ${b.id}`, Math.max(0, least));
          }
        }
        const found = new Map(tooClose(runs, APART, sizes).map((each) => [each.runs.join(' '), each.distanceMm]));
        expect([...found.keys()].sort()).toEqual([...expected.keys()].sort());
        for (const [key, mm] of expected) expect(found.get(key)).toBeCloseTo(mm, 6);
      }),
    );
  });
});
