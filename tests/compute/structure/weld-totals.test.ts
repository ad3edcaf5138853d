import { describe, expect, it } from 'vitest';
import { weldTotals } from '../../../src/compute/structure/index.js';
import { monthsLater } from '../../../src/compute/welding/continuity.js';
import { depositKg, fillerDensityKgM3 } from '../../../src/compute/welding/deposit.js';
import { leastFilletMm } from '../../../src/compute/welding/fillet-least.js';
import { coversPosition } from '../../../src/compute/welding/positions.js';
import { processName } from '../../../src/compute/welding/process.js';
import { buildModel } from '../../support/build.js';
import { weld } from '../../support/structure.js';

const metre = (sizeMm: number, more = {}) => weld('W', [['A', 'B']], { sizeMm, lengthMm: 1000, filler: 'ER5356', ...more });

describe('deposit', () => {
  // WLD-11: 5356 (2640 kg/m³), flat face, g/m
  it.each([
    [3, 11.88],
    [4, 21.12],
    [5, 33],
    [6, 47.52],
    [8, 84.48],
    [10, 132],
  ])('WLD-11: fillet of %d mm leg', (leg, grams) => expect(depositKg(metre(leg), undefined) * 1000).toBeCloseTo(grams, 6));

  // WLD-13: 0.096 lb/in³, lb/ft; 2640 kg/m³ is 0.0954 lb/in³
  it.each([
    [1 / 8, 0.009],
    [3 / 16, 0.02025],
    [1 / 4, 0.036],
    [5 / 16, 0.05625],
  ])('WLD-13: fillet of %d in leg', (legIn, lbFt) => {
    const one = depositKg(metre(legIn * 25.4, { lengthMm: 304.8 }), undefined) / 0.45359237;
    expect(one * (0.096 / (2640 / 27679.9047))).toBeCloseTo(lbFt, 5);
  });

  it('WLD-22: a square butt of 4 mm with 1 mm gap is 10.56 g/m', () => {
    expect(depositKg(metre(4, { type: 'square groove' }), undefined) * 1000).toBeCloseTo(10.56, 6);
  });

  // MAT-03: Aluminum Association nominal densities of fillers
  it.each([
    ['ER4043', 2690],
    ['5183', 2660],
    ['ER5356', 2640],
    ['R5554', 2690],
    ['ER5556', 2660],
  ])('MAT-03: %s', (filler, density) => expect(fillerDensityKgM3(filler)).toBe(density));
  it('steel wire is steel (MAT-24)', () => {
    expect(fillerDensityKgM3('ER70S-6')).toBe(7850);
    expect(fillerDensityKgM3('E7018')).toBe(7850);
  });
  it('processes without filler lay none', () => expect(depositKg(metre(4, { process: '43' }), undefined)).toBe(0));
});

describe('totals', () => {
  it('count joints, both sides, rejects and repairs by process', () => {
    const welds = [
      weld(
        'W1',
        [
          ['A', 'B'],
          ['C', 'D'],
        ],
        {
          sides: 'both',
          filler: 'ER5356',
          inspections: [
            { method: 'VT', by: 'J', date: '2026-02-11', result: 'reject' },
            { method: 'VT', by: 'J', date: '2026-02-12', result: 'accept', repair: 1 },
          ],
        },
      ),
      weld('W2', [['A', 'C']], { process: '131' }),
      weld('W3', [['A', 'D']], { process: 'TIG' }),
    ];
    const totals = weldTotals(buildModel({ welds }));
    expect(totals).toMatchObject({ count: 3, jointsCount: 4, lengthMm: 2 * 2 * 100 + 100 + 100 });
    expect(totals.byProcess).toMatchObject({
      GMAW: { count: 2, lengthMm: 500, rejects: 1, repairs: 1 },
      GTAW: { count: 1, lengthMm: 100, rejects: 0, repairs: 0 },
    });
    // WLD-11: 6 mm leg 47.52 g/m; the other two without a filler at 2660
    expect(totals.depositedKg).toBeCloseTo(0.4 * 0.04752 + 0.2 * 18 * 2.66e-3, 9);
  });
});

describe('words and tables', () => {
  // WLD-23, WLD-24: ISO 4063
  it.each([
    ['131', 'GMAW'],
    ['135', 'GMAW'],
    ['141', 'GTAW'],
    ['111', 'SMAW'],
    ['136', 'FCAW'],
    ['43', 'FSW'],
    ['mig', 'GMAW'],
    ['GTAW', 'GTAW'],
    ['constructor', 'CONSTRUCTOR'],
  ])('WLD-23: %s is %s', (typed, name) => expect(processName(typed)).toBe(name));

  // WLD-26: ISO 6947 Annex B beside AWS A3.0
  it.each([
    ['PA', '1F', true],
    ['PB', '2F', true],
    ['PC', '2G', true],
    ['PD', '4F', true],
    ['PE', '4G', true],
    ['PF', '3F', true],
    ['3G', 'PG', true],
    ['PB', '2G', false],
    ['1F', '2F', false],
    ['PF', 'PG', false],
  ])('WLD-26: %s and %s', (listed, position, covers) => expect(coversPosition([listed], position)).toBe(covers));

  // WLD-57: work on 1 Jan and next on 1 Jul is within
  it('WLD-57: six months, day to day', () => {
    expect(monthsLater('2026-01-01', 6)).toBe('2026-07-01');
    expect(monthsLater('2025-08-31', 6)).toBe('2026-02-28');
    expect(monthsLater('2026-10-15', 6)).toBe('2027-04-15');
  });

  // WLD-65: AWS D1.1 Table 5.7, in
  it.each([
    [0.25, 1 / 8],
    [0.26, 3 / 16],
    [0.5, 3 / 16],
    [0.75, 1 / 4],
    [1, 5 / 16],
    [0.1, 0.1],
  ])('WLD-65: base %d in, fillet %d in', (base, leg) => expect(leastFilletMm(base * 25.4)).toBeCloseTo(leg * 25.4, 9));
});
