import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simpleEven } from '../../../src/compute/structure/beam.js';
import { openings } from '../../../src/compute/structure/index.js';
import { rackingDeg } from '../../../src/compute/structure/racking.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { buildModel, section } from '../../support/build.js';
import { lineMember, opening, plateMember } from '../../support/structure.js';

const measured = (diagonalsMm: readonly [number, number], more = {}) => ({ diagonalsMm, headerSag: [], ...more });
/** Law of cosines. */
const diagonalsOf = (a: number, b: number, sine: number): [number, number] => [
  Math.sqrt(a * a + b * b + 2 * a * b * sine),
  Math.sqrt(a * a + b * b - 2 * a * b * sine),
];

describe('racking', () => {
  it('GEO-22: a 2000 × 1000 opening racked by 0.2° has diagonals 2239.1879 and 2232.9437', () => {
    const one = { widthMm: 2000, heightMm: 1000, measured: measured([2239.1879, 2232.9437]) };
    expect(rackingDeg(one)).toBeCloseTo(0.2, 5);
    expect(rackingDeg({ ...one, measured: measured([2232.9437, 2239.1879]) })).toBeCloseTo(0.2, 5);
  });

  it('GEO-23: 1 mm in 1000 is a diagonal difference of 1.78885 mm', () => {
    const [d1, d2] = diagonalsOf(2000, 1000, 0.001);
    expect(d1 - d2).toBeCloseTo(1.78885, 4);
    const back = rackingDeg({ widthMm: 2000, heightMm: 1000, measured: measured([d1, d2]) });
    expect(back).toBeCloseTo((Math.asin(0.001) * 180) / Math.PI, 9);
  });

  it('GEO-21: equal diagonals are square, whatever the sides say', () => {
    const sides = { topMm: 2003, bottomMm: 2000, frontMm: 999, rearMm: 1001 };
    expect(rackingDeg({ widthMm: 2000, heightMm: 1000, measured: measured([2236.068, 2236.068], sides) })).toBeCloseTo(0, 9);
  });

  it('is not said without both diagonals', () => {
    expect(rackingDeg({ widthMm: 2000, heightMm: 1000, measured: { headerSag: [], topMm: 2000 } })).toBeUndefined();
    expect(rackingDeg({ widthMm: 2000, heightMm: 1000 })).toBeUndefined();
  });

  it('comes back from a parallelogram of any shape', () => {
    const sides = fc.tuple(fc.integer({ min: 300, max: 5000 }), fc.integer({ min: 300, max: 2500 }));
    fc.assert(
      fc.property(sides, fc.double({ min: 0, max: 5, noNaN: true }), ([a, b], deg) => {
        const read = measured(diagonalsOf(a, b, Math.sin((deg * Math.PI) / 180)), {
          topMm: a,
          bottomMm: a,
          frontMm: b,
          rearMm: b,
        });
        expect(rackingDeg({ widthMm: a + 5, heightMm: b - 5, measured: read })).toBeCloseTo(deg, 5);
      }),
    );
  });

  it('is the least-squares fit: a search over sides and skew comes no nearer to the readings', () => {
    const read = measured([2240, 2233], { topMm: 2001, bottomMm: 1999, frontMm: 1002, rearMm: 1000 });
    const misfit = (a: number, b: number, deg: number): number => {
      const [d1, d2] = diagonalsOf(a, b, Math.sin((deg * Math.PI) / 180));
      return [2001 - a, 1999 - a, 1002 - b, 1000 - b, 2240 - d1, 2233 - d2].reduce((sum, off) => sum + off * off, 0);
    };
    // by brute force over a grid: half width of 6 mm and 0.1° in steps of 0.2 mm and 0.002°
    let best = { deg: 0, off: Infinity };
    for (let i = -30; i <= 30; i++) {
      for (let k = -30; k <= 30; k++) {
        for (let n = 0; n <= 100; n++) {
          const deg = 0.12 + n * 0.002;
          const off = misfit(2000 + i * 0.2, 1001 + k * 0.2, deg);
          if (off < best.off) best = { deg, off };
        }
      }
    }
    expect(Math.abs((rackingDeg({ widthMm: 2000, heightMm: 1000, measured: read }) as number) - best.deg)).toBeLessThan(0.003);
  });
});

describe('openings', () => {
  const corner = (x: number, z: number): Vec3[] => [
    [x, -1200, z],
    [x + 80, -1200, z],
    [x, -1200, z + 80],
  ];

  it('give diagonal difference and largest sag as measured, nothing where nothing was', () => {
    const headerSag = [
      { atMm: 500, dropMm: 0.4 },
      { atMm: 1000, dropMm: 0.9 },
    ];
    const list = [opening('A', { measured: measured([2240, 2236.8], { headerSag }) }), opening('B')];
    const [one, bare] = openings(buildModel({ openings: list }));
    expect(one?.diagonalDifferenceMm).toBeCloseTo(3.2, 9);
    expect(one?.sagMm).toBe(0.9);
    expect(bare).toMatchObject({ rackingDeg: undefined, diagonalDifferenceMm: undefined, sagMm: undefined });
  });

  it('find the gusset at each corner, and name the corners without one', () => {
    const members = [
      plateMember('G1', corner(1000, 500), 8),
      plateMember('G2', corner(2920, 1420), 8),
      plateMember('G9', corner(6000, 500), 8),
    ];
    const [one] = openings(buildModel({ members, openings: [opening('A', { gussets: ['G1', 'G2', 'G9'] })] }));
    expect(one?.gussets).toEqual(['G1', 'G2']);
    expect(one?.cornersWithoutGusset).toEqual(['lower rear', 'upper front']);
  });

  it('ask no gussets of a door', () => {
    const [one] = openings(buildModel({ openings: [opening('A', { openingKind: 'door' })] }));
    expect(one?.cornersWithoutGusset).toEqual([]);
  });

  it('a header sags under its own mass as a simple beam', () => {
    const thin = section('RT50', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm: 3, cornerRadiusMm: 0 });
    const header = lineMember('H', [900, -1200, 1525], [3100, -1200, 1525]);
    const model = buildModel(
      { members: [header], openings: [opening('A', { header: 'H' })] },
      { sections: new Map([['RT50', thin]]) },
    );
    // SEC-R01: A 564.0 mm², I 208,492 mm⁴; AISC Table 3-23 case 1 with E 68.9 GPa
    const loadNMm = (564e-6 * 2700 * 9.80665) / 1000;
    expect(openings(model)[0]?.headerDeflectionMm).toBeCloseTo((5 * loadNMm * 2000 ** 4) / (384 * 68900 * 208492), 4);
  });
});

describe('beam', () => {
  const IN = 25.4;
  const LBF = 4.4482216152605;
  it.each([
    // AISC Table 3-23 case 1
    ['STA-24: I 4 x 2.79, 8 ft, 20 lb/ft', 6.71, 8, 20, 0.027197],
    ['STA-25: RT 2 x 2 x 0.125, 4 ft, 5 lb/ft', 0.552, 4, 5, 0.005166],
  ])('%s', (_name, inertiaIn4, spanFt, lbFt, inches) => {
    const beam = { spanMm: spanFt * 12 * IN, modulusNMm2: 69637.0, inertiaMm4: inertiaIn4 * IN ** 4 };
    expect(simpleEven(beam, (lbFt * LBF) / (12 * IN)) / IN).toBeCloseTo(inches, 6);
  });
});
