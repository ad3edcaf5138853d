import { describe, expect, it } from 'vitest';
import { gasDrop } from '../../../src/compute/verdicts/gas-drop.js';
import { judgeTest } from '../../../src/compute/verdicts/verdict.js';
import type { Instrument, Run, Test } from '../../../src/records/index.js';
import { failed } from '../../../src/rules/test/failed.js';
import { testNotVerified } from '../../../src/rules/test/not-verified.js';
import { buildModel, record } from '../../support/build.js';
import { judgeOne } from '../judge-one.js';

// FLU-06: 1 psi = 6894.757293168 Pa
const psi = (value: number) => ({ value: value * 6894.757293168, dimension: 'pressure', text: `${value} psi` });
const mohm = (value: number) => ({ value: value * 1e6, dimension: 'resistance', text: `${value} Mohm` });

const gauge: Instrument = {
  ...record('PG-1'),
  instrumentKind: 'pressure gauge',
  resolution: psi(0.1),
  calibrated: '2026-01-20',
  due: '2027-01-20',
};
const coarse: Instrument = { ...gauge, ...record('PG-200'), resolution: psi(2) };
const meter: Instrument = { ...gauge, ...record('IR-1'), resolution: mohm(0.1) };
const gasLine: Run = {
  ...record('GAS-1'),
  service: 'lpg',
  medium: 'gas',
  from: 'A',
  to: 'B',
  via: [],
  path: [],
  zones: [],
  grommets: [],
};

const test = (given: Partial<Test>): Test => ({
  ...record('TS-1'),
  testKind: 'drop',
  of: ['GAS-1'],
  instrument: 'PG-1',
  date: '2026-04-09',
  startTemperatureK: 293.15,
  endTemperatureK: 293.15,
  ...given,
});
const model = (...tests: readonly Test[]) =>
  buildModel({ runs: [gasLine], tests }, { instruments: new Map([gauge, coarse, meter].map((one) => [one.id, one])) });
const verdictOf = (one: Test) => judgeTest(one, model(one));

describe('gasDrop', () => {
  it('is the plain difference at one temperature', () => {
    expect(gasDrop(20_000, 19_000, 293.15, 293.15)).toBeCloseTo(1000, 6);
  });

  it('takes the law of Gay-Lussac out: 3 psi from 20 °C to 15 °C falls by 0.302 psi with no leak', () => {
    // Ideal gas at constant volume: (3 + 14.6959) psi × 5 K / 293.15 K = 0.30183 psi; computed
    const end = (3 + 14.6959487755) * (288.15 / 293.15) - 14.6959487755;
    expect(3 - end).toBeCloseTo(0.30183, 4);
    expect(gasDrop(psi(3).value, psi(end).value, 293.15, 288.15)).toBeCloseTo(0, 3);
  });
});

describe('a gas drop test with no loss allowed', () => {
  // WIR-71: not less than 3 psi for 10 min with no drop, 24 CFR 3280.705(k)(1) (from memory)
  const held = test({ limit: psi(0), start: psi(3), end: psi(3) });

  it('passes where the gauge shows none', () => {
    expect(verdictOf(held).verdict).toBe('passed');
  });

  it('fails where it shows some', () => {
    expect(verdictOf({ ...held, end: psi(2.7) }).verdict).toBe('failed');
  });

  it('does not pass with a gauge that could not have shown it', () => {
    expect(verdictOf({ ...held, instrument: 'PG-200' })).toMatchObject({ verdict: 'not verified' });
  });

  it('does not pass without temperatures, with one that moved, or without an instrument', () => {
    const { startTemperatureK: _start, ...cold } = held;
    expect(verdictOf(cold).reason).toContain('temperature');
    expect(verdictOf({ ...held, endTemperatureK: 299.15 }).reason).toContain('not settled');
    const { instrument: _instrument, ...bare } = held;
    expect(verdictOf(bare).reason).toContain('no instrument');
  });

  it('does not pass past the calibration date', () => {
    expect(verdictOf({ ...held, date: '2027-01-21' })).toMatchObject({ verdict: 'not verified', lapsed: true });
    expect(verdictOf({ ...held, date: '2027-01-20' }).verdict).toBe('passed');
    expect(verdictOf({ ...held, date: '2026-01-19' })).toMatchObject({ verdict: 'not verified', lapsed: true });
  });
});

describe('an insulation test', () => {
  const good = test({ testKind: 'insulation', of: ['AC-1'], limit: mohm(1), measured: mohm(12), instrument: 'IR-1' });

  it('must reach its limit', () => {
    expect(verdictOf(good)).toMatchObject({ verdict: 'passed', atLeast: true });
    expect(verdictOf({ ...good, measured: mohm(0.4) }).verdict).toBe('failed');
  });

  it('is not verified without value, without limit, or with a limit of another kind', () => {
    const { measured: _measured, ...noValue } = good;
    const { limit: _limit, ...noLimit } = good;
    expect(verdictOf(noValue).verdict).toBe('not verified');
    expect(verdictOf(noLimit).verdict).toBe('not verified');
    expect(verdictOf({ ...good, limit: psi(3) }).reason).toContain('pressure');
  });
});

describe('test.failed and test.not-verified', () => {
  const leak = test({ limit: psi(0), start: psi(3), end: psi(2) });
  const retest: Test = { ...leak, ...record('TS-2'), end: psi(3), date: '2026-04-11' };

  it('blames the value that was read', () => {
    const [finding] = judgeOne(failed, model(leak));
    expect(finding).toMatchObject({ severity: 'error', ids: ['TS-1', 'GAS-1'] });
    expect(finding?.message).toContain('3 psi to 2 psi');
  });

  it('becomes a note once a later test of the same passes', () => {
    expect(judgeOne(failed, model(leak, retest))).toMatchObject([{ severity: 'note', ids: ['TS-1', 'GAS-1', 'TS-2'] }]);
  });

  it('does not take an earlier pass for an answer', () => {
    expect(judgeOne(failed, model({ ...retest, date: '2026-04-01' }, leak))[0]?.severity).toBe('error');
  });

  it('warns of weak evidence, but leaves a lapsed calibration to its own rule', () => {
    expect(judgeOne(testNotVerified, model({ ...leak, end: psi(3), instrument: 'PG-200' }))[0]?.severity).toBe('warning');
    expect(judgeOne(testNotVerified, model({ ...leak, end: psi(3), date: '2028-01-01' }))).toEqual([]);
  });
});
