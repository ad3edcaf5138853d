import { describe, expect, it } from 'vitest';
import { axleRating } from '../../../src/compute/weights/ratings.js';
import { axleTyresKg, loadAtPressure, loadOfIndex, tyreLoad } from '../../../src/compute/weights/tyre-loads.js';
import { parseQuantity } from '../../../src/quantity/parse.js';
import type { Axle } from '../../../src/records/index.js';
import { axle } from './support.js';

const inSi = (typed: string, dimension: 'mass' | 'pressure'): number => {
  const parsed = parseQuantity(typed, dimension);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.value;
};

describe('load index', () => {
  // TYR-60 to TYR-180: ISO 4223-1; UNECE R54 Annex 4. One row a decade, as printed.
  it.each([
    [60, '250 257 265 272 280 290 300 307 315 325'],
    [70, '335 345 355 365 375 387 400 412 425 437'],
    [80, '450 462 475 487 500 515 530 545 560 580'],
    [90, '600 615 630 650 670 690 710 730 750 775'],
    [100, '800 825 850 875 900 925 950 975 1000 1030'],
    [110, '1060 1090 1120 1150 1180 1215 1250 1285 1320 1360'],
    [120, '1400 1450 1500 1550 1600 1650 1700 1750 1800 1850'],
    [130, '1900 1950 2000 2060 2120 2180 2240 2300 2360 2430'],
    [140, '2500 2575 2650 2725 2800 2900 3000 3075 3150 3250'],
    [150, '3350 3450 3550 3650 3750 3875 4000 4125 4250 4375'],
    [160, '4500 4625 4750 4875 5000 5150 5300 5450 5600 5800'],
    [170, '6000 6150 6300 6500 6700 6900 7100 7300 7500 7750'],
    [180, '8000'],
  ])('from %d', (first, row) => {
    expect(row.split(' ').map((_, i) => loadOfIndex(first + i))).toEqual(row.split(' ').map(Number));
  });
  it('repeats every 80 steps times ten, within the table’s own rounding', () => {
    for (let index = 60; index <= 100; index++) {
      const ratio = (loadOfIndex(index + 80) as number) / (loadOfIndex(index) as number);
      expect(Math.abs(ratio - 10)).toBeLessThan(0.1);
    }
  });
  it('is not known outside the table', () => {
    expect(loadOfIndex(59)).toBeUndefined();
    expect(loadOfIndex(181)).toBeUndefined();
    expect(loadOfIndex(100.5)).toBeUndefined();
  });
});

describe('pressure below the reference', () => {
  // TYR-P2 (n 0.8) and TYR-P7: ETRTO/ISO law of load with cold pressure.
  it.each([
    [1, 3550],
    [0.95, 3407.3],
    [0.9, 3263],
    [0.8, 2969.6],
    [0.7, 2668.7],
    [1.1, 3550],
  ])('at %d of it, load index 152 carries %d kg', (part, kg) => {
    expect(loadAtPressure(3550, 800e3 * part, 800e3)).toBeCloseTo(kg, 1);
  });
});

describe('tyres of an axle', () => {
  it('singles add up', () => {
    // TYR-S3
    expect(axleTyresKg(axle('steer', 0, { tyres: { count: 2, loadIndex: [152] } }))).toBe(7100);
  });
  it('duals count by their dual figure', () => {
    // TYR-S4
    expect(axleTyresKg(axle('drive', 0, { dual: true, tyres: { count: 4, loadIndex: [152, 148] } }))).toBe(12600);
  });
  it('four on an axle are duals, said or not', () => {
    expect(axleTyresKg(axle('drive', 0, { tyres: { count: 4, loadIndex: [152, 148] } }))).toBe(12600);
  });
  it('duals without a dual figure never gain by it', () => {
    expect(tyreLoad({ count: 4, loadIndex: [146, 150] }, true)).toBe(3000);
  });
  it('are not guessed for an index out of the table', () => {
    expect(axleTyresKg(axle('a', 0, { tyres: { count: 2, loadIndex: [200] } }))).toBeUndefined();
    expect(axleTyresKg(axle('a', 0, { dual: true, tyres: { count: 4, loadIndex: [150, 200] } }))).toBeUndefined();
    expect(axleTyresKg(axle('a', 0, { dual: true, tyres: { count: 4, loadIndex: [200, 148] } }))).toBeUndefined();
    const pressures = { inflationPa: 7e5, inflationForIndexPa: 8e5 };
    expect(axleTyresKg(axle('a', 0, { tyres: { count: 2, loadIndex: [200], ...pressures } }))).toBeUndefined();
  });
  it('count by the figure that they are fitted for', () => {
    // TYR-140, TYR-150: one figure serves single and dual where no other is given; a dual figure says nothing of a single tyre.
    expect(tyreLoad({ count: 4, loadIndex: [146] }, true)).toBe(3000);
    expect(tyreLoad({ count: 2, loadIndex: [152, 148] }, false)).toBe(3550);
    expect(tyreLoad({ count: 2, loadIndex: [152, 200] }, false)).toBe(3550);
  });
  it('carry their full load index where one of the two pressures is not known', () => {
    expect(tyreLoad({ count: 2, loadIndex: [152], inflationPa: 4e5 }, false)).toBe(3550);
    expect(tyreLoad({ count: 2, loadIndex: [152], inflationForIndexPa: 9e5 }, false)).toBe(3550);
    // TYR-P2 at 0.9
    expect(tyreLoad({ count: 2, loadIndex: [152], inflationPa: 7.2e5, inflationForIndexPa: 8e5 }, false)).toBeCloseTo(3263, 1);
  });
});

describe('rating of an axle', () => {
  it('is the least of those known, by name', () => {
    const steer = axle('steer', 0, {
      gawrKg: inSi('14600 lb', 'mass'),
      suspensionKg: inSi('14600 lb', 'mass'),
      tyres: {
        count: 2,
        loadIndex: [150],
        inflationPa: inSi('120 psi', 'pressure'),
        inflationForIndexPa: inSi('123 psi', 'pressure'),
      },
    });
    const rating = axleRating(steer);
    // 2 × 3350 × (120/123)^0.8 = 6568.98 kg, by pocket calculator.
    expect(rating.tyresKg).toBeCloseTo(6568.98, 1);
    expect(rating.gawrKg).toBeCloseTo(6622.4, 1);
    expect(rating).toMatchObject({ limitedBy: 'tyres', limitKg: rating.tyresKg });
  });
  it('counts the wheel’s own rating once for each wheel', () => {
    const drive = axle('drive', 0, {
      gawrKg: inSi('23000 lb', 'mass'),
      wheelsKg: inSi('7400 lb', 'mass'),
      tyres: { count: 4, loadIndex: [146, 143] },
    });
    expect(axleRating(drive).wheelsKg).toBeCloseTo(4 * 3356.58, 1);
    // TYR-140: four of load index 143 in duals carry 10,900 kg; the GAWR of 10,432.6 kg is less.
    expect(axleRating(drive)).toMatchObject({ tyresKg: 10900, limitedBy: 'gawr' });
  });
  it('tells each that is known and the least of them, whichever it is', () => {
    // 571.120 S5.1.2 (LAB-39): the axle is held to the least of its parts. Four tyres of load index 143 in duals: 10,900 kg.
    const all = { gawrKg: 10900, tyres: { count: 4, loadIndex: [146, 143] }, wheelsKg: 2725, suspensionKg: 10900 };
    const each = { gawrKg: 10900, tyresKg: 10900, wheelsKg: 10900, wheelCount: 4, suspensionKg: 10900 };
    const of = (more: Partial<Axle>) => axleRating(axle('a', 0, more));
    expect(of(all)).toEqual({ axle: 'a', ...each, limitKg: 10900, limitedBy: 'gawr' });
    expect(of({ ...all, gawrKg: 10899 })).toMatchObject({ limitKg: 10899, limitedBy: 'gawr' });
    expect(of({ ...all, tyres: { count: 4, loadIndex: [146, 142] } })).toMatchObject({ limitKg: 10600, limitedBy: 'tyres' });
    expect(of({ ...all, wheelsKg: 2700 })).toMatchObject({ limitKg: 10800, limitedBy: 'wheels' });
    expect(of({ ...all, suspensionKg: 10800 })).toMatchObject({ limitKg: 10800, limitedBy: 'suspension' });
    expect(of({ suspensionKg: 9000 })).toEqual({ axle: 'a', suspensionKg: 9000, limitKg: 9000, limitedBy: 'suspension' });
    expect(of({ gawrKg: 9000 })).toEqual({ axle: 'a', gawrKg: 9000, limitKg: 9000, limitedBy: 'gawr' });
    // Two wheels on an axle of which only that is known; four where it is said to be dual.
    expect(of({ wheelsKg: 3000 })).toEqual({ axle: 'a', wheelsKg: 6000, wheelCount: 2, limitKg: 6000, limitedBy: 'wheels' });
    expect(of({ wheelsKg: 3000, dual: true }).wheelsKg).toBe(12000);
    // A rating of all wheels together is the axle's as it stands.
    expect(of({ wheelsKg: 11000, wheelsBy: 'axle', dual: true }).wheelsKg).toBe(11000);
    expect(of({ wheelsKg: 3000, wheelsBy: 'wheel' }).wheelsKg).toBe(6000);
  });
  it('is absent where nothing is on record', () => {
    expect(axleRating(axle('a', 0))).toEqual({ axle: 'a' });
  });
});
