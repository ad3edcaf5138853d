import { describe, expect, it } from 'vitest';
import { paint } from '../../../src/cli/report/paint.js';
import { trendsText } from '../../../src/cli/report/trends-text.js';
import { trendOf } from '../../../src/compute/record/trends.js';
import type { TicketFigure } from '../../../src/compute/weights/types.js';
import { buildModel, record } from '../../support/build.js';

const weld = (id: string, stage: string, reason?: string) => ({
  ...record(id),
  stage,
  joins: [],
  date: '2026-03-01',
  inspections: reason === undefined ? [] : [{ method: 'VT', result: 'reject', reason, date: '2026-03-02' }],
});
const model = buildModel({
  welds: [
    weld('W-1', 'floor', 'undercut'),
    weld('W-2', 'floor', 'undercut'),
    weld('W-3', 'walls', 'porosity'),
    weld('W-4', 'walls'),
  ],
} as never);
const ticket = { id: 'T-1', verified: true, normalisedKg: 10000, residualKg: 50 } as TicketFigure;

describe('trends of a shell', () => {
  const entered = new Map([
    ['W-1', '2026-03-01T10:00:00+00:00'],
    ['W-2', '2026-03-04T10:00:00+00:00'],
    ['W-3', '2026-03-11T10:00:00+00:00'],
  ]);
  const trend = trendOf(model, [ticket], entered);
  it('count what was made twice by stage and cause, most first', () => {
    expect(trend.reworks).toEqual([
      { stage: 'floor', cause: 'weld: undercut', count: 2 },
      { stage: 'walls', cause: 'weld: porosity', count: 1 },
    ]);
    expect([trend.welds, trend.rejected]).toEqual([4, 3]);
  });
  it('have the scale residual as a share, and the days from work to record', () => {
    expect(trend.residual).toEqual({ ticket: 'T-1', kg: 50, share: 0.005 });
    expect(trend.entry).toEqual({ median: 3, most: 10, records: 3 });
  });
  it('are a table and a small chart', () => {
    const text = trendsText([trend, trendOf(buildModel(), [], undefined)], paint(false));
    expect(text).toMatch(/T-1 +floor +weld: undercut +2\n +T-1 +walls +weld: porosity +1/u);
    expect(text).toContain('████████████████ 0.50 %');
    expect(text).toContain('no history');
  });
});
