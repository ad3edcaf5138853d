import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixedEven, simpleEven } from '../../../src/compute/structure/beam.js';
import { openings } from '../../../src/compute/structure/index.js';
import { rackingDeg } from '../../../src/compute/structure/racking.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { buildModel, section } from '../../support/build.js';
import { flatPanel, lineMember, opening, plateMember } from '../../support/structure.js';

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

describe('a header with the skin over it', () => {
  const thin = section('RT50', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm: 3, cornerRadiusMm: 0 });
  const header = lineMember('H', [900, -1200, 1525], [3100, -1200, 1525]);
  /** A sheet of 1 mm over the opening of 2000 mm (x 1000 to 3000, top at z 1500). */
  const sheet = (from: number, to: number, z0: number, z1: number, y = -1240) =>
    flatPanel('S', y, {
      outline: [
        [from, y, z0],
        [to, y, z0],
        [to, y, z1],
        [from, y, z1],
      ],
    });
  const figure = (...panels: readonly ReturnType<typeof sheet>[]) =>
    openings(
      buildModel(
        { members: [header], panels, openings: [opening('A', { header: 'H' })] },
        { sections: new Map([['RT50', thin]]) },
      ),
    )[0];

  it('carries what of a sheet lies over the opening, and no more', () => {
    // 2.0 m × 0.8 m × 1 mm × 2700 kg/m³ = 4.32 kg; computed
    expect(figure(sheet(1000, 3000, 1500, 2300))?.headerPanelKg).toBeCloseTo(4.32, 6);
    expect(figure(sheet(0, 4000, 700, 2300))?.headerPanelKg).toBeCloseTo(4.32, 6);
    expect(figure(sheet(0, 2000, 1500, 2300))?.headerPanelKg).toBeCloseTo(2.16, 6);
    expect(figure(sheet(1000, 3000, 500, 1500))?.headerPanelKg).toBeCloseTo(0, 9);
    expect(figure(sheet(1000, 3000, 1500, 2300, 1240))?.headerPanelKg).toBe(0);
  });

  it('carries cap and lining with the skin, and no belly panel', () => {
    const over = sheet(1000, 3000, 1500, 2300);
    const kinds = (['skin', 'cap', 'interior', 'belly'] as const).map((panelKind, i) => ({ ...over, id: `S${i}`, panelKind }));
    // Three of 4.32 kg; computed
    expect(figure(...kinds)?.headerPanelKg).toBeCloseTo(3 * 4.32, 6);
  });

  it('sags under both as a simple beam, a fifth of it with its ends built in', () => {
    const one = figure(sheet(1000, 3000, 1500, 2300));
    const loadNMm = ((564e-6 * 2700 + 4.32 / 2) * 9.80665) / 1000;
    // SEC-R01: I 208,492 mm⁴; AISC Table 3-23 cases 1 and 15
    expect(one?.headerWithPanelMm).toBeCloseTo((5 * loadNMm * 2000 ** 4) / (384 * 68900 * 208492), 4);
    expect(one?.headerBuiltInMm).toBeCloseTo((one?.headerWithPanelMm ?? 0) / 5, 9);
  });
});

describe('beam', () => {
  it('STA-27: 50 × 50 × 3 sharp, 1.2 m, both ends fixed, uniform 1 N/mm: 0.37000 mm', () => {
    // AISC Table 3-23 case 15
    expect(fixedEven({ spanMm: 1200, modulusNMm2: 70_000, inertiaMm4: 208_492 }, 1)).toBeCloseTo(0.37, 5);
  });

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
