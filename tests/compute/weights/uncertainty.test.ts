import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axleModelOf } from '../../../src/compute/weights/axle-reactions.js';
import { loadAt, NO_LOAD } from '../../../src/compute/weights/load.js';
import { scaleUncertainty, uOfReading } from '../../../src/compute/weights/scale.js';
import {
  combine,
  contributions,
  ofResolution,
  rectangular,
  rootSumOfSquares,
  spreadOf,
  verdictOf,
  xUncertaintyMm,
} from '../../../src/compute/weights/uncertainty.js';
import { nothingWeighed, placedOn } from '../../../src/compute/weights/vehicle-load.js';
import { KG_PER_LB } from '../../../src/quantity/units.js';
import { scaleSC1, twoAxles } from './support.js';

const axles = twoAxles();
const found = axleModelOf(axles);
const axleModel = 'axleModel' in found ? found.axleModel : undefined;
const reading = (at: number, u: number) => ({
  weighed: { ...nothingWeighed(axles), axlesKg: axles.map((_, i) => (i === at ? u : 0)) },
  placed: NO_LOAD,
  heightKgMm: 0,
});

describe('standard uncertainties', () => {
  it('root sum of squares', () => {
    // STA-29: JCGM 100:2008 5.1.2
    expect(rootSumOfSquares([3, 4])).toBe(5);
    expect(rootSumOfSquares([3, 4, 12])).toBe(13);
  });
  it('of a published budget: the end gauge', () => {
    // STA-34: JCGM 100:2008 H.1 (components from memory): 25, 9.7, 2.9 and 16.6 nm combine to 32 nm.
    expect(Math.round(rootSumOfSquares([25, 9.7, 2.9, 16.6]))).toBe(32);
  });
  it('of a rectangle and of a step', () => {
    // STA-30, STA-31: JCGM 100:2008 4.3.7, F.2.2.1
    expect(rectangular(1)).toBeCloseTo(1 / Math.sqrt(3), 12);
    expect(ofResolution(20 * KG_PER_LB) / KG_PER_LB).toBeCloseTo(5.7735, 5);
    expect(ofResolution(50)).toBeCloseTo(14.43376, 5);
  });
  it('of a scale from its record', () => {
    expect(scaleUncertainty(scaleSC1)).toEqual({ resolutionKg: 10, relative: 0.002, absoluteKg: 0 });
    // Step 10 kg: 2.887; 0.2 % of 5000 kg: 5.774; together 6.455.
    expect(uOfReading(5000, scaleUncertainty(scaleSC1))).toBeCloseTo(6.455, 3);
  });
  it('of a scale with a tolerance in kilograms, and of none on record', () => {
    const tolerance = { value: 18, dimension: 'mass', text: '18 kg' };
    expect(scaleUncertainty({ ...scaleSC1, tolerance }).absoluteKg).toBe(18);
    expect(scaleUncertainty(undefined)).toEqual({ resolutionKg: 50, relative: 0.005, absoluteKg: 0 });
  });
});

describe('combined', () => {
  it('two weighings of 12 kg each', () => {
    // STA-32: uncorrelated; k = 2.
    const both = combine(
      [
        { name: 'first', what: reading(0, 12) },
        { name: 'second', what: reading(1, 12) },
      ],
      axles,
      axleModel,
    );
    expect(both.totalKg).toBeCloseTo(33.94113, 5);
    expect(both.axlesKg).toEqual([24, 24]);
  });
  it('a mass between the axles is known as badly on each as statics says', () => {
    const one = combine([{ name: 'estimate', what: placedOn(axles, loadAt(10, [3000, 0, 0])) }], axles, axleModel);
    expect(one.axlesKg.map((kg) => Number(kg.toFixed(9)))).toEqual([8, 12]);
    expect(one.totalKg).toBe(20);
  });
  it('a place that is not known moves load, and adds none', () => {
    const moment = { massKg: 0, xKgMm: 100 * 500, yKgMm: 0, zKgMm: 0 };
    const one = combine([{ name: 'place', what: placedOn(axles, moment) }], axles, axleModel);
    expect(one.axlesKg).toEqual([20, 20]);
    expect(one.totalKg).toBe(0);
  });
  it('tells what it is made of, largest first, like sources as one', () => {
    const sources = [
      { name: 'scale', what: reading(0, 3) },
      { name: 'scale', what: reading(0, 4) },
      { name: 'level', what: reading(0, 12) },
    ];
    expect(contributions(combine(sources, axles, axleModel), 0)).toEqual([
      { name: 'level', kg: 24 },
      { name: 'scale', kg: 10 },
    ]);
    expect(combine(sources, axles, axleModel).axlesKg[0]).toBeCloseTo(26, 9);
  });
});

describe('many small sources held as three sums', () => {
  const item = fc.record({ massKg: fc.double({ min: 0, max: 50, noNaN: true }), xMm: fc.integer({ min: -2000, max: 9000 }) });
  it('give what each of them alone would give, on every axle and in the total', () => {
    fc.assert(
      fc.property(fc.array(item, { maxLength: 40 }), (items) => {
        const loads = items.map(({ massKg, xMm }) => loadAt(massKg, [xMm, 0, 0]));
        const each = combine(
          loads.map((load) => ({ name: 'items', what: placedOn(axles, load) })),
          axles,
          axleModel,
        );
        const summed = combine([{ name: 'items', what: spreadOf(loads) }], axles, axleModel);
        expect(summed.totalKg).toBeCloseTo(each.totalKg, 6);
        // Where every item stands over one axle, the other's square is a difference of equal numbers.
        summed.axlesKg.forEach((kg, i) => {
          expect(Math.abs(kg - (each.axlesKg[i] ?? 0))).toBeLessThan(1e-4);
        });
      }),
    );
  });
});

describe('place of the centre of gravity', () => {
  it('from two readings of an axle scale', () => {
    // STA-33: x = L·R/(F + R), L 5.2 m, F 4,200 kg, R 6,800 kg, u 15 kg each: u(x) = 5.1522 mm; k = 2 here.
    const long = twoAxles(5200);
    const at = (i: number) => ({ weighed: { ...nothingWeighed(long), axlesKg: [0, 1].map((a) => (a === i ? 15 : 0)) } });
    const sources = [0, 1].map((i) => ({ name: 'scale', what: { ...at(i), placed: NO_LOAD, heightKgMm: 0 } }));
    expect(xUncertaintyMm(sources, long, 11000, (5200 * 6800) / 11000)).toBeCloseTo(2 * 5.1522, 3);
  });
  it('from what is not known of an item: a place moves it by its share of the whole', () => {
    const place = { name: 'place', what: spreadOf([{ massKg: 0, xKgMm: 100 * 500 }]) };
    expect(xUncertaintyMm([place], axles, 10000, 3000)).toBeCloseTo(2 * 5, 9);
    const mass = { name: 'mass', what: spreadOf([loadAt(10, [5000, 0, 0])]) };
    expect(xUncertaintyMm([mass], axles, 10000, 3000)).toBeCloseTo((2 * 10 * 2000) / 10000, 9);
  });
  it('of nothing is not known', () => expect(xUncertaintyMm([], axles, 0, 0)).toBeUndefined());
});

describe('verdict', () => {
  // STA-36: project rule.
  it.each([
    [40, 45, 'within uncertainty'],
    [50, 45, 'within'],
    [-1, 45, 'over'],
    [0, 0, 'within'],
    [undefined, 45, 'not verified'],
  ])('margin %s, U %d: %s', (margin, u, verdict) => expect(verdictOf(margin, u)).toBe(verdict));
});
