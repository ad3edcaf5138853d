import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import { fullTank, statedLevel, tankRole, unladenLevel } from '../../../src/compute/weights/tanks.js';
import { condition, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

describe('liquid petroleum gas', () => {
  // FLU-33: 80 % of a 30 US gal tank is 24 US gal, 100.8 lb at 4.20 lb/gal (NFPA 58 Annex B): 45.72 kg; here at 504 kg/m³.
  const lp = tank('LP', 'propane', 30 * 3.785411784, 3000, { densityKgM3: 504 });
  const with_ = (levels: Readonly<Record<string, number>>) =>
    weights(
      vehicle(
        { axles: twoAxles() },
        {
          tanks: [lp],
          tickets: [ticket('T-1', { front: 4000, rear: 6000 }, { condition: condition({ levels: { FUEL: 1, ...levels } }) })],
        },
      ),
      takeOffOf(),
    ).uvwKg;
  it('is full at 80 % of its tank, whether the gauge is read as 80 % or as full', () => {
    expect(with_({})).toBeCloseTo(10000 + 45.79, 1);
    expect(Math.abs((with_({}) as number) - 10000 - 45.72)).toBeLessThan(0.1);
    expect(with_({ LP: 1 })).toBe(10000);
    expect(with_({ LP: 0.8 })).toBeCloseTo(10000, 9);
    expect(with_({ LP: 0.4 })).toBeCloseTo(10000 + 45.79 / 2, 1);
  });
});

describe('what is in a tank', () => {
  it.each([
    ['FRESH', 'water', 'fresh water'],
    ['HEATER', 'water', 'fresh water'],
    ['GREY', 'grey', 'waste'],
    ['TANK-2', 'gray water', 'waste'],
    ['GREY-2', 'water', 'fresh water'],
    ['BLACK', 'black', 'waste'],
    ['FUEL-L', 'diesel', 'fuel'],
    ['GEN', 'gasoline', 'fuel'],
    ['BLACK-GEN', 'diesel', 'fuel'],
    ['DEF', 'diesel exhaust fluid', 'operating fluid'],
    ['LP', 'propane', 'operating fluid'],
    ['X', 'lemonade', 'other'],
    ['Y', 'water for the dog', 'other'],
  ])('%s with %s: %s', (_id, contents, role) => expect(tankRole({ contents })).toBe(role));
  it('gives way to the recorded use', () => {
    expect(tankRole({ contents: 'water', use: 'waste' })).toBe('waste');
    expect(tankRole({ contents: 'lemonade', use: 'fresh' })).toBe('fresh water');
  });
});

describe('a tank as full as it may be', () => {
  // Mass is volume × density; only liquid petroleum gas needs room to expand (NFPA 58, from memory).
  it.each([
    ['LP', 'propane', 504, 0.8 * 50.4],
    ['LPG-2', 'lp gas', 504, 0.8 * 50.4],
    ['DEF', 'urea', 1090, 109],
    ['FUEL', 'diesel', 832, 83.2],
    ['LP-ROOM', 'water', 1000, 100],
  ])('100 litres of %s with %s', (id, contents, densityKgM3, massKg) => {
    const full = fullTank(tank(id, contents, 100, 3000, { densityKgM3, at: [3000, -800, 250] }));
    expect(full.massKg).toBeCloseTo(massKg, 9);
    expect([full.xKgMm, full.yKgMm, full.zKgMm].map((moment) => moment / full.massKg)).toEqual([
      expect.closeTo(3000, 9),
      expect.closeTo(-800, 9),
      expect.closeTo(250, 9),
    ]);
  });
  it('has fuel and operating fluids in it when the vehicle is unladen, and nothing else', () => {
    // LAB-03, LAB-19, LAB-20: 49 CFR 571.3; 571.120 S10.3.2
    const level = (id: string, contents: string) => unladenLevel(tank(id, contents, 100, 0));
    expect([level('FUEL', 'diesel'), level('DEF', 'urea'), level('LP', 'propane')]).toEqual([1, 1, 1]);
    expect([level('FRESH', 'water'), level('GREY', 'grey'), level('X', 'lemonade')]).toEqual([0, 0, 0]);
  });
  it('is at the level that a condition gives it, whatever it is called', () => {
    const named = condition({ levels: { FRESH: 0.3 } });
    expect(statedLevel(tank('FRESH', 'water', 100, 0), named)).toBe(0.3);
    expect(statedLevel(tank('GREY', 'grey', 100, 0), named)).toBeUndefined();
    expect(statedLevel(tank('constructor', 'water', 100, 0), named)).toBeUndefined();
  });
});
