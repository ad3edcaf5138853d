import { describe, expect, it } from 'vitest';
import { effectiveThroatMm } from '../../../src/compute/welding/throat.js';
import { weldTotals } from '../../../src/compute/welding/totals.js';
import { buildModel } from '../../support/build.js';
import { lineMember, sections, weld } from '../../support/structure.js';

describe('effectiveThroatMm', () => {
  // WLD-09, WLD-10: 0.7071 × leg; geometry, AWS D1.2, Eurocode 9
  it.each([
    [3, 2.121],
    [4, 2.828],
    [5, 3.536],
    [6, 4.243],
    [8, 5.657],
    [10, 7.071],
  ])('WLD-10: a fillet of %d mm has a throat of %d mm', (leg, throat) =>
    expect(effectiveThroatMm({ type: 'fillet', sizeMm: leg })).toBeCloseTo(throat, 3),
  );

  it.each([
    [1 / 8, 0.0884],
    [3 / 16, 0.1326],
    [1 / 4, 0.1768],
    [5 / 16, 0.221],
  ])('WLD-12: %d in has %d in', (leg, throat) =>
    expect((effectiveThroatMm({ type: 'fillet', sizeMm: leg * 25.4 }) ?? 0) / 25.4).toBeCloseTo(throat, 4),
  );

  it('is the depth of a groove, and not said of what its size does not give', () => {
    expect(effectiveThroatMm({ type: 'V groove', sizeMm: 5 })).toBe(5);
    for (const type of ['flare', 'plug', 'seam'] as const) expect(effectiveThroatMm({ type, sizeMm: 5 })).toBeUndefined();
  });

  it('stands beside each weld’s length and filler, which sum to the totals', () => {
    const members = [lineMember('A', [0, 0, 0], [500, 0, 0]), lineMember('B', [0, 25, 0], [0, 500, 0])];
    const welds = [
      weld(
        'W1',
        [
          ['A', 'B'],
          ['B', 'A'],
        ],
        { sides: 'both' },
      ),
      weld('W2', [['A', 'B']], { type: 'plug' }),
    ];
    const totals = weldTotals(buildModel({ members, welds }, { sections }));
    expect(totals.welds?.map(({ id, jointClass, lengthMm }) => [id, jointClass, lengthMm])).toEqual([
      ['W1', 'primary', 400],
      ['W2', 'primary', 100],
    ]);
    expect(totals.welds?.reduce((sum, one) => sum + one.depositedKg, 0)).toBeCloseTo(totals.depositedKg, 12);
  });
});
