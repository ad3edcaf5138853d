import { describe, expect, it } from 'vitest';
import type { MassItem } from '../../../src/compute/takeoff/types.js';
import { weights } from '../../../src/compute/weights/index.js';
import type { Model } from '../../../src/model/shell.js';
import { axle, bareOf, bay, condition, item, seat, tagCoach, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

type Shell = Partial<Model['shell']>;
type Chassis = Partial<Model['shell']['chassis']>;
const answer = (chassis: Chassis, shell: Shell = {}, items: readonly MassItem[] = []) =>
  weights(vehicle(chassis, shell), takeOffOf(items));
const named = (found: ReturnType<typeof weights>, name: string) => found.conditions.find((one) => one.name === name)!;

/** Two axles of which nothing is on record but their place. */
const plain = [axle('front', 0), axle('rear', 5000)];

describe('a figure that is not known has no place in the answer', () => {
  /** Every place that holds nothing, or no number. */
  const holes = (value: unknown, at = ''): readonly string[] => {
    if (value === undefined || Number.isNaN(value)) return [at];
    if (typeof value !== 'object' || value === null) return [];
    return Object.entries(value).flatMap(([key, each]) => holes(each, `${at}.${key}`));
  };
  const { condition: _, ...unstated } = ticket('T-1', { front: 4000 });
  it.each<[string, Chassis, Shell]>([
    ['nothing on record', {}, {}],
    ['one axle', { axles: plain.slice(0, 1) }, {}],
    ['axles, and nothing aboard', { axles: plain }, {}],
    ['a bare chassis', { axles: plain, bare: bareOf({ front: 3000, rear: 2000 }) }, { bays: [bay('B', 9000)] }],
    [
      'a layout that is not determined',
      { axles: [...twoAxles(), axle('third', 6300)], bare: bareOf({ front: 1, rear: 2, third: 3 }), gvwrKg: 9, gcwrKg: 9 },
      { bays: [bay('B', 0, 10)] },
    ],
    ['a ticket without a condition', { axles: plain }, { tickets: [unstated] }],
    ['a ticket with a gross alone', { axles: plain }, { tickets: [ticket('T-1', {}, { grossKg: 9000 })] }],
    [
      'ratings and no track',
      { axles: [axle('a', 0, { gawrKg: 7000 }), axle('b', 5000, { suspensionKg: 9000 })], gvwrKg: 15000 },
      { tickets: [ticket('T-1', { a: 4000, b: 5000 })], bays: [bay('B', 2500, 100), bay('C', 2500)] },
    ],
    [
      'tracks and no ratings',
      { axles: plain.map((one) => ({ ...one, trackMm: 2000 })) },
      { tickets: [ticket('T-1', { front: 4000, rear: 5000 })], bays: [bay('B', 2500, 100, 900)] },
    ],
    [
      'a track of nothing',
      { axles: twoAxles().map((one) => ({ ...one, trackMm: 0 })) },
      { tickets: [ticket('T-1', { front: 4000, rear: 5000 })], bays: [bay('B', 2500, 100, 900)] },
    ],
    [
      'more than it may weigh',
      { axles: twoAxles(), gvwrKg: 5000, gcwrKg: 8000 },
      { tickets: [ticket('T-1', { front: 4000, rear: 5000 })], bays: [bay('B', 2500, 100)] },
    ],
  ])('%s', (_name, chassis, shell) => {
    expect(holes(answer(chassis, shell))).toEqual([]);
    expect(holes(answer(chassis, shell, [item('A', 100, 2500, { stage: 'of no library' })]))).toEqual([]);
  });
  it('nor has what stands on it', () => {
    const unrated = answer({ axles: plain, bare: bareOf({ front: 3000, rear: 2000 }) });
    expect(Object.keys(unrated)).not.toContain('occcKg');
    expect(unrated).toMatchObject({ uvwKg: 5000, fullWaterKg: 0, budget: [] });
    expect(answer({ axles: plain, gvwrKg: 9000, gcwrKg: 9000 }, { tanks: [tank('FRESH', 'water', 90, 0)] })).toMatchObject({
      basis: 'none',
      fullWaterKg: 90,
    });
    for (const key of ['uvwKg', 'trailerKg', 'forecast', 'label', 'basisTicket'])
      expect(Object.keys(answer({ axles: plain, gvwrKg: 9000, gcwrKg: 9000 }))).not.toContain(key);
    const over = answer({ axles: plain, gvwrKg: 4000, bare: bareOf({ front: 3000, rear: 2000 }) });
    for (const key of ['occcKg', 'cccKg', 'label']) expect(Object.keys(over)).not.toContain(key);
  });
});

describe('belted seats and no others', () => {
  it('count in what it may carry', () => {
    // LAB-06: 68 kg a designated seat; 15,000 − 10,000 − 2 × 68.
    const seats = [seat('driver', 0), seat('passenger', 0), seat('bench', 5000, 0, false)];
    const found = answer({ axles: twoAxles(), gvwrKg: 15000 }, { seats, tickets: [ticket('T-1', { front: 4000, rear: 6000 })] });
    expect(found).toMatchObject({ occcKg: 5000, cccKg: 5000 - 136, label: { seats: 2, seatsKg: 136 } });
    expect(named(found, 'occupants').totalKg).toBe(10136);
  });
});

describe('as weighed', () => {
  it('is told first, as the scale had it and with what the scale may be off', () => {
    const one = ticket(
      'T-1',
      { front: 4000, rear: 6000 },
      {
        scale: 'SC-1',
        condition: condition({ levels: { FUEL: 0.5 }, occupants: [{ seat: 'driver', massKg: 90 }] }),
      },
    );
    const shell = { tanks: [tank('FUEL', 'diesel', 400, 1000)], seats: [seat('driver', 0)], tickets: [one] };
    const [first, second] = answer({ axles: twoAxles(), gvwrKg: 15000 }, shell).conditions;
    expect(second?.name).toBe('unladen');
    expect(first).toMatchObject({
      name: 'as weighed',
      kind: 'weighed',
      certified: false,
      holds: 'as on the scale for ticket T-1',
      totalKg: 10000,
      gvwrMarginKg: 5000,
      axles: [
        { axle: 'front', loadKg: 4000, marginKg: 3000, lifted: false },
        { axle: 'rear', loadKg: 6000, marginKg: 5000, lifted: false },
      ],
    });
    // Steps and tolerance alone (12.247 kg, k = 2): not the level of its tank.
    expect(first?.uncertaintyKg).toBeCloseTo(24.495, 3);
  });
  it('is not told without a ticket to start from', () => {
    expect(answer({ axles: twoAxles(), bare: bareOf({ front: 1, rear: 1 }) }).conditions[0]?.name).toBe('unladen');
  });
  it('is as high as it is predicted: a scale does not see height', () => {
    // Bare chassis at the top of its rails; 1,000 kg at 500 mm of 6,000 kg predicted: its moment is in what was weighed, 6,100 kg.
    const shell = { tickets: [ticket('T-1', { front: 3600, rear: 2500 })] };
    const found = answer({ axles: twoAxles(), bare: bareOf({ front: 3000, rear: 2000 }) }, shell, [item('A', 1000, 2500)]);
    expect(named(found, 'as weighed').centroid[2]).toBeCloseTo((500 * 1000) / 6100, 6);
    expect(named(found, 'unladen').centroid[2]).toBeCloseTo((500 * 1000) / 6100, 6);
  });
});

describe('the heaviest standard condition', () => {
  const weighed = { tickets: [ticket('T-1', { front: 4000, rear: 6000 })] };
  const chassis = { axles: twoAxles(), gvwrKg: 15000, gcwrKg: 20000 };
  it('is that of the road limits and of the trailer', () => {
    const waste = answer(chassis, { ...weighed, tanks: [tank('FRESH', 'water', 100, 0), tank('GREY', 'grey', 400, 5000)] });
    expect(waste.roadLimitsCondition).toBe('waste');
    expect(waste.trailerKg).toBeCloseTo(20000 - 10400, 9);
    expect(waste.roadLimits.find((one) => one.kind === 'gross')).toMatchObject({
      loadKg: expect.closeTo(10400, 6),
      marginKg: expect.closeTo(36287.39 - 10400, 2),
    });
    const loaded = answer(chassis, { ...weighed, bays: [bay('B', 0, 100)], tanks: [tank('GREY', 'grey', 50, 0)] });
    expect([loaded.roadLimitsCondition, loaded.trailerKg]).toEqual(['loaded', 9900]);
  });
  it('is no condition of the shop’s own, and the first of those that weigh the same', () => {
    const ours = { name: 'ours', condition: condition({ aboard: [{ name: 'crate', massKg: 900, at: [0, 0, 0] }] }) };
    expect(answer(chassis, { ...weighed, conditions: [ours] }).roadLimitsCondition).toBe('unladen');
    expect(answer({ axles: plain.slice(0, 1), gcwrKg: 9000 }, weighed)).toMatchObject({ roadLimits: [] });
  });
});

describe('conditions in words', () => {
  const chassis = { axles: tagCoach(), gvwrKg: 20000 };
  const shell = {
    tanks: [tank('FRESH', 'water', 300, 6548)],
    seats: [seat('aft', 9000), seat('driver', 1000)],
    bays: [bay('B1', 3000), bay('B2', 8000)],
    tickets: [ticket('T-1', { steer: 5000, drive: 5300, tag: 3500 })],
  };
  it('hold what the shop stated', () => {
    const own = (more: Parameters<typeof condition>[0]) =>
      named(answer(chassis, { ...shell, conditions: [{ name: 'ours', condition: condition(more) }] }), 'ours').holds;
    expect(own({})).toBe('as unladen');
    expect(
      own({
        levels: { FRESH: 0.5 },
        occupants: [{ seat: 'driver', massKg: 68 }],
        aboard: [{ name: 'crate', massKg: 40, at: [0, 0, 0] }],
        bays: { B1: 50 },
        missing: ['CMP'],
        lifted: { tag: 'up' },
      }),
    ).toBe('as the shop states it: FRESH 50 %, seat driver, crate, bay B1, without CMP, tag up');
  });
  it('put each thing in its own place', () => {
    // Two groups 6,548 mm apart (STA-09): of 100 kg at 8,000 mm, 122.17 kg stand on the rear group, 40 % of it on the tag.
    const own = (more: Parameters<typeof condition>[0]) =>
      named(answer(chassis, { ...shell, conditions: [{ name: 'ours', condition: condition(more) }] }), 'ours').axles[2]
        ?.loadKg as number;
    expect(own({ bays: { B2: 100 } }) - own({})).toBeCloseTo(0.4 * ((100 * 8000) / 6548), 6);
    expect(own({ occupants: [{ seat: 'driver', massKg: 80 }] }) - own({})).toBeCloseTo(0.4 * ((80 * 1000) / 6548), 6);
    expect(own({ bays: { 'of no record': 100 } })).toBe(own({}));
  });
  it('stand with each axle up that can be, and with all of them', () => {
    const two = tagCoach({ drive: { lift: true } });
    const names = (axles: typeof two) =>
      answer({ axles }, shell).conditions.flatMap((one) => (one.kind === 'lifted' ? [one.name.replace(/^.* \/ /u, '')] : []));
    expect([...new Set(names(two))]).toEqual(['drive up', 'tag up', 'drive up, tag up']);
    expect([...new Set(names(tagCoach()))]).toEqual(['tag up']);
    expect(named(answer({ axles: two }, shell), 'unladen / drive up').axles.map((one) => one.lifted)).toEqual([
      false,
      true,
      false,
    ]);
  });
});

describe('who steers', () => {
  const share = (steered: readonly boolean[]) => {
    const axles = plain.map((one, i) => ({ ...one, steered: steered[i] === true }));
    return named(answer({ axles }, { tickets: [ticket('T-1', { front: 4000, rear: 6000 })] }), 'unladen').steerShare;
  };
  it('is the front axle where none is said to, else those that are', () => {
    // common practice, no source
    expect(share([])).toBeCloseTo(0.4, 9);
    expect(share([true, false])).toBeCloseTo(0.4, 9);
    expect(share([false, true])).toBeCloseTo(0.6, 9);
    expect(share([true, true])).toBeCloseTo(1, 9);
  });
});

describe('what makes the uncertainty', () => {
  it('is told for the axle that has least left, and for the whole where none is rated', () => {
    const items = [item('F', 100, 0, { uMassKg: 7 }), item('R', 100, 5000, { basis: 'estimated', uMassKg: 11 })];
    const tell = (gawrKg: readonly (number | undefined)[]) => {
      const axles = plain.map((one, i) => ({ ...one, ...(gawrKg[i] === undefined ? {} : { gawrKg: gawrKg[i] }) }));
      return named(answer({ axles, bare: bareOf({ front: 0, rear: 0 }) }, {}, items), 'unladen').contributions;
    };
    expect(tell([9000, 8000])).toEqual([{ name: 'estimated masses', kg: 22 }]);
    expect(tell([8000, 9000])).toEqual([{ name: 'weighed masses', kg: 14 }]);
    expect(tell([undefined, 9000])).toEqual([{ name: 'estimated masses', kg: 22 }]);
    expect(tell([undefined, undefined])).toEqual([
      { name: 'estimated masses', kg: 22 },
      { name: 'weighed masses', kg: 14 },
    ]);
  });
  it('takes in every item of a kind', () => {
    const items = [3, 4, 12].map((uMassKg) => item(`A${uMassKg}`, 100, 0, { uMassKg }));
    // STA-29: 3, 4 and 12 combine to 13; k = 2.
    expect(named(answer({ axles: plain }, {}, items), 'unladen').contributions).toEqual([
      { name: 'weighed masses', kg: expect.closeTo(26, 9) },
    ]);
  });
  it('and of the station of the centre of gravity, by where its parts may be', () => {
    // Two parts of equal mass, each known to 30 mm: 30/√2 of the whole, k = 2.
    const items = [item('A', 500, 1000, { uPositionMm: 30 }), item('B', 500, 4000, { uPositionMm: 30 })];
    expect(named(answer({ axles: plain }, {}, items), 'unladen').centroidUncertaintyMm).toBeCloseTo(2 * 30 * Math.SQRT1_2, 6);
  });
});

describe('the worst for an axle under a GVWR', () => {
  // Unladen 4,000 and 6,000 kg on 5 m. By the lever rule each kilogram of FRESH puts 1 kg on the rear, of B1 0.8, of GREY 0.5.
  const worst = (gvwrKg: number, which = 'rear') =>
    answer(
      { axles: twoAxles(), gvwrKg },
      {
        tanks: [
          tank('GREY', 'grey', 300, 2500),
          tank('FRESH', 'water', 300, 5000),
          tank('DEF', 'urea', 50, 5000),
          tank('EMPTY', 'water', 0, 5000),
          tank('FUEL', 'diesel', 100, 6000),
        ],
        bays: [bay('B1', 4000, 200), bay('B2', 4000)],
        seats: [seat('bench', 5000, 0, false)],
        tickets: [ticket('T-1', { front: 4000, rear: 6000 }, { condition: condition({ levels: { FUEL: 1, DEF: 1 } }) })],
      },
    ).conditions.find((one) => one.worstFor === which)!;
  it.each([
    [20000, 6000 + 300 + 160 + 150, 'GREY full, FRESH full, FUEL full, bays B1'],
    [10650, 6000 + 300 + 160 + 75, 'GREY 50 %, FRESH full, FUEL full, bays B1'],
    [10500, 6000 + 300 + 160, 'GREY empty, FRESH full, FUEL full, bays B1'],
    [10350, 6000 + 300 + 40, 'GREY empty, FRESH full, FUEL full, bays B1 (25 %)'],
    [10150, 6000 + 150, 'GREY empty, FRESH 50 %, FUEL full, no bays'],
  ])('of %d kg leaves out first what puts least on it', (gvwrKg, loadKg, words) => {
    const found = worst(gvwrKg);
    expect(found.holds).toBe(words);
    expect(found.name).toBe(`worst for rear: ${words}`);
    expect(found.axles[1]?.loadKg).toBeCloseTo(loadKg, 6);
  });
  it('takes out of the unladen vehicle what lightens it', () => {
    // Fuel stands behind the rear axle: 100 kg of it lifts the front by 20 kg.
    const front = worst(20000, 'front');
    expect(front.holds).toBe('GREY full, FRESH empty, FUEL empty, bays B1');
    expect(front.axles[0]?.loadKg).toBeCloseTo(4000 + 150 + 40 + 20, 6);
  });
  it('says nothing of what is not there', () => {
    const bare = answer({ axles: twoAxles() }, { tickets: [ticket('T-1', { front: 4000, rear: 6000 })] });
    expect(bare.conditions.find((one) => one.worstFor === 'rear')?.holds).toBe('');
    const seats = [seat('aft', 6000)];
    const one = answer({ axles: twoAxles() }, { seats, tickets: [ticket('T-1', { front: 4000, rear: 6000 })] });
    const whole = one.conditions.filter((each) => each.kind === 'worst' && each.worstEnd === undefined);
    expect(whole.map((each) => each.holds)).toEqual(['no seats', 'seats aft']);
  });
});
