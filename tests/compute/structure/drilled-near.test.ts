import { describe, expect, it } from 'vitest';
import type { Crossing } from '../../../src/compute/services/types.js';
import { drilledNear } from '../../../src/compute/structure/drilled-near.js';
import { joints } from '../../../src/compute/structure/joints.js';
import type { MemberClass } from '../../../src/records/index.js';
import { buildModel } from '../../support/build.js';
import { lineMember, sections, weld } from '../../support/structure.js';

/** A rail of 50 × 50 × 4 along x, a post welded on top of it at x 1000: its foot reaches from 975 to 1025. */
const judged = (
  x: number,
  more: { memberClass?: MemberClass; welded?: boolean; outsideDiameterMm?: number; kind?: Crossing['kind'] } = {},
) => {
  const members = [
    { ...lineMember('RAIL', [0, 0, 0], [3000, 0, 0]), memberClass: more.memberClass },
    lineMember('POST', [1000, 0, 25], [1000, 0, 900]),
  ];
  const model = buildModel({ members, welds: more.welded === false ? [] : [weld('W', [['RAIL', 'POST']])] }, { sections });
  const hole: Crossing = { run: 'R', through: 'RAIL', kind: more.kind ?? 'member', at: [x, 0, 25], grommet: true };
  const run = {
    id: 'R',
    lengthMm: 0,
    pathLengthMm: 0,
    massKg: 0,
    centroid: [0, 0, 0] as const,
    outsideDiameterMm: more.outsideDiameterMm ?? 0,
  };
  return drilledNear(model, [hole], joints(model).joints, [run]);
};

describe('drilledNear', () => {
  it.each([
    // Aluminum Design Manual: 1 in (25 mm) each way from the weld, MAT-44, from memory
    [1025 + 24, 1],
    [1025 + 26, 0],
    [975 - 24, 1],
    [975 - 26, 0],
    [1000, 1],
  ])('MAT-44: a hole at x %d beside a post that ends at 975 and 1025', (x, count) => expect(judged(x).length).toBe(count));

  it('measures from the edge of the hole, taken as wide as the run', () => {
    expect(judged(1025 + 34, { outsideDiameterMm: 20 })[0]).toMatchObject({ member: 'RAIL', run: 'R', other: 'POST', weld: 'W' });
    expect(judged(1025 + 34, { outsideDiameterMm: 20 })[0]?.distanceMm).toBeCloseTo(24, 6);
    expect(judged(1025 + 36, { outsideDiameterMm: 20 })).toEqual([]);
  });

  it('asks nothing of a secondary member, of parts that are not welded, nor of a panel', () => {
    expect(judged(1030, { memberClass: 'secondary' })).toEqual([]);
    expect(judged(1030, { welded: false })).toEqual([]);
    expect(judged(1030, { kind: 'panel' })).toEqual([]);
  });
});
