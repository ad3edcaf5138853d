import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, lerp, type Vec3 } from '../../../src/geometry/vector.js';
import { near } from '../../../src/query/lookup/near.js';
import { section } from '../../support/build.js';
import { component, levelPanel, lineMember, node, run, zone } from '../../support/services.js';
import { assessment } from './assessment.js';

const TUBE = section('TUBE', { shape: 'rectangular tube', depthMm: 100, widthMm: 60, wallMm: 5, cornerRadiusMm: 0 });
const [a, b] = [node('A', [0, 0, 0], { medium: 'water' }), node('B', [1000, 0, 0], { medium: 'water' })];
const given = assessment(
  {
    nodes: [a, b],
    // ASTM F876 (from memory): 1/2 in PEX is 5/8 in outside, 15.875 mm
    runs: [run('W', a, b, [], { toleranceMm: 15, size: { text: '1/2 in PEX', nominalMm: 12.7, material: 'PEX' } })],
    members: [lineMember('M', 'TUBE', [0, 200, 0], [1000, 200, 0])],
    panels: [levelPanel('P', [500, 0, -100], [1000, 600], { thicknessMm: 4 })],
    components: [component('C', [500, -200, 0], [100, 100, 100])],
    zones: [
      zone('Z', [
        [0, -50, -50],
        [1000, 50, 50],
      ]),
    ],
  },
  { sections: new Map([[TUBE.id, TUBE]]) },
);
const hits = (point: Vec3, withinMm: number) => near(given, point, withinMm).map((hit) => [hit.id, hit.distanceMm] as const);

describe('near a point', () => {
  it('measures to the outside of each thing, nearest first', () => {
    const found = near(given, [500, 50, 0], 150);
    expect(found.map((hit) => [hit.id, hit.kind])).toEqual([
      ['Z', 'zone'],
      ['W', 'run'],
      ['P', 'panel'],
      ['M', 'member'],
    ]);
    const by = new Map(found.map((hit) => [hit.id, hit]));
    expect(by.get('Z')?.distanceMm).toBe(0);
    expect(by.get('W')?.distanceMm).toBeCloseTo(50 - 15.875 / 2, 9);
    expect(distance(by.get('W')?.nearest as Vec3, [500, 7.9375, 0])).toBeLessThan(1e-9);
    expect(by.get('W')?.toleranceMm).toBe(15);
    // the sheet's upper face is at −98, the tube's near wall at 170
    expect(by.get('P')?.distanceMm).toBeCloseTo(98, 9);
    expect(by.get('M')?.distanceMm).toBeCloseTo(120, 9);
    expect(by.get('M')?.nearest).toEqual([500, 170, 0]);
  });

  it('is nought within the metal, and counts the hollow of a tube as hollow', () => {
    expect(hits([500, 172, 0], 0)).toEqual([['M', 0]]);
    expect(hits([500, 200, 0], 30)).toEqual([['M', 25]]);
  });

  it('keeps to the distance asked', () => {
    expect(hits([500, -200, 200], 149)).toEqual([]);
    expect(hits([500, -200, 200], 150)).toEqual([['C', 150]]);
  });

  it('gives a distance that is that of the place given, and that no place tried on a run beats', () => {
    const place = fc.tuple(
      fc.integer({ min: -200, max: 1200 }),
      fc.integer({ min: -300, max: 300 }),
      fc.integer({ min: -300, max: 300 }),
    );
    fc.assert(
      fc.property(place, (point) => {
        for (const hit of near(given, point, 500)) {
          expect(distance(point, hit.nearest)).toBeCloseTo(hit.distanceMm, 9);
          if (hit.id !== 'W') continue;
          const tried = Array.from({ length: 101 }, (_, i) => distance(point, lerp(a.at as Vec3, b.at as Vec3, i / 100)));
          expect(hit.distanceMm).toBeLessThanOrEqual(Math.max(0, Math.min(...tried) - 15.875 / 2) + 1e-9);
        }
      }),
    );
  });
});
