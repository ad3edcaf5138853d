import { describe, expect, it } from 'vitest';
import { heightOf } from '../../../src/compute/weights/cg-height.js';
import { weights } from '../../../src/compute/weights/index.js';
import type { Instrument } from '../../../src/records/index.js';
import { record } from '../../support/build.js';
import { bareOf, item, readings, scaleSC1, tagCoach, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

describe('influence lines', () => {
  const model = vehicle({ axles: tagCoach() }, { tanks: [tank('TAIL', 'water', 10, 9900)] });
  const line = () => weights(model, takeOffOf([item('A', 10, -700)])).influence;
  it('run from the foremost to the rearmost thing on record', () => {
    expect([line()[0]?.xMm, line().at(-1)?.xMm]).toEqual([-1000, 10000]);
    expect(line().map((one, i) => one.xMm - (line()[i - 1]?.xMm ?? -1500))).toEqual(line().map(() => 500));
  });
  it('stay a short table where a station was typed in the wrong unit', () => {
    const far = weights(model, takeOffOf([item('A', 10, 1e9)])).influence;
    expect(far.length).toBeLessThan(210);
    expect(far.at(-1)?.xMm).toBeGreaterThanOrEqual(1e9);
  });
  it('are 100 kg on the axle itself at its own place, and add to 100 kg anywhere', () => {
    expect(line().find((one) => one.xMm === 0)?.addsKg).toEqual({ steer: 100, drive: 0, tag: 0 });
    for (const { addsKg } of line()) expect(Object.values(addsKg).reduce((a, b) => a + b, 0)).toBeCloseTo(100, 9);
  });
});

describe('budget for the next trade', () => {
  const shell = {
    tickets: [ticket('T-1', { front: 5000, rear: 6000 }, { stage: 'walls' })],
    tanks: [tank('FRESH', 'water', 500, 5000)],
  };
  const axles = twoAxles();
  it('keeps 10 % of the rating until the last stage, in the condition that has least left', () => {
    const { budget, reserve } = weights(vehicle({ axles, gvwrKg: 18000 }, shell), takeOffOf());
    expect(reserve).toBe(0.1);
    expect(budget.map(({ axle, condition, reserveKg }) => [axle, condition, reserveKg])).toEqual([
      ['front', 'unladen', 700],
      ['rear', 'water', 1100],
    ]);
  });
  it('takes off what is not known of the load: steps of 50 kg and 0.5 % of the reading where no scale is on record', () => {
    const { budget } = weights(vehicle({ axles, gvwrKg: 18000 }, shell), takeOffOf());
    const u = (kg: number) => 2 * Math.hypot(50 / (2 * Math.sqrt(3)), (0.005 * kg) / Math.sqrt(3));
    const left = [7000 - 5000 - 700 - u(5000), 11000 - 6500 - 1100 - u(6000)];
    expect(budget.map((one) => one.uncertaintyKg)).toEqual([expect.closeTo(u(5000), 6), expect.closeTo(u(6000), 6)]);
    expect(budget.map((one) => one.leftKg)).toEqual(left.map((kg) => expect.closeTo(kg, 6)));
    // Ends that were never weighed have an uncertainty of their own, more than half of the axle's.
    const ends = [3500 - 2500 - 350, 5500 - 3250 - 550];
    budget.forEach((one, i) => {
      expect(one.leftEndUncertaintyKg).toBeGreaterThan(one.uncertaintyKg / 2);
      expect(one.leftEndKg).toBeCloseTo((ends[i] as number) - (one.leftEndUncertaintyKg as number), 6);
      expect(one.rightEndKg).toBeCloseTo((ends[i] as number) - (one.rightEndUncertaintyKg as number), 6);
    });
  });
  it('keeps its reserve of the GAWR, where another limit is less', () => {
    const wheels = twoAxles(5000, { wheelsKg: 3000 });
    const [front] = weights(vehicle({ axles: wheels }, shell), takeOffOf()).budget;
    const u = front?.uncertaintyKg as number;
    expect(front).toMatchObject({ reserveKg: 700, leftKg: expect.closeTo(6000 - 5000 - 700 - u, 6) });
    const { gawrKg: _, ...unrated } = wheels[0]!;
    const bare = weights(vehicle({ axles: [unrated, wheels[1]!] }, shell), takeOffOf()).budget;
    expect(bare[0]).toMatchObject({ axle: 'front', reserveKg: 600 });
  });
  it('and nothing for an axle without a rating', () => {
    const { gawrKg: _, ...unrated } = axles[0]!;
    expect(weights(vehicle({ axles: [unrated, axles[1]!] }, shell), takeOffOf()).budget.map((one) => one.axle)).toEqual(['rear']);
  });
  it('and 5 % once it has been weighed finished', () => {
    const finished = { ...shell, tickets: [ticket('T-1', { front: 5000, rear: 6000 }, { stage: 'finished' })] };
    expect(weights(vehicle({ axles }, finished), takeOffOf()).budget[0]).toMatchObject({ reserveKg: 350 });
    const signed = (stage: string) => ({
      ...shell,
      signoffs: [{ ...record(`SG-${stage}`), stage, role: 'fitter', by: 'K7', date: '2026-07-01' }],
    });
    const reserveOf = (stage: string) => weights(vehicle({ axles }, signed(stage)), takeOffOf()).reserve;
    expect([reserveOf('walls'), reserveOf('finished')]).toEqual([0.1, 0.05]);
    const model = vehicle({ axles }, shell);
    expect(weights({ ...model, library: { ...model.library, stages: [] } }, takeOffOf()).reserve).toBe(0.1);
  });
});

describe('height of the centre of gravity', () => {
  it('by raising one axle', () => {
    // STA-20, STA-21: ISO 10392 method; L 5.000 m, lift 0.600 m, W 12,000 kg, gain 150 kg, r 0.500 m.
    expect(heightOf({ baseMm: 5000, liftMm: 600, totalKg: 12000, gainKg: 150, wheelRadiusMm: 500 })).toBeCloseTo(1017.07, 2);
  });
  const instruments = (resolution: number) => {
    const fine: Instrument = { ...scaleSC1, resolution: { value: resolution, dimension: 'mass', text: `${resolution} kg` } };
    return new Map([[fine.id, fine]]);
  };
  const level = ticket('T-1', { front: 5000, rear: 7000 }, { scale: 'SC-1' });
  const raised = {
    ...record('T-2'),
    date: '2026-06-30',
    scale: 'SC-1',
    readings: readings({ front: 5150, rear: 6850 }),
    raised: { axle: 'rear', byMm: 600, level: 'T-1', wheelRadiusMm: 500 },
  };
  const heights = (resolution: number, one: typeof raised = raised) => {
    const model = vehicle({ axles: twoAxles() }, { tickets: [level, one] });
    return weights({ ...model, library: { ...model.library, instruments: instruments(resolution) } }, takeOffOf());
  };
  it('from two tickets, with its uncertainty', () => {
    const [found] = heights(5).cgHeight;
    expect(found).toMatchObject({ ticket: 'T-2', level: 'T-1', heightMm: expect.closeTo(1017.07, 2) });
    // u of the gain: 5 kg steps twice, 2.041 kg; 0.2 % of 150 kg, 0.173 kg; 3.447 mm a kilogram; k = 2.
    expect(found?.uncertaintyMm).toBeCloseTo(2 * 3.447 * Math.hypot(2.0412, 0.1732), 1);
  });
  it('is refused where the weighing is too weak to say', () => {
    expect(heights(50).cgHeight[0]).toMatchObject({ refused: expect.stringContaining('too weak') });
    expect(heights(50).cgHeight[0]).not.toHaveProperty('heightMm');
  });
  it('is refused without its level weighing', () => {
    expect(heights(5, { ...raised, raised: { ...raised.raised, level: 'T-9' } }).cgHeight[0]).toMatchObject({
      refused: expect.stringContaining('T-9'),
    });
  });
  it('is refused where the weighing cannot give it, and told why', () => {
    const refused = (one: Partial<typeof raised.raised>, kg: Readonly<Record<string, number>> = { front: 5150, rear: 6850 }) =>
      heights(5, { ...raised, readings: readings(kg), raised: { ...raised.raised, ...one } }).cgHeight[0]?.refused;
    expect(refused({})).toBeUndefined();
    expect(refused({ axle: 'tag' })).toContain('axle tag is not on record');
    expect(refused({ byMm: 0 })).toContain('not between nothing and the wheelbase');
    expect(refused({ byMm: 5000 })).toContain('not between nothing and the wheelbase');
    expect(refused({}, { rear: 6850 })).toContain('readings are missing');
    const beside = (one: ReturnType<typeof ticket>, axles = twoAxles()) =>
      weights(vehicle({ axles }, { tickets: [{ ...one, scale: 'SC-1' }, raised] }), takeOffOf()).cgHeight[0]?.refused;
    expect(beside(ticket('T-1', { front: 5000 }))).toBe('readings are missing');
    expect(beside(ticket('T-1', { rear: 7000 }))).toBe('readings are missing');
    expect(beside(ticket('T-1', { front: 0, rear: 0 }))).toBe('nothing was weighed');
    const third = [...twoAxles(), { ...twoAxles()[1]!, id: 'third', xMm: 8000 }];
    expect(beside(level, third)).toBe('it takes two groups of axles');
    expect(beside(level, twoAxles().slice(0, 1))).toBe('it takes two groups of axles');
    const odd = third.map((one) => ({ ...one, share: { with: one.id === 'rear' ? 'third' : 'rear', fraction: 0.3 } }));
    expect(beside(level, odd)).toBe('it takes two groups of axles');
    // No more on the front than level: it would lie at the axles’ own height or below the ground.
    expect(refused({}, { front: 3000, rear: 9000 })).toContain('too weak');
    expect(heights(5, { ...raised, readings: readings({ front: 5150 }) }).cgHeight[0]?.refused).toBeUndefined();
  });
  it('takes the axle that stays down, whichever end was raised', () => {
    // STA-21 from the other end: the rear gains what the front gained there.
    const front = { ...raised, readings: readings({ rear: 7150 }), raised: { ...raised.raised, axle: 'front' } };
    expect(heights(5, front).cgHeight[0]?.heightMm).toBeCloseTo(1017.07, 2);
  });
  it('measures from axle to axle, wherever the datum stands', () => {
    const axles = twoAxles().map((one) => ({ ...one, xMm: one.xMm + 1200 }));
    const model = vehicle({ axles }, { tickets: [level, raised] });
    const found = weights({ ...model, library: { ...model.library, instruments: instruments(5) } }, takeOffOf()).cgHeight[0];
    expect(found?.heightMm).toBeCloseTo(1017.07, 2);
  });
  it('takes axles that share as one, at their share-weighted place', () => {
    // STA-20 with L 6,548 mm (STA-09), W 14,000 kg, gain 200 kg, r 500 mm: tan θ of 700/6548 is 0.107521; 500 + 6548·200/(14000·0.107521).
    const one = ticket('T-1', { steer: 5200, drive: 5300, tag: 3500 }, { scale: 'SC-1' });
    const up = {
      ...raised,
      readings: readings({ drive: 5420, tag: 3580 }),
      raised: { axle: 'steer', byMm: 700, level: 'T-1', wheelRadiusMm: 500 },
    };
    const model = vehicle({ axles: tagCoach() }, { tickets: [one, up] });
    const [found] = weights({ ...model, library: { ...model.library, instruments: instruments(5) } }, takeOffOf()).cgHeight;
    expect(found?.heightMm).toBeCloseTo(500 + (6548 * 200) / (14000 * 0.1075214), 0);
    // Raised by one of the pair, the other goes up with it; one of the pair without a reading is not half a pair.
    const tail = (kg: Readonly<Record<string, number>>) => {
      const rear = { ...up, readings: readings(kg), raised: { ...up.raised, axle: 'tag' } };
      const both = vehicle({ axles: tagCoach() }, { tickets: [one, rear] });
      return weights({ ...both, library: { ...both.library, instruments: instruments(5) } }, takeOffOf()).cgHeight[0];
    };
    expect(tail({ steer: 5400 })?.heightMm).toBeCloseTo(500 + (6548 * 200) / (14000 * 0.1075214), 0);
    const half = vehicle({ axles: tagCoach() }, { tickets: [one, { ...up, readings: readings({ drive: 5420 }) }] });
    expect(weights(half, takeOffOf()).cgHeight[0]?.refused).toBe('readings are missing');
    // Two axles stay down, each read twice in steps of 5 kg: 2.887 kg; 0.2 % of 200 kg: 0.231 kg.
    const perKg = 6548 / (14000 * 0.1075214);
    expect(found?.uncertaintyMm).toBeCloseTo(2 * perKg * Math.hypot((5 / (2 * Math.sqrt(3))) * 2, 0.4 / Math.sqrt(3)), 1);
  });
  it('counts the whole doubt of both weighings where they were on two scales', () => {
    const other: Instrument = {
      ...scaleSC1,
      id: 'SC-2',
      resolution: { value: 0, dimension: 'mass', text: '0' },
      tolerance: { value: 3, dimension: 'mass', text: '3 kg' },
    };
    const model = vehicle(
      { axles: twoAxles() },
      {
        tickets: [
          { ...level, scale: 'SC-2' },
          { ...raised, scale: 'SC-2' },
          { ...raised, id: 'T-3' },
        ],
      },
    );
    const even = { ...other, id: 'SC-1' };
    const found = weights(
      { ...model, library: { ...model.library, instruments: new Map([other, even].map((one) => [one.id, one])) } },
      takeOffOf(),
    ).cgHeight;
    // One scale: an error in kilograms is common to both and falls out. Two: four readings, each 3 kg as a rectangle.
    expect(found[0]?.uncertaintyMm).toBeCloseTo(0, 9);
    expect(found[1]?.uncertaintyMm).toBeCloseTo(2 * 3.447 * Math.hypot(...[3, 3, 3, 3].map((kg) => kg / Math.sqrt(3))), 1);
  });
  it('never serves as a weighing of the vehicle', () => {
    expect(heights(5)).toMatchObject({ basisTicket: 'T-1', tickets: [{ id: 'T-1' }] });
  });
});

describe('mass by stage', () => {
  const axles = twoAxles();
  const items = [item('A', 100, 5000, { stage: 'walls' }), item('B', 40, 5000, { stage: 'finished' }), item('C', 7, 5000)];
  const at = (id: string, date: string, rear: number, more: Parameters<typeof ticket>[2] = {}) =>
    ticket(id, { front: 4000, rear }, { stage: 'walls', date, scale: 'SC-1', ...more });
  const walls = (tickets: readonly ReturnType<typeof ticket>[]) =>
    weights(vehicle({ axles }, { tickets }), takeOffOf(items)).growth.find((one) => one.stage === 'walls');
  it('is that of the recorded items alone without a bare chassis; one of no stage is there from the start', () => {
    const { growth } = weights(vehicle({ axles }), takeOffOf(items));
    expect(growth).toEqual([
      { stage: 'subframe', predictedKg: 7 },
      { stage: 'walls', predictedKg: 107 },
      { stage: 'finished', predictedKg: 147 },
    ]);
  });
  it('stands beside the newest verified ticket of that stage, with its uncertainty', () => {
    const [old, young] = [at('T-1', '2026-05-01', 6000), at('T-2', '2026-06-01', 6100)];
    // Two steps of 10 kg: 4.082; 0.2 % of 10,100 kg as a rectangle: 11.662; RSS 12.356; k = 2.
    for (const tickets of [
      [old, young],
      [young, old],
    ])
      expect(walls(tickets)).toMatchObject({ measuredKg: 10100, uncertaintyKg: expect.closeTo(24.71, 2) });
    const { condition: _, ...unverified } = at('T-3', '2026-07-01', 6200);
    expect(walls([old, unverified])).toMatchObject({ measuredKg: 10000 });
    expect(walls([at('T-4', '2026-07-01', 6300, { stage: 'finished' })])).not.toHaveProperty('measuredKg');
  });
  it('is forecast axle by axle: the band holds what is not known, and the allowance', () => {
    const bare = bareOf({ front: 3000, rear: 2000 });
    const { forecast } = weights(vehicle({ axles, bare }), takeOffOf([item('A', 1000, 1000, { basis: 'catalogue' })]));
    // 5 % of 1,000 kg at a fifth of the wheelbase: 40 kg on the front, 10 kg on the rear; each reading 1 % as a rectangle, k = 2.
    const band = (kg: number, allowed: number) => Math.hypot((2 * 0.01 * kg) / Math.sqrt(3), allowed);
    expect(forecast).toEqual({
      allowanceKg: 50,
      totalKg: 6050,
      lowKg: expect.closeTo(6050 - band(5000, 50), 6),
      highKg: expect.closeTo(6050 + band(5000, 50), 6),
      axles: [
        {
          axle: 'front',
          loadKg: 3840,
          lowKg: expect.closeTo(3840 - band(3000, 40), 6),
          highKg: expect.closeTo(3840 + band(3000, 40), 6),
        },
        {
          axle: 'rear',
          loadKg: 2210,
          lowKg: expect.closeTo(2210 - band(2000, 10), 6),
          highKg: expect.closeTo(2210 + band(2000, 10), 6),
        },
      ],
    });
  });
  it.each([
    ['weighed', 0],
    ['calculated', 0.03],
    ['catalogue', 0.05],
    ['estimated', 0.15],
  ] as const)('allows on a %s mass %d of it', (basis, part) => {
    // common practice, no source
    const bare = bareOf({ front: 3000, rear: 2000 });
    const { forecast } = weights(vehicle({ axles, bare }), takeOffOf([item('A', 1000, 1000, { basis })]));
    expect(forecast?.allowanceKg).toBeCloseTo(1000 * part, 9);
  });
});
