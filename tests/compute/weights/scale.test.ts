import { describe, expect, it } from 'vitest';
import { calibrationLapse } from '../../../src/compute/verdicts/calibration.js';
import { weights } from '../../../src/compute/weights/index.js';
import { scaleUncertainty, uOfReading } from '../../../src/compute/weights/scale.js';
import type { Model } from '../../../src/model/shell.js';
import type { Condition, Instrument } from '../../../src/records/index.js';
import { condition, item, scaleSC1, seat, tagCoach, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

const figure = (model: Model) => weights(model, takeOffOf()).tickets[0]!;

describe('uncertainty of a ticket', () => {
  const axles = twoAxles();
  const u = (one: Parameters<typeof figure>[0]) => figure(one).uncertaintyKg;
  it('scale steps and tolerance', () => {
    const model = vehicle({ axles }, { tickets: [ticket('T-1', { front: 4000, rear: 6000 }, { scale: 'SC-1' })] });
    // Two steps of 10 kg: 2.887·√2 = 4.082; 0.2 % of 10,000 kg as a rectangle: 11.547; RSS 12.247; k = 2.
    expect(scaleSC1.resolution.value).toBe(10);
    expect(u(model)).toBeCloseTo(24.495, 3);
  });
  it('a part-full tank adds ± 5 % of its capacity, a full one ± 2 %, an empty one nothing', () => {
    const tanks = [tank('FUEL', 'diesel', 400, 1500)];
    const at = (level: number) =>
      vehicle(
        { axles },
        {
          tanks,
          tickets: [
            ticket('T-1', { front: 4000, rear: 6000 }, { scale: 'SC-1', condition: condition({ levels: { FUEL: level } }) }),
          ],
        },
      );
    expect(u(at(0))).toBeCloseTo(24.495, 3);
    // 8 kg as a rectangle: 4.619; with the scale's 12.247: 13.089; k = 2.
    expect(u(at(1))).toBeCloseTo(26.179, 3);
    // 20 kg as a rectangle: 11.547; with the scale's 12.247: 16.833; k = 2.
    expect(u(at(0.5))).toBeCloseTo(33.665, 3);
  });
  it('two pads of one axle are two steps, in the same tolerance', () => {
    const pads = { front: { totalKg: 4000, leftKg: 2000, rightKg: 2000 }, rear: { totalKg: 6000, leftKg: 3000, rightKg: 3000 } };
    const model = vehicle({ axles }, { tickets: [{ ...ticket('T-1', {}, { scale: 'SC-1' }), readings: pads }] });
    // Four steps of 10 kg: 2.887·2 = 5.774; 11.547 of tolerance; RSS 12.910; k = 2.
    expect(u(model)).toBeCloseTo(25.82, 2);
  });
  it('one pad that was noted is one step', () => {
    for (const end of [{ leftKg: 2000 }, { rightKg: 2000 }]) {
      const some = { front: { totalKg: 4000, ...end }, rear: { totalKg: 6000, ...end } };
      expect(u(vehicle({ axles }, { tickets: [{ ...ticket('T-1', {}, { scale: 'SC-1' }), readings: some }] }))).toBeCloseTo(
        24.495,
        3,
      );
    }
  });
  it('a tank stated full by the shop is full, one read off a gauge on the day is not quite', () => {
    const of = (level: number) =>
      weights(
        vehicle(
          { axles },
          {
            tanks: [tank('FRESH', 'water', 400, 0)],
            conditions: [{ name: 'ours', condition: condition({ levels: { FRESH: level } }) }],
            tickets: [ticket('T-1', { front: 4000, rear: 6000 }, { scale: 'SC-1' })],
          },
        ),
        takeOffOf(),
      ).conditions.find((one) => one.name === 'ours')?.uncertaintyKg;
    expect(of(1)).toBeCloseTo(24.495, 3);
    expect(of(0)).toBeCloseTo(24.495, 3);
    // 20 kg as a rectangle: 11.547; with the scale's 12.247: 16.833; k = 2.
    expect(of(0.5)).toBeCloseTo(33.665, 3);
  });
  it('an occupant counted at 68 kg adds ± 20 kg, one who was weighed nothing', () => {
    const aboard = (massKg: number) =>
      vehicle(
        { axles },
        {
          seats: [seat('driver', 0)],
          tickets: [
            ticket(
              'T-1',
              { front: 4000, rear: 6000 },
              {
                scale: 'SC-1',
                condition: condition({ levels: { FUEL: 1 }, occupants: [{ seat: 'driver', massKg }] }),
              },
            ),
          ],
        },
      );
    // 20 kg as a rectangle: 11.547; with the scale's 12.247: 16.833; k = 2.
    expect(u(aboard(68))).toBeCloseTo(33.665, 3);
    expect(u(aboard(80))).toBeCloseTo(24.495, 3);
  });
  it('a thing aboard adds ± 10 % of its mass, a missing one what is not known of it', () => {
    const with_ = (more: Partial<Condition>) =>
      weights(
        vehicle(
          { axles },
          {
            tickets: [
              ticket(
                'T-1',
                { front: 4000, rear: 6000 },
                {
                  scale: 'SC-1',
                  condition: condition({ levels: { FUEL: 1 }, ...more }),
                },
              ),
            ],
          },
        ),
        takeOffOf([item('A', 300, 0, { uMassKg: 15 })]),
      ).tickets[0]?.uncertaintyKg;
    // 20 kg as a rectangle: 11.547; with the scale's 12.247: 16.833; k = 2.
    expect(with_({ aboard: [{ name: 'crate', massKg: 200, at: [0, 0, 0] }] })).toBeCloseTo(33.665, 3);
    // 15 kg with the scale's 12.247: 19.365; k = 2.
    expect(with_({ missing: ['A'] })).toBeCloseTo(38.73, 2);
    expect(with_({ missing: ['of no record'], occupants: [{ seat: 'of none', massKg: 68 }] })).toBeCloseTo(24.495, 3);
  });
  it('a scale’s steps fall anew at each axle, its tolerance is one error on all', () => {
    const model = vehicle({ axles }, { tickets: [ticket('T-1', { front: 4000, rear: 6000 }, { scale: 'SC-1' })] });
    const unladen = weights(model, takeOffOf()).conditions.find((one) => one.name === 'unladen');
    const step = 10 / (2 * Math.sqrt(3));
    const each = (kg: number) => 2 * Math.hypot(step, (0.002 * kg) / Math.sqrt(3));
    expect(unladen?.axles.map((one) => one.uncertaintyKg)).toEqual([
      expect.closeTo(each(4000), 6),
      expect.closeTo(each(6000), 6),
    ]);
  });
  it('with an axle up is handed down with the loads', () => {
    // 14,000 kg with the tag up is the total, whichever way it stands: two steps and 0.2 % of the whole.
    const one = ticket(
      'T-1',
      { steer: 4433, drive: 9567 },
      {
        scale: 'SC-1',
        condition: condition({ levels: { FUEL: 1 }, lifted: { tag: 'up' } }),
      },
    );
    expect(u(vehicle({ axles: tagCoach() }, { tickets: [one] }))).toBeCloseTo(
      2 * Math.hypot((10 * Math.SQRT2) / (2 * Math.sqrt(3)), 28 / Math.sqrt(3)),
      6,
    );
    const tag = weights(vehicle({ axles: tagCoach() }, { tickets: [one] }), takeOffOf()).conditions.find(
      (each) => each.name === 'unladen',
    )?.axles[2];
    expect(tag?.uncertaintyKg).toBeGreaterThan(1);
  });
});

describe('what a scale’s record says', () => {
  const { resolution, tolerance, ...bare } = scaleSC1;
  it('and what it does not is that of an unknown scale, 50 kg and 0.5 %', () => {
    // common practice, no source
    expect(scaleUncertainty(bare)).toEqual({ resolutionKg: 50, relative: 0.005, absoluteKg: 0 });
    expect(scaleUncertainty({ ...bare, resolution })).toEqual({ resolutionKg: 10, relative: 0.005, absoluteKg: 0 });
    expect(scaleUncertainty({ ...bare, tolerance })).toEqual({ resolutionKg: 50, relative: 0.002, absoluteKg: 0 });
    const other = { value: 3, dimension: 'length', text: '3 mm' };
    expect(scaleUncertainty({ ...bare, resolution: other, tolerance: other })).toEqual(scaleUncertainty(bare));
  });
  it('a tolerance in kilograms is the same at any load, and goes with each axle that was read', () => {
    const doubt = scaleUncertainty({ ...bare, resolution, tolerance: { value: 18, dimension: 'mass', text: '18 kg' } });
    expect(doubt).toEqual({ resolutionKg: 10, relative: 0, absoluteKg: 18 });
    // 10 kg step: 2.887; 18 kg as a rectangle: 10.392; together 10.786.
    expect([uOfReading(0, doubt), uOfReading(9000, doubt)]).toEqual([expect.closeTo(10.786, 3), expect.closeTo(10.786, 3)]);
    const model = vehicle({ axles: twoAxles() }, { tickets: [ticket('T-1', { front: 4000, rear: 6000 }, { scale: 'SC-1' })] });
    const heavy: Instrument = {
      ...scaleSC1,
      resolution: { value: 0, dimension: 'mass', text: '0' },
      tolerance: { value: 18, dimension: 'mass', text: '18 kg' },
    };
    const found = figure({ ...model, library: { ...model.library, instruments: new Map([[heavy.id, heavy]]) } });
    expect(found.uncertaintyKg).toBeCloseTo((2 * 36) / Math.sqrt(3), 6);
  });
  it('holds from the day of its calibration to the day it is due', () => {
    const lapse = (date: string) =>
      figure(vehicle({ axles: twoAxles() }, { tickets: [ticket('T-1', { front: 1, rear: 1 }, { scale: 'SC-1', date })] }))
        .calibrationLapse;
    expect(['2026-01-20', '2026-01-20T07:00', '2027-01-20', '2027-01-20T17:30'].map(lapse)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    const noon = { ...scaleSC1, calibrated: '2026-01-20T12:00', due: '2027-01-20T12:00' };
    for (const date of ['2026-01-20', '2027-01-20']) expect(calibrationLapse(noon, date)).toBeUndefined();
    expect(calibrationLapse(noon, '2027-01-21')).toContain('was due for calibration on');
    expect(lapse('2026-01-19')).toContain('calibrated on 2026-01-20');
    expect(lapse('2027-01-21')).toContain('due for calibration on 2027-01-20');
  });
});
