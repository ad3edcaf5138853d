import { describe, expect, it } from 'vitest';
import { judgeTest } from '../../../src/compute/verdicts/verdict.js';
import { anyQuantity } from '../../../src/records/form/plain-fields.js';
import type { Quantity, Test } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';

const quantity = (text: string): Quantity => {
  const read = anyQuantity(text, ({ expected }) => {
    throw new Error(expected);
  });
  return read as Quantity;
};
const instrument = (id: string, resolution: string) => ({
  ...record(id),
  instrumentKind: 'meter',
  resolution: quantity(resolution),
  calibrated: '2026-01-20',
  due: '2027-01-20',
});
const instruments = new Map(
  [instrument('PG', '1 psi'), instrument('DM', '0.01 ohm'), instrument('IR', '0.1 Mohm'), instrument('VM', '0.1 V')].map(
    (one) => [one.id, one],
  ),
);

/** Kind, instrument, then what was read: `limit` and `measured`, or `limit`, `start` and `end`. */
const verdict = (testKind: string, using: string | undefined, limit: string, ...read: readonly string[]) => {
  const [first = '', second] = read;
  const values = second === undefined ? { measured: quantity(first) } : { start: quantity(first), end: quantity(second) };
  const test: Test = {
    ...record('T'),
    testKind,
    of: ['X'],
    date: '2026-04-09',
    limit: quantity(limit),
    instrument: using,
    ...values,
  };
  return judgeTest(test, buildModel({ tests: [test] }, { instruments })).verdict;
};

describe('each kind of test is judged by its values', () => {
  // The limits are those of the record. R14, R16 and R17 give the trade's; which way each counts is common practice, no source.
  it.each([
    ['pressure, held', 'pressure', 'PG', '60 psi', ['60 psi'], ['59 psi']],
    ['pressure, by what was lost', 'pressure hold', 'PG', '1 psi', ['60 psi', '59 psi'], ['60 psi', '58 psi']],
    ['drop', 'drop', 'PG', '1 psi', ['100 psi', '100 psi'], ['100 psi', '91 psi']],
    ['drop, as one value', 'drop', 'PG', '2 psi', ['1 psi'], ['3 psi']],
    ['continuity', 'continuity', 'DM', '0.1 ohm', ['0.03 ohm'], ['0.2 ohm']],
    ['insulation', 'insulation', 'IR', '1 Mohm', ['12 Mohm'], ['0.4 Mohm']],
    ['dielectric strength', 'dielectric withstand', 'VM', '900 V', ['900 V'], ['600 V']],
    ['polarity: outlets the wrong way round', 'polarity', undefined, '0', ['0'], ['1']],
    ['rain: drips', 'rain', undefined, '0', ['0'], ['2']],
    ['function: time taken', 'function', undefined, '40 s', ['31 s'], ['55 s']],
  ] as const)('%s', (_name, kind, using, limit, good, bad) => {
    expect(verdict(kind, using, limit, ...good)).toBe('passed');
    expect(verdict(kind, using, limit, ...bad)).toBe('failed');
  });

  it.each([
    ['pressure', '3 psi', '3 psi', 'PG', 'passed'],
    // A step of 1 psi cannot show a limit of 0.5 psi.
    ['pressure drop', '0.5 psi', '0 psi', 'PG', 'not verified'],
    ['continuity', '0.005 ohm', '0 ohm', 'DM', 'not verified'],
    ['insulation', '0.05 Mohm', '2 Mohm', 'IR', 'not verified'],
    ['continuity', '0.1 ohm', '0.03 ohm', undefined, 'not verified'],
    ['continuity', '0.1 ohm', '0.03 ohm', 'lent', 'not verified'],
    // Not even without an instrument is a plain failure excused.
    ['continuity', '0.1 ohm', '5 ohm', undefined, 'failed'],
  ] as const)('resolution against limit: %s of %s read as %s with %s is %s', (kind, limit, measured, using, expected) => {
    expect(verdict(kind, using, limit, measured)).toBe(expected);
  });

  it('a test without a date cannot be set against its instrument’s calibration', () => {
    const test: Test = {
      ...record('T'),
      testKind: 'continuity',
      of: ['X'],
      limit: quantity('0.1 ohm'),
      measured: quantity('0.03 ohm'),
      instrument: 'DM',
    };
    expect(judgeTest(test, buildModel({}, { instruments })).reason).toContain('no date');
    expect(judgeTest({ ...test, date: '2026-04-09' }, buildModel({}, { instruments })).verdict).toBe('passed');
  });

  it('a test of nothing, or of two kinds of value, shows nothing', () => {
    const test: Test = { ...record('T'), testKind: 'rain', of: [], limit: quantity('0'), measured: quantity('0') };
    expect(judgeTest(test, buildModel())).toMatchObject({ verdict: 'not verified', reason: 'its `of` names nothing' });
    expect(verdict('drop', 'PG', '1 psi', '100 psi', '3 ohm')).toBe('not verified');
    expect(verdict('continuity', 'DM', '1 V', '0.1 ohm')).toBe('not verified');
  });
});
