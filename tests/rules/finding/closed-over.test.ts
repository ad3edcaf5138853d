import { describe, expect, it } from 'vitest';
import type { Nonconformance, Run, Zone } from '../../../src/records/index.js';
import { closedOver } from '../../../src/rules/finding/closed-over.js';
import { buildModel, record } from '../../support/build.js';
import { flatPanel } from '../../support/structure.js';
import { judgeOne } from '../judge-one.js';

const run: Run = {
  ...record('WC/1'),
  service: 'water',
  medium: 'water',
  circuit: 'WC',
  from: 'A',
  to: 'B',
  via: [],
  path: [],
  zones: ['LANE'],
  grommets: [],
};
const lane: Zone = {
  ...record('LANE'),
  name: 'left lane',
  box: [
    [0, -400, -50],
    [4000, 400, 100],
  ],
  concealed: true,
  closedBy: ['BP-1'],
  carries: [],
};
const raised: Nonconformance = {
  ...record('NC-1'),
  raised: '2026-04-01',
  of: ['WC/1'],
  rules: [],
  description: 'rubs',
  tellOwner: false,
};
const judged = (more: Partial<Nonconformance>, panelDay = '2026-04-10') =>
  judgeOne(
    closedOver,
    buildModel({
      runs: [run],
      zones: [lane],
      panels: [flatPanel('BP-1', 0, panelDay === 'off' ? {} : { date: panelDay })],
      findings: [{ ...raised, ...more }],
    }),
  ).map(({ ids, severity }) => [ids, severity]);

describe('finding.closed-over', () => {
  const told = [[['NC-1', 'WC/1'], 'error']];

  it('R44: nothing is closed in on an open finding', () => {
    // ISO 9001:2015 clause 8.7.1
    expect(judged({})).toEqual(told);
    expect(judged({ decision: 'rework', approvedBy: 'J5' })).toEqual(told);
    expect(judged({ closed: '2026-04-10' })).toEqual([]);
    expect(judged({ closed: '2026-04-11' })).toEqual(told);
  });

  it('is about the run by its id, its circuit or its cavity', () => {
    expect(judged({ of: ['WC'] })).toEqual(told);
    expect(judged({ of: ['LANE'] })).toEqual(told);
    expect(judged({ of: ['WC/2'] })).toEqual([]);
  });

  it('lets an approved concession stand, and what was found only afterwards', () => {
    expect(judged({ decision: 'use as is', approvedBy: 'J5' })).toEqual([]);
    expect(judged({ decision: 'use as is' })).toEqual(told);
    expect(judged({ raised: '2026-04-11' })).toEqual([]);
  });

  it('waits while the panel is off', () => expect(judged({}, 'off')).toEqual([]));
});
