import { describe, expect, it } from 'vitest';
import { calibrationLapse } from '../../../src/compute/verdicts/calibration.js';
import { judgeTest } from '../../../src/compute/verdicts/verdict.js';
import type { Instrument, Test } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';
import { circuit, node, run } from '../../support/services.js';

const quantity = (dimension: string, value: number) => ({ value, dimension, text: `${value} ${dimension}` });
const kPa = (value: number) => quantity('pressure', value * 1000);
const gauge: Instrument = {
  ...record('PG'),
  instrumentKind: 'gauge',
  resolution: kPa(1),
  calibrated: '2026-01-20',
  due: '2027-01-20',
};
const [a, b] = [node('A', [0, 0, 0]), node('B', [1000, 0, 0])];
const PLACES = {
  circuits: [circuit('C-air', { medium: 'air' }), circuit('C-water', { medium: 'water' })],
  nodes: [a, b, node('N-gas', [0, 0, 0], { medium: 'gas' })],
  runs: [run('R-water', a, b, [], { medium: 'water' }), run('R-gas', a, b, [], { medium: 'gas' })],
};

const judge = (given: Partial<Test>, instrument: Instrument = gauge) => {
  const test: Test = {
    ...record('T'),
    testKind: 'drop',
    of: ['R-water'],
    date: '2026-04-09',
    instrument: instrument.id,
    ...given,
  };
  return judgeTest(test, buildModel({ ...PLACES, tests: [test] }, { instruments: new Map([[instrument.id, instrument]]) }));
};

describe('what was read is compared with the limit', () => {
  it('to the last step of arithmetic and no further', () => {
    const limit = kPa(7);
    expect(judge({ limit, measured: kPa(7) }).verdict).toBe('passed');
    expect(judge({ limit, measured: kPa(7 * (1 + 1e-10)) }).verdict).toBe('passed');
    expect(judge({ limit, measured: kPa(7 * (1 + 1e-8)) }).verdict).toBe('failed');
    const held = { testKind: 'pressure', limit };
    expect(judge({ ...held, measured: kPa(7 * (1 - 1e-10)) }).verdict).toBe('passed');
    expect(judge({ ...held, measured: kPa(7 * (1 - 1e-8)) }).verdict).toBe('failed');
    // What two large readings leave of a small loss misses by the digits of the large ones.
    const lost = (more: number) => judge({ limit: kPa(1), start: kPa(1e4), end: kPa(1e4 - 1 - more) }).verdict;
    expect([lost(5e-6), lost(5e-5)]).toEqual(['passed', 'failed']);
  });

  it('and told, with its limit and what both are', () => {
    expect(judge({ limit: kPa(2), start: kPa(400), end: kPa(397) })).toEqual({
      id: 'T',
      atLeast: false,
      verdict: 'failed',
      reason: 'its value is past the limit',
      value: 3000,
      limit: 2000,
      dimension: 'pressure',
    });
    expect(judge({ limit: kPa(2), start: kPa(400), end: kPa(399) })).toEqual({
      id: 'T',
      atLeast: false,
      verdict: 'passed',
      value: 1000,
      limit: 2000,
      dimension: 'pressure',
    });
  });

  // Which way each kind counts: common practice, no source.
  it.each([
    ['insulation', true],
    ['dielectric withstand', true],
    ['coupon pull', true],
    ['torque', true],
    ['flow', true],
    ['pressure', true],
    ['pressure hold', true],
    ['drop', false],
    ['continuity', false],
    ['rain', false],
  ])('%s: more is better is %s', (testKind, atLeast) => {
    expect(judge({ testKind, limit: kPa(10), measured: kPa(20) })).toMatchObject({
      atLeast,
      verdict: atLeast ? 'passed' : 'failed',
    });
  });

  it.each(['insulation test', 'pressure drop', 'weld coupon pull', 'sound'])(
    '%s: no word of the list, so nobody can tell',
    (testKind) => {
      for (const measured of [kPa(5), kPa(20)]) {
        const told = judge({ testKind, limit: kPa(10), measured });
        expect(told.verdict).toBe('not verified');
        expect(told.reason).toMatch(/not in the list.*type `kind` from the list/u);
      }
      // What was lost must not pass its limit, whatever the kind.
      expect(judge({ testKind, limit: kPa(10), start: kPa(400), end: kPa(395) }).verdict).toBe('passed');
    },
  );

  it('a pressure test of two readings goes by what was lost', () => {
    expect(judge({ testKind: 'pressure', limit: kPa(10), start: kPa(400), end: kPa(395) })).toMatchObject({
      atLeast: false,
      value: 5000,
    });
  });
});

describe('no loss at all allowed', () => {
  it('two readings may be one step of the gauge apart, where the step is fine enough for the pressure', () => {
    const limit = kPa(0);
    // A twentieth of the test pressure: common practice, no source.
    expect(judge({ limit, start: kPa(20), end: kPa(19) }).verdict).toBe('passed');
    expect(judge({ limit, start: kPa(20), end: kPa(18.9) }).verdict).toBe('failed');
    expect(judge({ limit, start: kPa(19.9), end: kPa(19.9) })).toMatchObject({
      verdict: 'not verified',
      reason: 'PG shows steps of 1000 pressure, too coarse for this limit',
    });
  });

  it('a bare 0 as limit goes with any kind of value', () => {
    const limit = { value: 0, dimension: 'count', text: '0' };
    expect(judge({ limit, measured: kPa(0) }).verdict).toBe('passed');
    expect(judge({ limit, measured: kPa(1) }).verdict).toBe('failed');
    expect(judge({ limit: { ...limit, value: 1 }, measured: kPa(0) }).verdict).toBe('not verified');
  });

  it('a single reading above it is a loss, however coarse the gauge', () => {
    expect(judge({ limit: kPa(0), measured: kPa(0) }).verdict).toBe('passed');
    expect(judge({ limit: kPa(0), measured: kPa(0.5) }).verdict).toBe('failed');
    expect(judge({ limit: kPa(0), measured: kPa(0.5) }, { ...gauge, resolution: kPa(50) }).verdict).toBe('failed');
  });

  it('what must reach its limit gets no step for nothing', () => {
    expect(judge({ testKind: 'flow', limit: kPa(0), start: kPa(10), end: kPa(10.5) }).verdict).toBe('failed');
  });
});

describe('a line filled with gas or air', () => {
  const drop = { limit: kPa(1), start: kPa(400), end: kPa(400) };
  it.each([
    ['R-water', 'passed'],
    ['C-water', 'passed'],
    ['R-gas', 'not verified'],
    ['C-air', 'not verified'],
    ['N-gas', 'not verified'],
  ])('%s without temperatures is %s', (of, verdict) => {
    expect(judge({ ...drop, of: [of] }).verdict).toBe(verdict);
    expect(judge({ ...drop, of: [of], startTemperatureK: 293 }).verdict).toBe(verdict);
  });

  it('has settled where its temperature moved by no more than 5 K', () => {
    const at = (endTemperatureK: number) =>
      judge({ ...drop, limit: kPa(20), of: ['R-gas'], startTemperatureK: 300, endTemperatureK });
    expect(at(305).reason).toBeUndefined();
    expect(at(295).verdict).toBe('passed');
    expect(at(305.25).reason).toBe('the temperature moved by 5.3 K: it had not settled');
    expect(at(294.75).reason).toBe('the temperature moved by 5.3 K: it had not settled');
  });

  it('needs no temperature for what is no pressure', () => {
    const ohm = (value: number) => quantity('resistance', value);
    expect(judge({ of: ['R-gas'], limit: ohm(2), start: ohm(3), end: ohm(1) }).verdict).toBe('passed');
  });
});

describe('the instrument', () => {
  const good = { limit: kPa(5), measured: kPa(2) };
  it('may have steps as large as the limit, and no larger', () => {
    expect(judge({ ...good, limit: kPa(2) }, { ...gauge, resolution: kPa(2) }).verdict).toBe('passed');
    expect(judge({ ...good, limit: kPa(2) }, { ...gauge, resolution: kPa(2.01) }).verdict).toBe('not verified');
    // Steps of another kind say nothing of this value, and steps not on record cannot be held against it.
    expect(judge(good, { ...gauge, resolution: quantity('voltage', 1e9) }).verdict).toBe('passed');
    expect(judge(good, { ...record('PG'), instrumentKind: 'gauge', due: '2027-01-20' }).verdict).toBe('passed');
  });

  it.each([
    [{}, '2026-04-09', undefined],
    [{}, '2026-01-20', undefined],
    [{}, '2027-01-20', undefined],
    // The due day counts whole.
    [{}, '2027-01-20T10:00', undefined],
    [{}, '2026-01-20T10:00', undefined],
    [{}, undefined, undefined],
    [{}, '2027-01-21', 'PG was due for calibration on 2027-01-20'],
    [{}, '2026-01-19', 'PG was calibrated on 2026-01-20, after this use'],
    [{ due: undefined }, '2026-04-09', 'PG has no calibration due date'],
    [{ calibrated: undefined }, '2020-01-01', undefined],
  ] as const)('with %o, on %s', (changed, date, lapse) => {
    const instrument = { ...gauge, ...changed } as Instrument;
    expect(calibrationLapse(instrument, date)).toBe(lapse);
    if (date === undefined) return;
    const found = judge({ ...good, date }, instrument);
    expect(found.verdict).toBe(lapse === undefined ? 'passed' : 'not verified');
    expect(found.reason).toBe(lapse);
    expect(found.lapsed).toBe(lapse === undefined ? undefined : true);
  });

  it('proves nothing of a test without a date, its calibration on record or not', () => {
    const reason = 'it has no date to set against the calibration of PG';
    for (const instrument of [gauge, { ...record('PG'), instrumentKind: 'gauge' }]) {
      expect(judge({ ...good, date: undefined }, instrument)).toMatchObject({ verdict: 'not verified', reason });
    }
  });

  it.each([
    ['pressure', true],
    ['resistance', true],
    ['voltage', true],
    ['current', true],
    ['torque', true],
    ['force', true],
    ['time', false],
    ['count', false],
  ])('is needed for %s: %s', (dimension, needed) => {
    const found = judge({ instrument: undefined, limit: quantity(dimension, 5), measured: quantity(dimension, 2) });
    expect(found.verdict).toBe(needed ? 'not verified' : 'passed');
  });
});

describe('what cannot be judged says why', () => {
  const start = kPa(400);
  it.each<[string, Partial<Test>, string]>([
    ['nothing', { of: [], limit: kPa(1), measured: kPa(1) }, 'its `of` names nothing'],
    ['one reading of two', { limit: kPa(1), start }, 'it has no `measured` value, nor `start` and `end`'],
    ['the other of two', { limit: kPa(1), end: start }, 'it has no `measured` value, nor `start` and `end`'],
    ['no limit', { measured: kPa(1) }, 'it has no `limit` to be judged by'],
    [
      'two kinds of reading',
      { limit: kPa(1), start, end: quantity('force', 2) },
      '`400000 pressure` and `2 force` are not the same kind of value',
    ],
    [
      'a limit of another kind',
      { limit: quantity('force', 2), measured: kPa(1) },
      'its limit `2 force` is a force, its value a pressure',
    ],
  ])('%s', (_name, given, reason) => {
    expect(judge(given)).toEqual({ id: 'T', atLeast: false, verdict: 'not verified', reason });
  });
});
