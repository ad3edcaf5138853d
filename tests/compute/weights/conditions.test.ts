import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import type { Model } from '../../../src/model/shell.js';
import { bareOf, bay, condition, item, seat, tagCoach, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

/** A tag coach, 14,000 kg at 4.10 m unladen (STA-10), exact to the gram. */
const shell = {
  tanks: [
    tank('FUEL', 'diesel', 400, 2000),
    tank('FRESH', 'water', 300, 6548),
    tank('GREY', 'grey', 200, 6548),
    tank('LP', 'propane', 50, 3000),
  ],
  seats: [seat('driver', 1000, -500), seat('passenger', 1000, 500), seat('bench', 5000, 0, false)],
  bays: [bay('B1', 3000, 200), bay('B2', 8000, 300), bay('B3', 5000)],
};
const unladenKg = { steer: 5233.9645693, drive: 5259.6212584, tag: 3506.4141723 };
const coach = (more: Partial<Model['shell']> = {}): Model =>
  vehicle(
    { axles: tagCoach(), gvwrKg: 20000 },
    {
      ...shell,
      tickets: [ticket('T-1', unladenKg, { scale: 'SC-1', condition: condition({ levels: { FUEL: 1, LP: 1 } }) })],
      ...more,
    },
  );
const answer = () => weights(coach(), takeOffOf());
const named = (name: string, from = answer()) => from.conditions.find((one) => one.name === name)!;
const loads = (name: string, from = answer()) =>
  Object.fromEntries(named(name, from).axles.map((axle) => [axle.axle, axle.loadKg]));

describe('named conditions', () => {
  it('are all there, with the tag down and up', () => {
    const names = ['unladen', 'occupants', 'water', 'loaded', 'waste'];
    const standing = answer()
      .conditions.filter((one) => one.kind === 'standard' || one.kind === 'lifted')
      .map((one) => one.name);
    expect(standing).toEqual([...names, ...names.map((name) => `${name} / tag up`)]);
  });
  it('weigh what they hold', () => {
    // 68 kg (LAB-06) in each of two belted seats; 300 kg of water; bays 200 and 300 kg; waste 200 kg.
    expect(
      Object.fromEntries(
        answer()
          .conditions.filter((one) => one.kind === 'standard')
          .map((one) => [one.name, Math.round(one.totalKg)]),
      ),
    ).toEqual({
      unladen: 14000,
      occupants: 14136,
      water: 14436,
      loaded: 14936,
      waste: 14336,
    });
  });
  it('load the axles by statics: by hand for `loaded`', () => {
    // About the front axle; group at 6548 mm: 136·1000/6548 + 300 + 200·3000/6548 + 300·8000/6548 = 778.90 to the group.
    const group = 14000 - unladenKg.steer + 778.9;
    expect(loads('loaded').steer).toBeCloseTo(14936 - group, 1);
    expect(loads('loaded').tag).toBeCloseTo(0.4 * group, 1);
  });
  it('with the tag up put nothing on it and keep the sum', () => {
    // STA-11
    expect(loads('unladen / tag up').steer).toBeCloseTo(4433.33, 2);
    expect(loads('unladen / tag up').drive).toBeCloseTo(9566.67, 2);
    expect(loads('unladen / tag up').tag).toBe(0);
    expect(named('unladen / tag up').axles[2]).toMatchObject({ lifted: true });
  });
  it('show left and right by the moment to a side', () => {
    const one = weights(coach({ seats: [seat('driver', 1000, -500)] }), takeOffOf());
    const axles = named('occupants', one).axles;
    const turn = axles.reduce(
      (sum, axle, i) => sum + (((axle.rightKg as number) - (axle.leftKg as number)) * [2050, 1850, 2050][i]!) / 2,
      0,
    );
    expect(turn).toBeCloseTo(-500 * 68, 4);
  });
  it('count the GVWR', () => {
    expect(named('loaded').gvwrMarginKg).toBeCloseTo(20000 - 14936, 4);
    expect(named('loaded').verdict).toBe('within');
  });
  it('give the share on the steered axle', () => {
    expect(named('unladen').steerShare).toBeCloseTo(5233.96 / 14000, 5);
  });
});

describe("the shop's own conditions", () => {
  const own = (more: Parameters<typeof condition>[0]) =>
    loads(
      'ours',
      weights(coach({ conditions: [{ name: 'ours', condition: condition(more) }] }), takeOffOf([item('CMP', 100, 0)])),
    );
  it('take fuel as full where they do not name it', () => {
    const base = own({ fuelKnown: false });
    const half = own({ levels: { FUEL: 0.5 } });
    // 200 kg at 2000 mm: 200 · 2000 / 6548 = 61.09 kg off the group.
    expect((base.steer as number) - (half.steer as number)).toBeCloseTo(200 - 61.09, 2);
  });
  it('hold bays, seats, things aboard and what is missing', () => {
    const base = own({});
    const full = own({
      bays: { B2: 100 },
      occupants: [{ seat: 'bench', massKg: 90 }],
      missing: ['CMP'],
      aboard: [{ name: 'crate', massKg: 40, at: [0, 0, 0] }],
    });
    const total = (one: Record<string, number>) => Object.values(one).reduce((a, b) => a + b, 0);
    expect(total(full) - total(base)).toBeCloseTo(100 + 90 + 40 - 100, 6);
  });
});

describe('the worst for each axle', () => {
  const worst = (axle: string, from = answer()) => from.conditions.find((one) => one.worstFor === axle)!;
  it('is named by what is in it', () => {
    expect(worst('drive').name).toBe('worst for drive: FUEL full, FRESH full, GREY full, seats driver passenger, bays B1 B2');
  });
  it('leaves out what would lighten the axle', () => {
    // B2 lies behind the group at 6548 mm: it lightens the steered axle.
    expect(worst('steer').name).toBe('worst for steer: FUEL full, FRESH empty, GREY empty, seats driver passenger, bays B1');
  });
  it('is never beaten by any state of tanks, seats and bays within the GVWR', () => {
    const level = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(level, { minLength: 7, maxLength: 7 }), fc.integer({ min: 14200, max: 15500 }), (l, gvwrKg) => {
        const [fuel, fresh, grey, driver, passenger, b1, b2] = l as [number, number, number, number, number, number, number];
        const mine = condition({
          levels: { FUEL: fuel, FRESH: fresh, GREY: grey },
          occupants: [
            { seat: 'driver', massKg: 68 * driver },
            { seat: 'passenger', massKg: 68 * passenger },
          ],
          bays: { B1: 200 * b1, B2: 300 * b2 },
        });
        const model = coach({ conditions: [{ name: 'mine', condition: mine }] });
        const found = weights({ ...model, shell: { ...model.shell, chassis: { ...model.shell.chassis, gvwrKg } } }, takeOffOf());
        const tried = named('mine', found);
        fc.pre(tried.totalKg <= gvwrKg);
        for (const axle of tried.axles) {
          const most = worst(axle.axle, found);
          expect(most.totalKg).toBeLessThanOrEqual(gvwrKg + 1e-6);
          expect(most.axles.find((one) => one.axle === axle.axle)?.loadKg).toBeGreaterThanOrEqual(axle.loadKg - 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('verdicts', () => {
  const withGawr = (gawrKg: number) => {
    const model = vehicle(
      { axles: twoAxles(5000, { gawrKg }), gvwrKg: 20000 },
      { tickets: [ticket('T-1', { front: 5000, rear: 6000 }, { scale: 'SC-1' })] },
    );
    return named('unladen', weights(model, takeOffOf())).axles[0]!;
  };
  it('within, within uncertainty and over', () => {
    // Step 10 kg and 0.2 % of 5000 kg: u 6.455 kg, U 12.91 kg.
    expect(withGawr(5020)).toMatchObject({ verdict: 'within', uncertaintyKg: expect.closeTo(12.91, 2) });
    expect(withGawr(5012)).toMatchObject({ verdict: 'within uncertainty' });
    expect(withGawr(4999)).toMatchObject({ verdict: 'over', marginKg: expect.closeTo(-1, 9) });
  });
  it('not verified without a rating, with the load all the same', () => {
    const [front, rear] = twoAxles();
    const { gawrKg: _, ...unrated } = front!;
    const model = vehicle({ axles: [unrated, rear!] }, { tickets: [ticket('T-1', { front: 5000, rear: 6000 })] });
    const found = weights(model, takeOffOf());
    expect(named('unladen', found).axles[0]).toEqual({
      axle: 'front',
      loadKg: 5000,
      leftKg: 2500,
      rightKg: 2500,
      leftUncertaintyKg: expect.any(Number),
      rightUncertaintyKg: expect.any(Number),
      lifted: false,
      verdict: 'not verified',
      uncertaintyKg: expect.any(Number),
    });
    expect(named('unladen', found).verdict).toBe('not verified');
    expect(found.problems.join()).toContain('No rating on record for axle front');
  });
  it('not verified with nothing weighed and no bare chassis', () => {
    const found = weights(vehicle({ axles: twoAxles(), gvwrKg: 18000 }), takeOffOf([item('A', 500, 2500)]));
    expect(found.basis).toBe('none');
    expect(named('unladen', found).axles.map((axle) => [axle.loadKg, axle.marginKg, axle.verdict])).toEqual([
      [250, undefined, 'not verified'],
      [250, undefined, 'not verified'],
    ]);
    expect(found).not.toHaveProperty('uvwKg');
    expect(found.bays).toEqual([]);
  });
});

describe('prediction', () => {
  it('is the bare chassis, brought to full fuel, and the take-off', () => {
    const model = vehicle(
      { axles: twoAxles(), bare: bareOf({ front: 3000, rear: 2000 }, { levels: { FUEL: 0.25 } }) },
      { tanks: [tank('FUEL', 'diesel', 400, 1000)] },
    );
    const found = weights(model, takeOffOf([item('A', 500, 2500)]));
    expect(found).toMatchObject({ basis: 'prediction', uvwKg: 5000 + 300 + 500 });
    expect(loads('unladen', found)).toEqual({ front: 3000 + 240 + 250, rear: 2000 + 60 + 250 });
  });
  it('forecasts with an allowance by basis, and a band', () => {
    const model = vehicle({ axles: twoAxles(), bare: bareOf({ front: 3000, rear: 2000 }) });
    const { forecast } = weights(model, takeOffOf([item('A', 1000, 2500, { basis: 'estimated' }), item('B', 1000, 2500)]));
    expect(forecast).toMatchObject({ allowanceKg: 150, totalKg: 7150 });
    // The band holds the bare chassis (1 % of 5000 as a rectangle, k = 2: 57.74) and the allowance: √(57.74² + 150²).
    expect((forecast?.highKg as number) - 7150).toBeCloseTo(160.73, 2);
    expect(forecast?.axles.map((axle) => axle.loadKg)).toEqual([3000 + 1075, 2000 + 1075]);
  });
  it('says what makes its uncertainty', () => {
    const model = vehicle({ axles: twoAxles(), bare: bareOf({ front: 3000, rear: 2000 }), gvwrKg: 18000 });
    const { conditions } = weights(model, takeOffOf([item('A', 1000, 0, { basis: 'estimated', uMassKg: 60 })]));
    expect(conditions[0]?.contributions).toEqual([
      { name: 'estimated masses', kg: 120 },
      { name: 'bare chassis: tolerance', kg: expect.closeTo(34.641, 3) },
    ]);
  });
});

describe('nothing to compute from', () => {
  it('a shell without axles answers, and says so', () => {
    const found = weights(vehicle({}), takeOffOf([item('A', 500, 2500)]));
    expect(found).toMatchObject({ conditions: [], ratings: [], basis: 'none' });
    expect(found.problems).toEqual([expect.stringContaining('No axles are on record')]);
  });
  it('a layout that is not determined still has its total', () => {
    const axles = [...twoAxles(), { ...twoAxles()[1]!, id: 'third', xMm: 6300 }];
    const found = weights(vehicle({ axles, gvwrKg: 20000, bare: bareOf({ front: 3000, rear: 2000, third: 2000 }) }), takeOffOf());
    expect(named('unladen', found)).toMatchObject({ totalKg: 7000, axles: [] });
    expect(found.problems[0]).toContain('3 supports');
  });
});
