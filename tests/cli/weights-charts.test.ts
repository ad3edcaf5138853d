import { describe, expect, it } from 'vitest';
import { paint } from '../../src/cli/report/paint.js';
import { shownIn } from '../../src/cli/report/shown.js';
import {
  cgHeightText,
  contributionsText,
  growthText,
  influenceText,
  roadText,
  worstText,
} from '../../src/cli/report/weights-charts.js';
import { widthOf } from '../../src/cli/report/wrap.js';
import { weights } from '../../src/compute/weights/index.js';
import { axle, bareOf, bay, item, takeOffOf, tank, ticket, twoAxles, vehicle } from '../compute/weights/support.js';

const plain = paint(false);
const kg = shownIn('metric');
const answer = weights(
  vehicle(
    { gvwrKg: 16000, axles: twoAxles(), bare: bareOf({ front: 3000, rear: 4000 }) },
    {
      tanks: [tank('FUEL', 'diesel', 200, 1000), tank('GREY', 'grey', 100, 6000)],
      bays: [bay('B1', 6000, 300)],
      tickets: [ticket('T-1', { front: 3400, rear: 4600 }, { stage: 'walls', scale: 'SC-1' })],
    },
  ),
  takeOffOf([
    item('W', 1000, 3000, { stage: 'walls' }),
    item('F', 500, 2500, { stage: 'finished', basis: 'estimated', uMassKg: 30 }),
  ]),
);

describe('charts of weights in the terminal', () => {
  it('mass by stage beside what the scale said, and the forecast', () => {
    const text = growthText(answer, 16000, kg, plain);
    expect(text).toMatch(/walls .*8,000 {2}weighed 8,000 ±\d/u);
    // 500 kg estimated, not weighed: 15 % of it is allowed for, 8,575 kg.
    expect(text).toMatch(/forecast .*8,575 {2}8,\d{3} to 8,\d{3}/u);
  });
  it('influence lines as blocks: all at its own axle, a minus where an axle is lightened', () => {
    const rows = influenceText(answer, kg, plain)
      .split('\n')
      .filter((line) => /^ {2}(front|rear)/u.test(line))
      .map((line) => [...line.slice('  front '.length)]);
    // Stations every 500 mm from 0 to 6,000; wheelbase 5,000.
    expect(rows[0]?.join('')).toMatch(/^█.*−−$/u);
    expect(rows[1]?.[10]).toBe('█');
    expect(rows[0]?.[5]).toBe(rows[1]?.[5]);
  });
  it('the worst for each axle by name of what is in it', () => {
    const text = worstText(answer.conditions, kg, plain);
    expect(text).toContain('rear');
    expect(text).toMatch(/GREY full, bays B1/u);
    // Grey water and the bay behind the rear axle lighten the front.
    expect(text).toMatch(/FUEL full, GREY empty, no bays/u);
  });
  it('what makes the uncertainty, largest first', () => {
    const text = contributionsText(answer.conditions, kg, plain);
    expect(text).toContain('tolerance of scale SC-1');
    expect(text).toContain('estimated masses');
  });
  it('road limits, marked as information', () => {
    expect(roadText(answer, kg, plain)).toContain('for information, not a rating');
  });
  it('why no height of the centre of gravity is given', () => {
    const told = cgHeightText({ ...answer, cgHeight: [{ ticket: 'T-2', level: 'T-1', refused: 'too weak' }] }, kg, plain);
    expect(told).toContain('T-2: not given, too weak');
  });
  it('say nothing of a shell without its chassis, and fit 80 columns with many stations', () => {
    const none = weights(vehicle({}), takeOffOf());
    expect([growthText(none, undefined, kg, plain), influenceText(none, kg, plain), roadText(none, kg, plain)]).toEqual([
      '',
      '',
      '',
    ]);
    const long = weights(vehicle({ axles: [axle('front', 0), axle('rear', 90_000)] }), takeOffOf());
    for (const line of influenceText(long, kg, plain).split('\n')) expect(widthOf(line)).toBeLessThanOrEqual(80);
  });
});
