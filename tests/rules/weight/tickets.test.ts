import { describe, expect, it } from 'vitest';
import type { Ticket } from '../../../src/records/index.js';
import { endsDoNotAdd } from '../../../src/rules/weight/ends-do-not-add.js';
import { grossDiffers } from '../../../src/rules/weight/gross-differs.js';
import { groupApart } from '../../../src/rules/weight/group-apart.js';
import { weightRules } from '../../../src/rules/weight/index.js';
import { readingsDisagree } from '../../../src/rules/weight/readings-disagree.js';
import { relabel } from '../../../src/rules/weight/relabel.js';
import { scaleOutOfCalibration } from '../../../src/rules/weight/scale-out-of-calibration.js';
import { seatsOverCapacity } from '../../../src/rules/weight/seats-over-capacity.js';
import { singleWeighing } from '../../../src/rules/weight/single-weighing.js';
import { ticketBeforeStage } from '../../../src/rules/weight/ticket-before-stage.js';
import { ticketNotVerified } from '../../../src/rules/weight/ticket-not-verified.js';
import { ticketStale } from '../../../src/rules/weight/ticket-stale.js';
import { unexplained } from '../../../src/rules/weight/unexplained.js';
import {
  bareOf,
  condition,
  item,
  readings,
  scaleSC1,
  seat,
  tagCoach,
  tank,
  ticket,
  twoAxles,
  vehicle,
} from '../../compute/weights/support.js';
import { record } from '../../support/build.js';
import { judge, said } from './judge.js';

const good = ticket('T-1', { front: 5000, rear: 6000 }, { scale: 'SC-1', stage: 'finished' });
const weighed = (
  tickets: readonly Ticket[] = [good],
  shell: Parameters<typeof vehicle>[1] = {},
  chassis: Parameters<typeof vehicle>[0] = {},
) => vehicle({ axles: twoAxles(), gvwrKg: 18000, ...chassis }, { tickets, ...shell });
const { condition: _, ...unstated } = good;

describe('weight.ticket-not-verified', () => {
  it('warns without a condition or a fuel level', () => {
    expect(said(ticketNotVerified, weighed([unstated]))).toEqual([
      expect.stringContaining(
        'warning T-1: Ticket T-1 of 2026-06-30 is not verified: it does not say in what condition the vehicle was weighed. Write',
      ),
    ]);
    expect(judge(ticketNotVerified, weighed([{ ...good, condition: condition({ fuelKnown: false }) }]))).toHaveLength(1);
    expect(judge(ticketNotVerified, weighed())).toEqual([]);
  });
});

describe('weight.scale-out-of-calibration', () => {
  it('warns past the due date, and the ticket is told once', () => {
    const late = [{ ...good, date: '2027-02-01' }];
    expect(said(scaleOutOfCalibration, weighed(late))).toEqual([
      expect.stringContaining(
        'warning T-1: Ticket T-1 of 2027-02-01 was taken out of calibration: SC-1 was due for calibration on 2027-01-20',
      ),
    ]);
    expect(judge(ticketNotVerified, weighed(late))).toEqual([]);
  });
  it('passes on the due date itself', () =>
    expect(judge(scaleOutOfCalibration, weighed([{ ...good, date: '2027-01-20' }]))).toEqual([]));
  it('warns where the calibration of the scale is not on record: such a ticket proves no more than a test by such a gauge', () => {
    const { due: __, calibrated: ___, ...bare } = scaleSC1;
    const model = weighed();
    const unknown = { ...model, library: { ...model.library, instruments: new Map([[bare.id, bare]]) } };
    expect(judge(scaleOutOfCalibration, unknown)[0]).toMatchObject({ severity: 'warning', ids: ['T-1', 'SC-1'] });
  });
});

describe('readings of one ticket', () => {
  const front = (totalKg: number, leftKg: number, rightKg: number) => [
    { ...good, readings: { front: { totalKg, leftKg, rightKg }, rear: { totalKg: 6000 } } },
  ];
  it('weight.ends-do-not-add', () => {
    expect(said(endsDoNotAdd, weighed(front(5000, 2500, 2400)))).toEqual([
      expect.stringContaining(
        'warning T-1: Ticket T-1: ends of axle front add to 4,900 kg, expected 5,000 kg as read for the axle',
      ),
    ]);
    expect(judge(endsDoNotAdd, weighed(front(5000, 2500, 2495)))).toEqual([]);
  });
  it('weight.gross-differs', () => {
    expect(said(grossDiffers, weighed([{ ...good, grossKg: 11200 }]))).toEqual([
      expect.stringContaining('warning T-1: Ticket T-1: axles add to 11,000 kg, expected the gross of 11,200 kg within 1.0 %'),
    ]);
    expect(judge(grossDiffers, weighed([{ ...good, grossKg: 11050 }]))).toEqual([]);
  });
  it('weight.readings-disagree names those that do not fit, where no nearer rule tells it', () => {
    const pads = {
      front: { totalKg: 5000, leftKg: 2500, rightKg: 2495 },
      rear: { totalKg: 6000, leftKg: 3000, rightKg: 3005 },
    };
    expect(said(readingsDisagree, weighed([{ ...good, grossKg: 11100, readings: pads }]))).toEqual([
      expect.stringMatching(
        /^warning T-1: Readings of ticket T-1 do not agree, .*: gross read 11,100 kg, by the others 11,0\d\d kg\. Read/u,
      ),
    ]);
    // One gross beside two axles: any of the three may be the slip, and it is within the trade's 1 %.
    expect(judge(readingsDisagree, weighed([{ ...good, grossKg: 11060 }]))).toEqual([]);
    expect(judge(readingsDisagree, weighed([{ ...good, grossKg: 11200 }]))).toEqual([]);
    expect(judge(readingsDisagree, weighed(front(5000, 2500, 2400)))).toEqual([]);
    expect(judge(readingsDisagree, weighed([{ ...good, grossKg: 11005 }]))).toEqual([]);
  });
});

describe('weight.unexplained', () => {
  const at = (stage: string, front: number) => [ticket('T-1', { front, rear: 6000 }, { scale: 'SC-1', stage })];
  const bare = bareOf({ front: 5000, rear: 6000 });
  it('1 % of a finished vehicle, 3 % before', () => {
    expect(said(unexplained, weighed(at('finished', 5200), {}, { bare }))).toEqual([
      expect.stringContaining(
        'warning T-1: Ticket T-1 of 2026-06-30: 200 kg unexplained (1.8 % of 11,200 kg), centered 0 mm aft of the front axle, expected at most 1.0 %',
      ),
    ]);
    expect(judge(unexplained, weighed(at('walls', 5200), {}, { bare }))).toEqual([]);
    expect(judge(unexplained, weighed(at('walls', 5400), {}, { bare }))).toHaveLength(1);
    expect(judge(unexplained, weighed(at('finished', 5100), {}, { bare }))).toEqual([]);
  });
  it('says nothing without a prediction', () => expect(judge(unexplained, weighed(at('finished', 5200)))).toEqual([]));
});

describe('weight.ticket-stale', () => {
  it('mass put on since of more than 0.5 %', () => {
    const early = [{ ...good, stage: 'walls' }];
    const later = (massKg: number) => [item('A', massKg, 2500, { stage: 'finished' })];
    expect(said(ticketStale, weighed(early), later(60))).toEqual([
      'warning T-1: Ticket T-1 of 2026-06-30 is stale: 60 kg (0.5 %) was put on since, expected at most 0.5 % of 11,000 kg. Weigh again',
    ]);
    expect(judge(ticketStale, weighed(early), later(50))).toEqual([]);
  });
});

describe('weight.ticket-before-stage', () => {
  const component = (date: string) => ({
    ...record('A'),
    date,
    stage: 'finished',
    name: 'A',
    massKg: 10,
    at: [0, 0, 0] as const,
    basis: 'weighed' as const,
  });
  const fitted = [item('A', 10, 0, { stage: 'finished' })];
  it('things of that stage dated later', () => {
    expect(said(ticketBeforeStage, weighed([good], { components: [component('2026-07-03')] }), fitted)).toEqual([
      expect.stringContaining(
        'warning T-1: Ticket T-1 of 2026-06-30 is of stage finished, but A of that stage came later (2026-07-03)',
      ),
    ]);
    expect(judge(ticketBeforeStage, weighed([good], { components: [component('2026-06-30')] }), fitted)).toEqual([]);
  });
  it('but not work done after close-out', () => {
    const amendments = [{ ...record('AM-1'), date: '2026-07-03', reason: 'asked for', changes: ['A'], by: 'K7' }];
    expect(judge(ticketBeforeStage, weighed([good], { components: [component('2026-07-03')], amendments }), fitted)).toEqual([]);
  });
});

describe('weight.single-weighing', () => {
  it('notes a finished vehicle on one weighing', () => {
    expect(judge(singleWeighing, weighed())[0]).toMatchObject({ severity: 'note', ids: ['T-1'] });
    expect(judge(singleWeighing, weighed([{ ...good, grossKg: 11000 }]))).toEqual([]);
    expect(judge(singleWeighing, weighed([good, { ...good, id: 'T-2' }]))).toEqual([]);
    expect(judge(singleWeighing, weighed([{ ...good, stage: 'walls' }]))).toEqual([]);
  });
});

describe('weight.seats-over-capacity', () => {
  // OCCC 11,200 − 11,000 = 200 kg.
  const shell = (seats: number, litres = 0) => ({
    seats: Array.from({ length: seats }, (_unused, i) => seat(`S${i}`, 1000)),
    tanks: [tank('FRESH', 'water', litres, 3000)],
  });
  it('68 kg a belted seat against the capacity: an error; with full water: a warning', () => {
    // LAB-11: NHTSA letter 08-003469; LAB-06: 68 kg
    const gvwr = { gvwrKg: 11200 };
    expect(said(seatsOverCapacity, weighed([good], shell(3), gvwr))[0]).toContain(
      'error S0: 3 belted seats count 204 kg, expected at most the occupant and cargo capacity of 200 kg',
    );
    expect(said(seatsOverCapacity, weighed([good], shell(2, 100), gvwr))[0]).toContain(
      'warning S0: 2 belted seats count 136 kg and full fresh water of 100 kg',
    );
    expect(judge(seatsOverCapacity, weighed([good], shell(2, 60), gvwr))).toEqual([]);
  });
});

describe('weight.relabel', () => {
  const amendment = { ...record('A-1'), date: '2026-09-01', reason: 'rack', changes: ['RACK'], by: 'K7' };
  const added = (massKg: number) => [item('RACK', massKg, 3000)];
  it('over 100 lb of amendments', () => {
    // LAB-12, LAB-13: 571.120 S10.5
    expect(said(relabel, weighed([good], { amendments: [amendment] }), added(46))[0]).toContain(
      'warning A-1: Amendments changed RACK, 46 kg together, expected at most 45 kg',
    );
    expect(judge(relabel, weighed([good], { amendments: [amendment] }), added(45))).toEqual([]);
  });
  it('passes with a new label on record', () => {
    const declared = [{ ...record('LABEL-2'), declaredKind: 'label', by: 'J. Doe, P.E. 1', of: [], date: '2026-09-02' }];
    expect(judge(relabel, weighed([good], { amendments: [amendment], declared }), added(46))).toEqual([]);
  });
  it('follows a rule pack, and cites it', () => {
    const model = weighed([good], { amendments: [amendment] });
    const rule = {
      ...record('R'),
      rule: 'weight.relabel',
      limit: '1 % of GVWR or 30 kg',
      citation: 'the state’s own act',
      pack: 'state',
    };
    expect(said(relabel, { ...model, library: { ...model.library, rules: [rule] } }, added(40))[0]).toContain(
      'at most 30 kg without a new weight label (the state’s own act)',
    );
  });
});

describe('the list', () => {
  it('names each rule once, by its area, with a source', () => {
    const names = weightRules.map((rule) => rule.name);
    expect(new Set(names).size).toBe(names.length);
    for (const rule of weightRules) {
      expect(rule.name).toMatch(/^weight\.[a-z-]+$/u);
      expect(rule.source.length).toBeGreaterThan(10);
    }
  });
  it('finds nothing wrong with a coach that was weighed twice, well within everything', () => {
    const twice = [
      { ...good, grossKg: 11000, readings: readings({ front: 5000, rear: 6000 }) },
      { ...good, id: 'T-2' },
    ];
    const model = weighed(twice, { seats: [seat('driver', 1000)] }, { bare: bareOf({ front: 5000, rear: 6000 }) });
    expect(weightRules.flatMap((rule) => judge(rule, model))).toEqual([]);
  });
});

describe('weight.group-apart', () => {
  // R31: all wheels of an axle group level together; common practice, no source.
  const tagTicket = (together?: Ticket['together']): Ticket => ({
    ...ticket('T-1', { steer: 5000, drive: 6000, tag: 4000 }, { scale: 'SC-1', stage: 'finished' }),
    ...(together ? { together } : {}),
  });
  const onTag = (together?: Ticket['together']) =>
    vehicle({ axles: tagCoach(), gvwrKg: 20000 }, { tickets: [tagTicket(together)] });
  it('warns where axles that share load were weighed one at a time', () => {
    expect(said(groupApart, onTag('axle'))).toEqual([
      expect.stringContaining(
        'warning T-1: Ticket T-1 of 2026-06-30 was weighed one axle at a time though drive and tag share load',
      ),
    ]);
    expect(said(groupApart, onTag('wheel'))[0]).toContain('one wheel at a time');
  });
  it('notes a ticket that does not say', () => {
    expect(said(groupApart, onTag())).toEqual([expect.stringContaining('note T-1: Ticket T-1')]);
  });
  it('passes a group or the whole vehicle at once, and axles that share nothing', () => {
    expect(
      [onTag('group'), onTag('vehicle'), weighed([{ ...good, together: 'axle' }])].flatMap((one) => judge(groupApart, one)),
    ).toEqual([]);
  });
});
