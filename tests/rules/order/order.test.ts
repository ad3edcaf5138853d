import { describe, expect, it } from 'vitest';
import { concealed } from '../../../src/query/concealment.js';
import type { Instrument, Panel, Photo, Run, ServiceNode, Test, Zone } from '../../../src/records/index.js';
import { adhesiveExpired } from '../../../src/rules/order/adhesive-expired.js';
import { instrumentOutOfCalibration } from '../../../src/rules/order/instrument-out-of-calibration.js';
import { orderNotVerified } from '../../../src/rules/order/not-verified.js';
import { photoAfterCloseIn } from '../../../src/rules/order/photo-after-close-in.js';
import { testAfterCloseIn } from '../../../src/rules/order/test-after-close-in.js';
import { buildModel, record } from '../../support/build.js';
import { judgeOne } from '../judge-one.js';

const CLOSED = '2026-04-10';
const belly = (id: string, fromX: number, toX: number, date?: string): Panel => ({
  ...record(id),
  panelKind: 'belly',
  outline: [
    [fromX, -400, -50],
    [toX, -400, -50],
    [toX, 400, -50],
    [fromX, 400, -50],
  ],
  holes: [],
  ...(date === undefined ? {} : { date }),
});
const trough: Zone = {
  ...record('TROUGH'),
  name: 'trough',
  box: [
    [500, -400, -50],
    [4000, 400, 100],
  ],
  concealed: true,
  closedBy: ['BP-1', 'BP-2'],
  carries: [],
};
const splice: ServiceNode = {
  ...record('DC-1/S1'),
  service: 'dc',
  medium: 'dc',
  nodeKind: 'splice',
  at: [1000, 0, 20],
  circuit: 'DC-1',
};
const run: Run = {
  ...record('DC-1/1'),
  service: 'dc',
  medium: 'dc',
  circuit: 'DC-1',
  from: 'DCP',
  to: 'DC-1/S1',
  via: [],
  path: [],
  zones: ['TROUGH'],
  grommets: [],
};
const photo = (taken: string, of = ['DC-1/S1', 'DC-1/1']): Photo => ({ ...record('P-1'), file: 'p.jpg', of, taken });
const meter: Instrument = { ...record('M-1'), instrumentKind: 'meter', calibrated: '2026-01-01', due: '2026-12-31' };
const continuity = (date: string): Test => ({
  ...record('TS-1'),
  testKind: 'continuity',
  of: ['DC-1'],
  limit: { value: 0.5, dimension: 'resistance', text: '0.5 ohm' },
  measured: { value: 0.2, dimension: 'resistance', text: '0.2 ohm' },
  instrument: 'M-1',
  date,
});

const shell = (given: object) =>
  buildModel(
    {
      zones: [trough],
      panels: [belly('BP-1', 500, 2000, CLOSED), belly('BP-2', 2000, 4000, '2026-04-20')],
      nodes: [splice],
      runs: [run],
      ...given,
    },
    { instruments: new Map([[meter.id, meter]]) },
  );

describe('what closes what in', () => {
  it('takes the panel that covers a joint, and the last panel for a run along the whole trough', () => {
    const items = concealed(shell({}));
    expect(items.map((item) => [item.record.id, item.closed?.panel])).toEqual([
      ['DC-1/1', 'BP-2'],
      ['DC-1/S1', 'BP-1'],
    ]);
  });

  it('finds a joint in a cavity along a line', () => {
    const bay: Zone = {
      ...record('TR-2'),
      name: 'truss bay',
      along: [
        [1600, -1200, 2400],
        [1600, 1200, 2400],
      ],
      clearMm: [50, 90],
      concealed: true,
      closedBy: ['BP-1'],
      carries: [],
    };
    const inside: ServiceNode = { ...splice, at: [1610, 300, 2430] };
    const above: ServiceNode = { ...splice, at: [1610, 300, 2500] };
    expect(concealed(shell({ zones: [bay], nodes: [inside], runs: [] }))).toHaveLength(1);
    expect(concealed(shell({ zones: [bay], nodes: [above], runs: [] }))).toHaveLength(0);
  });

  it('leaves loads and sources alone: they are no joints', () => {
    expect(concealed(shell({ nodes: [{ ...splice, nodeKind: 'load' }], runs: [] }))).toEqual([]);
  });
});

describe('order.photo-after-close-in', () => {
  it('passes on the day of closing, and warns the day after', () => {
    expect(judgeOne(photoAfterCloseIn, shell({ photos: [photo(CLOSED)] }))).toEqual([]);
    const [finding] = judgeOne(photoAfterCloseIn, shell({ photos: [photo('2026-04-11')] }));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['DC-1/S1', 'P-1', 'BP-1'] });
  });

  it('is content with one photo in time, whatever was taken later', () => {
    const photos = [photo('2026-04-01'), { ...photo('2027-01-01'), ...record('P-2') }];
    expect(judgeOne(photoAfterCloseIn, shell({ photos }))).toEqual([]);
  });
});

describe('order.test-after-close-in', () => {
  it('counts a test of the circuit for its splice', () => {
    expect(judgeOne(testAfterCloseIn, shell({ tests: [continuity('2026-04-09')] }))).toEqual([]);
    expect(judgeOne(testAfterCloseIn, shell({ tests: [continuity('2026-04-15')] }))).toMatchObject([
      { ids: ['DC-1/S1', 'TS-1', 'BP-1'] },
    ]);
  });
});

describe('order.not-verified', () => {
  it('names what is missing', () => {
    const messages = judgeOne(orderNotVerified, shell({})).map((finding) => finding.message);
    expect(messages).toHaveLength(2);
    expect(messages[1]).toContain('Splice DC-1/S1');
    expect(messages[1]).toContain('no photo shows it and no passing test covers it');
  });

  it('passes with both', () => {
    expect(judgeOne(orderNotVerified, shell({ photos: [photo('2026-04-01')], tests: [continuity('2026-04-09')] }))).toEqual([]);
  });

  it('does not take a failed test for evidence', () => {
    const bad: Test = { ...continuity('2026-04-09'), measured: { value: 2, dimension: 'resistance', text: '2 ohm' } };
    expect(judgeOne(orderNotVerified, shell({ photos: [photo('2026-04-01')], tests: [bad] }))).toHaveLength(2);
  });

  it('asks a spare run for no test', () => {
    const spare: Run = { ...run, spare: true };
    expect(judgeOne(orderNotVerified, shell({ nodes: [], runs: [spare], photos: [photo('2026-04-01')] }))).toEqual([]);
  });

  it('gives one note for a panel without a date', () => {
    const panels = [belly('BP-1', 500, 2000), belly('BP-2', 2000, 4000, CLOSED)];
    expect(judgeOne(orderNotVerified, shell({ panels }))).toMatchObject([{ severity: 'note', ids: ['BP-1'] }]);
  });
});

describe('order.adhesive-expired', () => {
  const bonded = (applied: string): Panel => ({
    ...belly('SK-1', 0, 1),
    fixing: { method: 'bonded', lot: 'A-1', expires: '2026-09-30', applied },
  });

  it('passes on the last day and warns after it', () => {
    expect(judgeOne(adhesiveExpired, shell({ panels: [bonded('2026-09-30')] }))).toEqual([]);
    expect(judgeOne(adhesiveExpired, shell({ panels: [bonded('2026-10-01')] }))[0]?.message).toContain('lot A-1');
  });
});

describe('order.instrument-out-of-calibration', () => {
  it('points at the test and at the instrument', () => {
    expect(judgeOne(instrumentOutOfCalibration, shell({ tests: [continuity('2026-12-31')] }))).toEqual([]);
    const [finding] = judgeOne(instrumentOutOfCalibration, shell({ tests: [continuity('2027-01-01')] }));
    expect(finding?.ids).toEqual(['TS-1', 'M-1']);
    expect(finding?.related).toHaveLength(1);
  });
});
