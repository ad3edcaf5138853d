import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/geometry/vector.js';
import { screwAt } from '../../src/query/lookup/index.js';
import { FACE_MM } from '../../src/query/lookup/screw.js';
import { screws } from '../../src/query/release/index.js';
import { judged } from './store.js';

describe('the deepest screw at a place of the demo shell', () => {
  it('is what the map of the whole shell says, though only what is near is looked at', () => {
    const { assessment } = judged('OV-021');
    const whole = screws(assessment);
    const { sheets } = whole;
    let found = 0;
    for (const [i, { panel }] of sheets.entries()) {
      const [a, b, c] = panel.outline as readonly [Vec3, Vec3, Vec3];
      for (const [part, uncertaintyMm] of [
        [0.31, 0],
        [0.72, 30],
      ] as const) {
        const place = a.map((mm, k) => mm + part * (((b[k] as number) + (c[k] as number)) / 2 - mm) + (i % 5)) as unknown as Vec3;
        const nearest = whole.nearest(place);
        const near = nearest && nearest.distanceMm <= FACE_MM ? nearest : undefined;
        const expected = near && {
          panel: near.sheet.panel.id,
          at: near.at,
          ...whole.depthAt(near.sheet, near.at, uncertaintyMm),
        };
        expect(screwAt(assessment, place, uncertaintyMm)).toEqual(expected);
        found += expected ? 1 : 0;
      }
    }
    expect(found).toBeGreaterThan(100);
  });
});
