import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joints } from '../../../src/compute/structure/joints.js';
import { heatAffectedZones } from '../../../src/compute/welding/weld-bands.js';
import type { Member } from '../../../src/records/index.js';
import { buildModel } from '../../support/build.js';
import { lineMember, sections, weld } from '../../support/structure.js';

const rail = lineMember('RAIL', [0, 0, 0], [3000, 0, 0]);
const post = (x: number): Member => lineMember(`P${x}`, [x, 0, 25], [x, 0, 900]);
const bandsOf = (members: readonly Member[], welded: readonly string[]) => {
  const welds = welded.map((id) => weld(`W${id}`, [['RAIL', id]]));
  const model = buildModel({ members, welds }, { sections });
  return heatAffectedZones(model, joints(model).joints);
};
const onRail = (xs: readonly number[], welded = xs) =>
  bandsOf(
    [rail, ...xs.map(post)],
    welded.map((x) => `P${x}`),
  )
    .find(({ member }) => member === 'RAIL')
    ?.bandsMm.map(([from, to]) => [Math.round(from), Math.round(to)]);

describe('heatAffectedZones', () => {
  it('MAT-44: an inch each way of the foot of a post of 50 mm', () => {
    // Aluminum Design Manual, from memory
    expect(onRail([1000])).toEqual([[950, 1050]]);
  });

  it('bands that touch are one, those apart are two', () => {
    expect(onRail([1000, 1099])).toEqual([[950, 1149]]);
    expect(onRail([1000, 1102])).toEqual([
      [950, 1050],
      [1052, 1152],
    ]);
  });

  it('end with the member', () => {
    expect(onRail([20, 2990])).toEqual([
      [0, 70],
      [2940, 3000],
    ]);
  });

  it('are of welded joints and of primary members only', () => {
    expect(onRail([1000, 2000], [2000])).toEqual([[1950, 2050]]);
    expect(bandsOf([{ ...rail, memberClass: 'secondary' }, post(1000)], ['P1000']).map(({ member }) => member)).toEqual([
      'P1000',
    ]);
  });

  it('a post has its band at the foot', () => {
    const [foot] = bandsOf([rail, post(1000)], ['P1000']).filter(({ member }) => member === 'P1000');
    expect(foot?.bandsMm.map(([from, to]) => [Math.round(from), Math.round(to)])).toEqual([[0, 25]]);
    expect(foot?.share).toBeCloseTo(25 / 875, 2);
  });

  it('never overlap, stay within the member, and hold every joint', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 30, max: 2970 }), { maxLength: 12 }), (xs) => {
        const bands = onRail(xs) ?? [];
        bands.forEach(([from = 0, to = 0], i) => {
          expect(from).toBeLessThan(to);
          expect(from).toBeGreaterThanOrEqual(0);
          expect(to).toBeLessThanOrEqual(3000);
          if (i > 0) expect(from).toBeGreaterThan(bands[i - 1]?.[1] ?? 0);
        });
        for (const x of xs) expect(bands.some(([from = 0, to = 0]) => from <= x && x <= to)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});
