import { describe, expect, it } from 'vitest';
import { placesOf } from '../../src/query/place.js';
import { buildModel } from '../support/build.js';
import { component, levelPanel, node, zone } from '../support/services.js';

/** A room of 6 × 2.4 m, its floor 300 mm over the rail and 1.3 m over the ground. */
const panels = [
  levelPanel('BP', [3000, 0, 0], [6000, 2500]),
  levelPanel('FL', [3000, 0, 300], [5900, 2400], { panelKind: 'interior', facing: 'up', thicknessMm: 0 }),
  levelPanel('CL', [3000, 0, 2400], [5900, 2400], { panelKind: 'interior', facing: 'down' }),
  levelPanel('RF', [3000, 0, 2500], [6000, 2500], { panelKind: 'roof' }),
];
const cabinet = component('CAB', [200, -900, 1000], [300, 500, 900]);
const at = (...nodes: readonly ReturnType<typeof node>[]) =>
  placesOf(
    buildModel({
      panels,
      nodes,
      components: [{ ...cabinet, name: 'front cabinet' }],
      zones: [
        zone(
          'LANE',
          [
            [0, -1200, 10],
            [6000, -600, 200],
          ],
          { name: 'left lane' },
        ),
      ],
      chassis: { axles: [], frame: { railTopAboveGroundMm: 1000 } },
    }),
  );

describe('a place in words', () => {
  it('is the shop’s own where it wrote one, with row and position', () => {
    const words = at(node('N', [0, 0, 0], { place: 'front cabinet', slot: { row: 2, number: 10 } }));
    expect(words('N')).toBe('front cabinet, row 2, position 10');
  });

  it('names the equipment that a thing is of or in, the wall, and the height over the floor', () => {
    const words = at(node('IN', [200, -900, 700]), node('OF', [3000, 0, 1300], { of: ['CAB'], slot: { number: 3 } }));
    expect(words('IN')).toBe('front cabinet, front wall, inside, 400 mm above the floor');
    expect(words('OF')).toBe('front cabinet, position 3, inside, away from the walls, middle third, 1,000 mm above the floor');
  });

  it('names the zone, and counts from the ground what is in the belly, under the coach or on it', () => {
    const words = at(node('LOW', [3000, -900, 100]), node('HUNG', [3000, 0, -100]), node('TOP', [5500, 0, 2600]));
    expect(words('LOW')).toBe('between the floor and the belly, left, left lane, 1,100 mm above the ground');
    expect(words('HUNG')).toBe('under the coach, in the middle, middle third, 900 mm above the ground');
    expect(words('TOP')).toBe('on the roof, rear third, 3,600 mm above the ground');
  });

  it('says the surface of a panel', () => {
    expect(at()('CL')).toBe('ceiling, middle third, in the middle');
    expect(at()('NOTHING')).toBeUndefined();
  });

  it('is in what it lies within 10 mm of, the smallest of several, and never in what is as thin as a sheet', () => {
    const words = (x: number, ...more: readonly ReturnType<typeof component>[]) =>
      placesOf(buildModel({ panels, nodes: [node('N', [x, 0, 1000])], components: more }))('N');
    const box = component('BOX', [3000, 0, 1000], [200, 200, 200]);
    const inner = component('INNER', [3000, 0, 1000], [100, 100, 100]);
    expect(words(3110, box)).toMatch(/^BOX, /u);
    expect(words(3111, box)).not.toContain('BOX');
    for (const order of [
      [box, inner],
      [inner, box],
    ])
      expect(words(3000, ...order)).toMatch(/^INNER, /u);
    const thick = (mm: number) => component('SLAB', [3000, 0, 1000], [900, 900, mm]);
    expect(words(3000, thick(80))).not.toContain('SLAB');
    expect(words(3000, thick(81))).toMatch(/^SLAB, /u);
    // Equipment is not in itself.
    expect(placesOf(buildModel({ panels, components: [box] }))('BOX')).not.toContain('BOX');
  });

  it('is at floor level within half an inch of it, and at ground level', () => {
    const words = (z: number) => at(node('N', [3000, 0, z]))('N');
    expect([312, 288].map((z) => words(z)?.endsWith('at floor level'))).toEqual([true, true]);
    expect(words(313)).toMatch(/, 13 mm above the floor$/u);
    expect(words(287)).toMatch(/, 13 mm below the floor$/u);
    expect(words(-1000)).toContain('at ground level');
  });

  it('without a place of its own is what it is of, with row and position; else unknown', () => {
    const lost = (more: object) => ({ ...node('N', [0, 0, 0], more), at: undefined }) as never;
    expect(at(lost({ of: ['CAB'], slot: { row: 1, number: 2 } }))('N')).toBe('front cabinet, row 1, position 2');
    expect(at(lost({ slot: { number: 2 } }))('N')).toBe('position 2');
    expect(at(lost({ of: ['SOMETHING'] }))('N')).toBe('SOMETHING');
    expect(at(lost({}))('N')).toBeUndefined();
  });
});
