import { describe, expect, it } from 'vitest';
import { cargo, cargoLabel, relabelLimitKg, roundDown, roundUp, waterKg } from '../../../src/compute/weights/cargo.js';
import { KG_PER_LB, M3_PER_US_GAL } from '../../../src/quantity/units.js';

const lb = (pounds: number): number => pounds * KG_PER_LB;

describe('occupant and cargo carrying capacity', () => {
  it('GVWR 26,000 lb, unloaded 21,480 lb', () => {
    // LAB-25: 49 CFR 571.120 S10, definition
    expect(cargoLabel(lb(26000), lb(21480), 6, 0)).toMatchObject({ occcKg: 2050, occcLb: 4520 });
    expect(cargo(lb(26000), lb(21480), 0, 0).occcKg).toBeCloseTo(2050.24, 2);
  });
  it('never rounds past the GVWR', () => {
    // LAB-26: 1000.6 kg → 1000 kg
    expect(cargoLabel(10000, 8999.4, 2, 0)?.occcKg).toBe(1000);
    // LAB-23: whatever is printed, loading it must not exceed the GVWR.
    for (let kg = 100; kg < 140; kg += 0.37) {
      const label = cargoLabel(10000, 10000 - kg, 2, 0);
      expect((label?.occcLb ?? 1e9) * KG_PER_LB).toBeLessThanOrEqual(kg + 1e-6);
      expect(label?.occcKg ?? 1e9).toBeLessThanOrEqual(kg + 1e-6);
    }
  });
  it('takes the dust of unit factors for what it is', () => {
    // 0.45359237 kg to the pound is exact (NIST SP 811), its products in floating point are not.
    expect([roundDown(1000 - 1e-9), roundUp(417 + 1e-9)]).toEqual([1000, 417]);
    expect([roundDown(999.99), roundUp(417.01)]).toEqual([999, 418]);
  });
  it('is nought where the vehicle weighs its GVWR, and no figure above it', () => {
    // LAB-27, LAB-28
    expect(cargoLabel(10000, 10000, 2, 0)).toMatchObject({ occcKg: 0, occcLb: 0 });
    expect(cargoLabel(10000, 10000.5, 2, 0)).toBeUndefined();
  });
  it('counts full water at 1 kg/L and 68 kg a seat', () => {
    // LAB-29 to LAB-31
    const water = waterKg([100 * M3_PER_US_GAL, 10 * M3_PER_US_GAL]);
    expect(water).toBeCloseTo(416.395, 3);
    expect(water / KG_PER_LB).toBeCloseTo(918, 1);
    expect(cargoLabel(lb(26000), lb(21480), 6, water)).toMatchObject({
      seats: 6,
      seatsKg: 408,
      seatsLb: 900,
      waterKg: 417,
      waterLb: 913,
    });
    expect(cargo(lb(26000), lb(21480), 6, water).cccKg).toBeCloseTo(1225.8, 1);
  });
});

describe('figures of the label', () => {
  it('of 50 gal: 415 lb by 8.3 lb a gallon, 190 kg by 1 kg a litre, and the lesser cargo of both', () => {
    const water = waterKg([50 * M3_PER_US_GAL]);
    const label = cargoLabel(lb(48000), lb(38102.3), 3, water);
    expect(label).toMatchObject({ uvwLb: 38103, occcLb: 9897, waterKg: 190, waterLb: 415, seatsLb: 450 });
    // The label adds up as printed, in each unit.
    expect(label?.cccLb).toBe(9897 - 450 - 415);
    expect(label?.cccKg).toBe((label?.occcKg as number) - 204 - 190);
  });
});

describe('mass that needs a new label', () => {
  // LAB-12 to LAB-14: 571.120 S10.5; 72 FR 68442
  it.each([
    [6000, 90],
    [20000 / 3, 100],
    [14500, 100],
    [33000, 100],
  ])('GVWR %d lb: %d lb', (gvwr, limit) => expect(relabelLimitKg(lb(gvwr)) / KG_PER_LB).toBeCloseTo(limit, 6));
  it('follows a rule pack, and keeps the federal figure where the pack cannot be read', () => {
    expect(relabelLimitKg(20000, '1 % of GVWR or 50 kg')).toBe(50);
    expect(relabelLimitKg(2000, '1 % of GVWR or 50 kg')).toBe(20);
    expect(relabelLimitKg(2000, ' 1 %  of  gvwr  or  50 kg ')).toBe(20);
    for (const words of [
      'see the act',
      '1 % of GVWR or a little',
      'a part of GVWR or 50 kg',
      '0 % of GVWR or 50 kg',
      '1 % of GVWR or 0 kg',
      '1 % of GVWR',
    ])
      expect(relabelLimitKg(20000, words)).toBeCloseTo(45.36, 2);
  });
});
