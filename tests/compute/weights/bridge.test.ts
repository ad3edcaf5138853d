import { describe, expect, it } from 'vitest';
import { bridgeFormulaLb, roadLimits } from '../../../src/compute/weights/bridge.js';
import { KG_PER_LB } from '../../../src/quantity/units.js';
import { axle } from './support.js';

const IN = 25.4;
const at = (inches: readonly number[]) => inches.map((x, i) => axle(`a${i + 1}`, x * IN));
const lb = (pounds: number): number => pounds * KG_PER_LB;

describe('bridge formula', () => {
  // BRG-N2 to BRG-N7: 23 USC 127(a)(2), rounded to 500 lb, halves down.
  it.each([
    [2, '9:39000 10:40000'],
    [
      3,
      '9:42500 10:43500 11:44000 12:45000 14:46500 16:48000 18:49500 20:51000 22:52500 24:54000 25:54500 26:55500 28:57000 30:58500 32:60000',
    ],
    [
      4,
      '12:50000 13:50500 14:51500 15:52000 16:52500 20:55500 24:58000 28:60500 32:63500 36:66000 37:66500 38:67500 39:68000 40:68500 44:71500 48:74000 50:75500 57:80000',
    ],
    [5, '16:58000 18:59000 20:60500 24:63000 28:65500 32:68000 36:70500 40:73000 44:75500 48:78000 50:79000 51:80000'],
    [6, '20:66000 22:67000 24:68500 28:71000 32:73000 36:75500 40:78000 42:79000 43:80000'],
    [7, '24:74000 28:76500 32:78500 34:80000'],
  ])('%d axles', (axles, row) => {
    for (const cell of row.split(' ')) {
      const [feet, pounds] = cell.split(':').map(Number) as [number, number];
      expect(`${feet}:${bridgeFormulaLb(axles, feet)}`).toBe(`${feet}:${pounds}`);
    }
  });
  it('just over 8 ft', () => {
    // BRG-20
    expect([bridgeFormulaLb(2, 8), bridgeFormulaLb(3, 8)]).toEqual([38000, 42000]);
  });
});

describe('road limits of a layout', () => {
  const kinds = (inches: readonly number[]) =>
    roadLimits(
      at(inches),
      inches.map(() => 5000),
    ).map((one) => `${one.kind} ${one.axles.join('+')}`);
  it('40 in is one axle, 40.1 in a tandem, 96 in a tandem, 96.1 in the formula', () => {
    // BRG-04 to BRG-06: 23 CFR 658.5
    expect(kinds([0, 40])).toEqual(['single a1+a2', 'gross a1+a2']);
    expect(kinds([0, 40.1])).toContain('tandem a1+a2');
    expect(kinds([0, 96])).toContain('tandem a1+a2');
    expect(kinds([0, 96.1])).toContain('bridge a1+a2');
  });
  it('gives single, tandem and gross limits in kilograms', () => {
    // BRG-26
    const limits = roadLimits(at([0, 248, 300]), [5000, 9500, 6000]);
    const of = (kind: string) => limits.find((one) => one.kind === kind);
    expect(of('single')?.limitKg).toBeCloseTo(9071.85, 2);
    expect(of('tandem')).toMatchObject({
      axles: ['a2', 'a3'],
      loadKg: expect.closeTo(15500, 6),
      limitKg: expect.closeTo(15422.14, 2),
    });
    expect(of('gross')?.limitKg).toBeCloseTo(36287.39, 2);
    // BRG-24: three axles over 25 ft: 54,500 lb.
    expect(limits.find((one) => one.axles.length === 3 && one.kind === 'bridge')?.limitKg).toBeCloseTo(lb(54500), 6);
  });
  it('lets two tandems 36 ft apart carry 34,000 lb each', () => {
    // BRG-09, BRG-22
    const whole = (last: number) =>
      roadLimits(at([0, 52, last - 52, last]), [1, 1, 1, 1]).find((one) => one.axles.length === 4 && one.kind === 'bridge');
    expect(whole(36 * 12)?.limitKg).toBeCloseTo(lb(68000), 6);
    expect(whole(35 * 12)?.limitKg).toBeCloseTo(lb(bridgeFormulaLb(4, 35)), 6);
  });
  it('but only two: not three axles, nor four of which two are apart', () => {
    const whole = (inches: readonly number[]) =>
      roadLimits(
        at(inches),
        inches.map(() => 1),
      ).find((one) => one.axles.length === inches.length && one.kind === 'bridge')?.limitKg;
    // BRG-07 for three axles over 36 ft: 500 (54 + 36 + 36) = 63,000 lb; BRG-22: 66,000 lb for four.
    expect(whole([0, 52, 432])).toBeCloseTo(lb(63000), 6);
    expect(whole([0, 120, 380, 432])).toBeCloseTo(lb(66000), 6);
    expect(whole([0, 52, 312, 432])).toBeCloseTo(lb(66000), 6);
  });
  it('takes axles front to rear, however they are listed, and those that count as one together', () => {
    // BRG-04: 10 and 40 in are not more than 40 in apart.
    const listed = [axle('rear', 300 * IN), axle('second', 40 * IN), axle('first', 10 * IN)];
    const limits = roadLimits(listed, [8000, 3000, 2000]);
    expect(
      limits.map(({ kind, axles, loadKg, spreadMm }) => [kind, axles.join('+'), Math.round(loadKg), Math.round(spreadMm)]),
    ).toEqual([
      ['single', 'first+second', 5000, Math.round(30 * IN)],
      ['single', 'rear', 8000, 0],
      ['bridge', 'first+second+rear', 13000, Math.round(290 * IN)],
      ['gross', 'first+second+rear', 13000, Math.round(290 * IN)],
    ]);
    for (const { limitKg, loadKg, marginKg } of limits) expect(marginKg).toBeCloseTo(limitKg - loadKg, 9);
    expect(roadLimits(listed, [])).toEqual([]);
  });
  it('leaves out an axle that is up', () => {
    expect(roadLimits(at([0, 248, 300]), [5000, 9500, 0]).some((one) => one.axles.includes('a3'))).toBe(false);
  });
});
