import { describe, expect, it } from 'vitest';
import type { Medium, Test } from '../../../src/records/index.js';
import { missing } from '../../../src/rules/test/missing.js';
import { buildModel, record } from '../../support/build.js';
import { circuit, node, run } from '../../support/services.js';
import { judgeOne } from '../judge-one.js';

// FLU-06: 1 psi = 6894.757293168 Pa
const psi = (value: number) => ({ value: value * 6894.757293168, dimension: 'pressure', text: `${value} psi` });
const mohm = (value: number) => ({ value: value * 1e6, dimension: 'resistance', text: `${value} Mohm` });
const library = {
  instruments: new Map(
    [
      { ...record('PG'), instrumentKind: 'gauge', resolution: psi(0.1), calibrated: '2026-01-01', due: '2027-01-01' },
      { ...record('IR'), instrumentKind: 'meter', resolution: mohm(0.1), calibrated: '2026-01-01', due: '2027-01-01' },
    ].map((one) => [one.id, one]),
  ),
};

function found(medium: Medium, tests: readonly Partial<Test>[], bonding = false) {
  const [a, b] = [node('A', [0, 0, 0], { medium }), node('B', [1, 0, 0], { medium })];
  const shell = {
    circuits: [circuit('C', { medium, bonding })],
    nodes: [a, b],
    runs: [run('C/1', a, b, [], { circuit: 'C' })],
    tests: tests.map((one, i): Test => ({ ...record(`TS-${i}`), testKind: 'drop', of: ['C'], date: '2026-03-01', ...one })),
  };
  return judgeOne(missing, buildModel(shell, library)).map((finding) => finding.ids);
}

describe('test.missing', () => {
  const drop = { limit: psi(0), start: psi(3), end: psi(3), durationS: 600, instrument: 'PG' };
  const settled = { startTemperatureK: 290, endTemperatureK: 290 };

  it('WIR-71 (from memory): gas wants 3 psi for 10 min, passed', () => {
    expect(found('gas', [])).toEqual([['C']]);
    expect(found('gas', [{ ...drop, ...settled }])).toEqual([]);
    expect(found('gas', [{ ...drop, ...settled, of: ['C/1'] }])).toEqual([]);
    expect(found('gas', [{ ...drop, ...settled, start: psi(2.5), end: psi(2.5) }])).toEqual([['C', 'TS-0']]);
    expect(found('gas', [{ ...drop, ...settled, durationS: 540 }])).toEqual([['C', 'TS-0']]);
    expect(found('gas', [{ ...drop, ...settled, end: psi(2) }])).toEqual([['C', 'TS-0']]);
  });

  it('water wants 15 min under pressure, mains an insulation test; low voltage and bonds nothing', () => {
    const water = { limit: psi(1), start: psi(50), end: psi(50), instrument: 'PG' };
    expect(found('water', [{ ...water, durationS: 900 }])).toEqual([]);
    expect(found('water', [{ ...water, durationS: 600 }])).toEqual([['C', 'TS-0']]);
    const insulation = { testKind: 'insulation', limit: mohm(1), measured: mohm(40), instrument: 'IR' };
    expect(found('ac', [insulation])).toEqual([]);
    expect(found('ac', [{ ...insulation, testKind: 'continuity' }])).toEqual([['C', 'TS-0']]);
    expect(found('ac', [], true)).toEqual([]);
    expect(found('dc', [])).toEqual([]);
  });
});
