import { describe, expect, it } from 'vitest';
import type { MassItem } from '../../../src/compute/takeoff/types.js';
import { weights } from '../../../src/compute/weights/index.js';
import { endsOf, turnOf } from '../../../src/compute/weights/vehicle-load.js';
import type { Model } from '../../../src/model/shell.js';
import { record } from '../../support/build.js';
import {
  bareOf,
  condition,
  item,
  readings,
  scaleSC1,
  seat,
  stages,
  tagCoach,
  takeOffOf,
  tank,
  ticket,
  twoAxles,
  vehicle,
} from './support.js';

const figure = (model: Model, items: readonly MassItem[] = []) => weights(model, takeOffOf(items)).tickets[0]!;

describe('what a scale shows', () => {
  it('where the mass is centred along the vehicle', () => {
    // STA-07: front 4,200, rear 6,800, wheelbase 5.2 m: 3.21455 m.
    const model = vehicle({ axles: twoAxles(5200), gvwrKg: 18000 }, { tickets: [ticket('T-1', { front: 4200, rear: 6800 })] });
    const unladen = weights(model, takeOffOf()).conditions.find((one) => one.name === 'unladen');
    expect(unladen?.centroid[0]).toBeCloseTo(3214.55, 2);
  });
  it('and across it', () => {
    // STA-08: left 5,600, right 5,400, track 2.05 m: 18.6364 mm to the left.
    const turn = turnOf({ totalKg: 11000, leftKg: 5600, rightKg: 5400 }, 2050) as number;
    expect(turn / 11000).toBeCloseTo(-18.6364, 4);
    expect(endsOf(11000, turn, 2050)).toEqual([5600, 5400]);
  });
});

describe('a ticket brought to unladen', () => {
  // STA-18: 14,300 kg at 4.20 m with 300 kg of water at 5.00 m and a driver of 80 kg at 0.40 m; two axles 6.0 m apart.
  const axles = twoAxles(6000);
  const rear = (14300 * 4200) / 6000;
  const shell = {
    tanks: [tank('FRESH', 'water', 300, 5000), tank('FUEL', 'diesel', 400, 1500, { densityKgM3: 832 })],
    seats: [seat('driver', 400)],
    tickets: [
      ticket(
        'T-1',
        { front: 14300 - rear, rear },
        { condition: condition({ levels: { FUEL: 1, FRESH: 1 }, occupants: [{ seat: 'driver', massKg: 80 }] }) },
      ),
    ],
  };
  it('moves what was aboard by its own position, not as a lump', () => {
    const found = figure(vehicle({ axles, gvwrKg: 18000 }, shell));
    const kg = Object.values(found.normalised).reduce((a, b) => a + b, 0);
    expect(kg).toBeCloseTo(13920, 6);
    expect(((found.normalised.rear as number) * 6000) / kg).toBeCloseTo(4204.6, 1);
    expect(found).toMatchObject({ verified: true, totalKg: 14300, residualKg: 0 });
  });
  it('says how much is unexplained, and where', () => {
    // STA-19: prediction 13,700 kg at 4.150 m: 220 kg centred 7.6045 m.
    const predictedRear = (13700 * 4150) / 6000;
    const bare = bareOf({ front: 13700 - predictedRear, rear: predictedRear });
    const found = figure(
      vehicle({ axles, bare, gvwrKg: 18000 }, { ...shell, tickets: shell.tickets.map((one) => ({ ...one, scale: 'SC-1' })) }),
    );
    expect(found.residualKg).toBeCloseTo(220, 6);
    expect(found.residualXMm).toBeCloseTo(7604.5, 1);
    expect((found.residual.front as number) + (found.residual.rear as number)).toBeCloseTo(220, 6);
  });
  it('fills part-full fuel where the tank is', () => {
    const half = ticket('T-1', { front: 5000, rear: 7000 }, { condition: condition({ levels: { FUEL: 0.5 } }) });
    const found = figure(vehicle({ axles }, { ...shell, tickets: [half] }));
    // 200 L at 0.832 kg/L, 1.5 m of 6.0 m aft: three quarters to the front.
    expect(found.normalised.front).toBeCloseTo(5000 + 0.75 * 166.4, 6);
    expect(found.normalised.rear).toBeCloseTo(7000 + 0.25 * 166.4, 6);
  });
  it('puts on what was missing, once', () => {
    const missing = ticket(
      'T-1',
      { front: 5000, rear: 7000 },
      { condition: condition({ levels: { FUEL: 1 }, missing: ['CMP-31'] }) },
    );
    const answer = weights(vehicle({ axles }, { ...shell, tickets: [missing] }), takeOffOf([item('CMP-31', 120, 6000)]));
    expect(answer.tickets[0]?.normalised.rear).toBeCloseTo(7120, 6);
    expect(answer.uvwKg).toBeCloseTo(12120, 6);
  });
  it('takes off what was aboard', () => {
    const scaffold = { name: 'scaffold', massKg: 60, at: [3000, 0, 0] as const };
    const model = vehicle(
      { axles },
      {
        ...shell,
        tickets: [
          ticket('T-1', { front: 5030, rear: 7030 }, { condition: condition({ levels: { FUEL: 1 }, aboard: [scaffold] }) }),
        ],
      },
    );
    expect(figure(model).normalised).toEqual({ front: 5000, rear: 7000 });
  });
  it('hands a weighing with the tag up down anew', () => {
    // STA-11 backwards: weighed 4433.33 and 9566.67 with the tag up, it is the coach of STA-10 with the tag down.
    const up = ticket(
      'T-1',
      { steer: 4433.3333333, drive: 9566.6666667 },
      { condition: condition({ levels: { FUEL: 1 }, lifted: { tag: 'up' } }) },
    );
    const { normalised } = figure(vehicle({ axles: tagCoach() }, { tickets: [up] }));
    expect(normalised.steer).toBeCloseTo(5233.96, 2);
    expect(normalised.drive).toBeCloseTo(5259.62, 2);
    expect(normalised.tag).toBeCloseTo(3506.41, 2);
  });
  it('keeps what the scale found of the true share between drive and tag', () => {
    const model = vehicle({ axles: tagCoach() }, { tickets: [ticket('T-1', { steer: 5000, drive: 5600, tag: 3400 })] });
    expect(
      weights(model, takeOffOf())
        .conditions.find((one) => one.name === 'unladen')
        ?.axles.map((axle) => axle.loadKg),
    ).toEqual([5000, 5600, 3400].map((kg) => expect.closeTo(kg, 6)));
  });
});

describe('a ticket is not verified', () => {
  const axles = twoAxles();
  const good = ticket('T-1', { front: 5000, rear: 7000 }, { scale: 'SC-1' });
  const { condition: _, ...without } = good;
  it.each([
    ['without a condition', without, 'in what condition'],
    ['without its fuel', { ...good, condition: condition({ fuelKnown: false }) }, 'how much fuel'],
    ['without a reading for each axle', { ...good, readings: readings({ front: 5000 }) }, 'no reading for axle rear'],
    ['past calibration', { ...good, date: '2027-02-01' }, 'SC-1 was due for calibration on 2027-01-20'],
    ['before calibration', { ...good, date: '2026-01-01' }, 'SC-1 was calibrated on 2026-01-20, after this use'],
  ])('%s', (_name, one, reason) => {
    const answer = weights(vehicle({ axles }, { tickets: [one] }), takeOffOf());
    expect(answer.tickets[0]).toMatchObject({ verified: false, reason: expect.stringContaining(reason) });
    expect(answer.basis).toBe('none');
  });
  it('without a fuel tank on record, or without the level of each', () => {
    const reason = (ids: readonly string[]) =>
      figure(vehicle({ axles }, { tickets: [good], tanks: ids.map((id) => tank(id, 'diesel', 100, 3000)) })).reason;
    expect(reason([])).toContain('no fuel tank is on record');
    expect(reason(['FUEL', 'AUX-1', 'AUX-2'])).toBe('its condition does not say how full AUX-1, AUX-2 was');
    expect(reason(['FUEL'])).toBeUndefined();
  });
  it('but for one with everything', () => {
    expect(weights(vehicle({ axles }, { tickets: [good] }), takeOffOf())).toMatchObject({ basis: 'ticket', basisTicket: 'T-1' });
  });
});

describe('conditions start from the newest verified ticket', () => {
  const axles = twoAxles();
  const at = (id: string, stage: string, date: string, rear: number) => ticket(id, { front: 4000, rear }, { stage, date });
  const items = [
    item('A', 100, 5000, { stage: 'walls' }),
    item('B', 200, 5000, { stage: 'finished' }),
    item('C', 50, 5000, { stage: 'walls' }),
  ];
  const components = [
    { ...record('C'), date: '2026-05-20', name: 'C', massKg: 50, at: [5000, 0, 0] as const, basis: 'weighed' as const },
  ];
  it('with what was put on since: later stage, or later date', () => {
    const model = vehicle(
      { axles },
      { components, tickets: [at('T-1', 'subframe', '2026-03-01', 5000), at('T-2', 'walls', '2026-05-01', 6000)] },
    );
    const answer = weights(model, takeOffOf(items));
    expect(answer).toMatchObject({ basisTicket: 'T-2', uvwKg: 4000 + 6000 + 200 + 50 });
    expect(answer.tickets.map((one) => one.addedSinceKg)).toEqual([350, 250]);
  });
  it('by stage before date', () => {
    const model = vehicle(
      { axles },
      { tickets: [at('T-2', 'finished', '2026-05-01', 6000), at('T-1', 'walls', '2026-06-01', 5000)] },
    );
    expect(weights(model, takeOffOf())).toMatchObject({ basisTicket: 'T-2' });
  });
  it('and mass by stage stands beside the ticket of that stage', () => {
    const model = vehicle(
      { axles, bare: bareOf({ front: 3900, rear: 5800 }) },
      { tickets: [at('T-2', 'walls', '2026-07-01', 6000)] },
    );
    const { growth } = weights(model, takeOffOf(items));
    expect(growth.map((one) => [one.stage, one.predictedKg, one.measuredKg])).toEqual([
      ['subframe', 9700, undefined],
      ['walls', 9850, 10000],
      ['finished', 10050, undefined],
    ]);
    expect(stages.map((one) => one.id)).toEqual(growth.map((one) => one.stage));
  });
});

describe('a ticket beside its prediction', () => {
  const axles = twoAxles();
  const bare = bareOf({ front: 3000, rear: 2000 });
  const beside = (
    kg: Readonly<Record<string, number>>,
    more: Parameters<typeof ticket>[2] = {},
    items: readonly MassItem[] = [],
  ) => figure(vehicle({ axles, bare }, { tickets: [ticket('T-1', kg, { scale: 'SC-1', stage: 'walls', ...more })] }), items);
  it('leaves what neither the bare chassis nor the records of that day explain, axle by axle', () => {
    const items = [item('A', 500, 2500, { stage: 'walls' }), item('B', 700, 5000, { stage: 'finished' })];
    const found = beside({ front: 3300, rear: 2450 }, {}, items);
    expect(found).toMatchObject({
      predicted: { front: 3250, rear: 2250 },
      residual: { front: 50, rear: 200 },
      residualKg: 250,
      residualXMm: 4000,
      addedSinceKg: 700,
    });
    // Weighing: steps 4.082, 0.2 % of 5,750 kg 6.640; bare chassis: 1 % of 5,000 kg 28.868; RSS 29.902; k = 2.
    expect(found.residualUncertaintyKg).toBeCloseTo(59.8, 1);
  });
  it('places no residual that is smaller than the weighing can tell, nor one of a kilogram', () => {
    // U of 5,020 kg on SC-1: two steps 4.082 and 0.2 % 5.797: 7.09; k = 2: 14.18.
    expect(beside({ front: 3000, rear: 2014 })).not.toHaveProperty('residualXMm');
    expect(beside({ front: 3000, rear: 2015 }).residualXMm).toBeCloseTo(5000, 6);
    expect(beside({ front: 3000, rear: 1985 }).residualXMm).toBeCloseTo(5000, 6);
    const fine = {
      ...scaleSC1,
      resolution: { ...scaleSC1.resolution, value: 0.01 },
      tolerance: { ...scaleSC1.tolerance, value: 0 },
    };
    const exact = (rear: number) => {
      const model = vehicle({ axles, bare }, { tickets: [ticket('T-1', { front: 3000, rear }, { scale: 'SC-1' })] });
      return figure({ ...model, library: { ...model.library, instruments: new Map([[fine.id, fine]]) } });
    };
    expect(exact(2000.9)).not.toHaveProperty('residualXMm');
    expect(exact(2001.1).residualXMm).toBeCloseTo(5000, 3);
  });
  it('is not brought to unladen without its condition or a reading, and weighs what was read', () => {
    const { condition: _, ...unstated } = ticket('T-1', { front: 3000, rear: 2000 });
    for (const one of [unstated, ticket('T-1', { front: 5000 })]) {
      const found = figure(vehicle({ axles, bare }, { tickets: [one] }));
      expect(found).toMatchObject({ verified: false, normalised: {}, residual: {}, residualKg: 0, totalKg: 5000 });
      expect(found).not.toHaveProperty('normalisedKg');
    }
    expect(figure(vehicle({ axles, bare }, { tickets: [ticket('T-1', {}, { grossKg: 5100 })] })).totalKg).toBe(5100);
    expect(figure(vehicle({ axles, bare }, { tickets: [ticket('T-1', {})] })).totalKg).toBe(0);
    expect(figure(vehicle({}, { tickets: [ticket('T-1', {})] })).reason).toBe('no axles are on record');
  });
  it('has no prediction from a bare chassis that was not read at every axle', () => {
    const some = vehicle({ axles, bare: bareOf({ front: 3000 }) }, { tickets: [ticket('T-1', { front: 3000, rear: 2000 })] });
    expect(figure(some)).toMatchObject({ predicted: {}, residual: {}, residualKg: 0, normalised: { front: 3000, rear: 2000 } });
    expect(figure(some)).not.toHaveProperty('residualUncertaintyKg');
  });
  it('leans to a side as predicted where ends were not read', () => {
    // Bare front axle 1,600 and 1,400 kg: 200,000 kg·mm to the left, a fifteenth of its load at half the track of 2,000 mm.
    const leaning = { ...bare, readings: { front: { totalKg: 3000, leftKg: 1600, rightKg: 1400 }, rear: { totalKg: 2000 } } };
    const model = (front: object) =>
      vehicle(
        { axles, bare: leaning },
        {
          tickets: [
            {
              ...ticket('T-1', {}),
              readings: { front, rear: { totalKg: 2000 } } as Model['shell']['tickets'][number]['readings'],
            },
          ],
        },
      );
    const ends = (front: object) => {
      const found = weights(model(front), takeOffOf()).conditions.find((one) => one.name === 'unladen')?.axles[0];
      return [found?.leftKg, found?.rightKg];
    };
    expect(ends({ totalKg: 3000 })).toEqual([expect.closeTo(1600, 6), expect.closeTo(1400, 6)]);
    expect(ends({ totalKg: 3000, leftKg: 1450, rightKg: 1550 })).toEqual([expect.closeTo(1450, 6), expect.closeTo(1550, 6)]);
  });
});

describe('the newest ticket', () => {
  const axles = twoAxles();
  const at = (id: string, date: string, stage?: string) =>
    ticket(id, { front: 4000, rear: 6000 }, { date, ...(stage === undefined ? {} : { stage }) });
  it.each([
    ['of two stages the later', at('A', '2026-05-01', 'finished'), at('B', '2026-06-01', 'walls'), 'A'],
    ['of one stage the later date', at('A', '2026-06-01', 'walls'), at('B', '2026-05-01', 'walls'), 'A'],
    ['without a stage by date', at('A', '2026-06-01'), at('B', '2026-05-01', 'finished'), 'A'],
    ['without both by date', at('A', '2026-06-01'), at('B', '2026-05-01'), 'A'],
    ['of a stage that is not in the library by date', at('A', '2026-06-01', 'paint'), at('B', '2026-05-01', 'finished'), 'A'],
  ])('%s, in whichever order they are listed', (_name, one, other, newest) => {
    expect(weights(vehicle({ axles }, { tickets: [one, other] }), takeOffOf()).basisTicket).toBe(newest);
    expect(weights(vehicle({ axles }, { tickets: [other, one] }), takeOffOf()).basisTicket).toBe(newest);
  });
  it('of one day is the one listed last', () => {
    const [one, other] = [at('A', '2026-06-01', 'walls'), at('B', '2026-06-01', 'walls')];
    expect(weights(vehicle({ axles }, { tickets: [one, other] }), takeOffOf()).basisTicket).toBe('B');
  });
  it('has aboard what is dated that day, and not what came a day later', () => {
    const component = (date: string) => ({
      ...record('C'),
      date,
      name: 'C',
      massKg: 50,
      at: [0, 0, 0] as const,
      basis: 'weighed' as const,
    });
    const added = (date: string, weighed = '2026-06-01') =>
      figure(vehicle({ axles }, { tickets: [at('A', weighed)], components: [component(date)] }), [item('C', 50, 0)]).addedSinceKg;
    expect(['2026-05-31', '2026-06-01', '2026-06-01T15:00', '2026-06-02'].map((date) => added(date))).toEqual([0, 0, 0, 50]);
    expect(added('2026-06-01', '2026-06-01T07:00')).toBe(0);
  });
});
