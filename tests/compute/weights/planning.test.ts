import { describe, expect, it } from 'vitest';
import { heightOf } from '../../../src/compute/weights/cg-height.js';
import { weights } from '../../../src/compute/weights/index.js';
import type { Instrument } from '../../../src/model/library.js';
import { record } from '../../support/build.js';
import { item, readings, scaleSC1, tagCoach, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

describe('influence lines', () => {
  const model = vehicle({ axles: tagCoach() }, { tanks: [tank('TAIL', 'water', 10, 9900)] });
  const { influence } = weights(model, takeOffOf([item('A', 10, -700)]));
  it('run from the foremost to the rearmost thing on record', () => {
    expect([influence[0]?.xMm, influence.at(-1)?.xMm]).toEqual([-1000, 10000]);
  });
  it('stay a short table where a station was typed in the wrong unit', () => {
    const far = weights(model, takeOffOf([item('A', 10, 1e9)])).influence;
    expect(far.length).toBeLessThan(210);
    expect(far.at(-1)?.xMm).toBeGreaterThanOrEqual(1e9);
  });
  it('are 100 kg on the axle itself at its own place, and add to 100 kg anywhere', () => {
    expect(influence.find((one) => one.xMm === 0)?.addsKg).toEqual({ steer: 100, drive: 0, tag: 0 });
    for (const { addsKg } of influence) expect(Object.values(addsKg).reduce((a, b) => a + b, 0)).toBeCloseTo(100, 9);
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
    expect(budget.map((one) => one.leftEndKg)).toEqual(left.map((kg) => expect.closeTo(kg / 2, 6)));
    expect(budget.map((one) => one.rightEndKg)).toEqual(left.map((kg) => expect.closeTo(kg / 2, 6)));
  });
  it('and 5 % once it has been weighed finished', () => {
    const finished = { ...shell, tickets: [ticket('T-1', { front: 5000, rear: 6000 }, { stage: 'finished' })] };
    expect(weights(vehicle({ axles }, finished), takeOffOf()).budget[0]).toMatchObject({ reserveKg: 350 });
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
  it('never serves as a weighing of the vehicle', () => {
    expect(heights(5)).toMatchObject({ basisTicket: 'T-1', tickets: [{ id: 'T-1' }] });
  });
});
