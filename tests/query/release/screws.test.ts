import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../../src/assess.js';
import { nearestOnPolyline } from '../../../src/geometry/segment.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import { screwAt } from '../../../src/query/lookup/index.js';
import { SCREW_LOOK_MM, screws, screwsByPanel } from '../../../src/query/release/index.js';
import { section } from '../../support/build.js';
import { component, levelPanel, lineMember, node, run } from '../../support/services.js';
import { assessment } from '../lookup/assessment.js';

const TUBE = section('TUBE', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm: 3, cornerRadiusMm: 0 });
/** A belly of 2 mm about z = 0, drilled from below at −1, under a roof far above. */
const belly = levelPanel('BP', [500, 0, 0], [1000, 600], { thicknessMm: 2 });
const roof = levelPanel('RF', [500, 0, 2000], [1000, 600], { panelKind: 'roof', thicknessMm: 2 });
const given = (shell: Partial<Model['shell']>): Assessment =>
  assessment({ panels: [belly, roof], ...shell }, { sections: new Map([[TUBE.id, TUBE]]) });
const [a, b] = [node('A', [0, 250, 900]), node('B', [1000, 250, 900])];
/** Half of a screw of 1/4 in. */
const SCREW = 3.175;
const under = (shell: Partial<Model['shell']>, x: number, y = 0) => screwAt(given(shell), [x, y, -5]);

describe('the deepest screw', () => {
  it('ends before a run by its tolerance and half of the screw', () => {
    const pipe = run(
      'W',
      a,
      b,
      [
        [500, 0, 80],
        [600, 0, 80],
      ],
      {
        toleranceMm: 10,
        size: { text: '1/2 in PEX', nominalMm: 12.7, material: 'PEX' },
      },
    );
    // From the face at −1 to the axis at 80; 1/2 in PEX is 15.875 outside (ASTM F876, from memory)
    const found = under({ nodes: [a, b], runs: [pipe] }, 550);
    expect(found).toMatchObject({ panel: 'BP', meets: { id: 'W', kind: 'run' } });
    expect(found?.depthMm).toBeCloseTo(81 - 15.875 / 2 - 10 - SCREW, 6);
    expect(found?.at).toEqual([550, 0, -1]);
  });

  it('takes 25 mm where no tolerance is recorded', () => {
    expect(under({ nodes: [node('N', [500, 0, 99])] }, 500)?.depthMm).toBeCloseTo(100 - 25 - SCREW, 6);
  });

  it('ends before equipment, and comes out of no other sheet', () => {
    const box = component('C', [500, 0, 150], [100, 100, 100]);
    expect(under({ components: [{ ...box, toleranceMm: 5 }] }, 500)).toMatchObject({ meets: { id: 'C', kind: 'component' } });
    expect(under({ components: [{ ...box, toleranceMm: 5 }] }, 500)?.depthMm).toBeCloseTo(101 - 5 - SCREW, 6);
    const floor = levelPanel('FL', [500, 0, 60], [1000, 600], { panelKind: 'interior', thicknessMm: 12 });
    expect(under({ panels: [belly, roof, floor] }, 500)).toMatchObject({ depthMm: 55, meets: { id: 'FL', kind: 'panel' } });
  });

  it('is as deep as is looked where nothing is met, and never says more', () => {
    expect(under({}, 500)).toMatchObject({ depthMm: SCREW_LOOK_MM, metal: [] });
    expect(under({}, 500)?.meets).toBeUndefined();
  });

  it('stays 25.4 mm clear of a weld (MAT-44), and tells the metal there is to screw into', () => {
    const members = [
      lineMember('M1', 'TUBE', [0, 0, 26], [1000, 0, 26]),
      lineMember('M2', 'TUBE', [500, 25, 26], [500, 300, 26]),
    ];
    // The two meet at y = 25, over 50 in x; 25.4 + half a screw to the side of that
    expect(under({ members }, 500, 20)).toMatchObject({ depthMm: 0, meets: { kind: 'weld' } });
    expect(under({ members }, 525 + 25.4 + SCREW + 0.1, 20)).toMatchObject({ depthMm: SCREW_LOOK_MM });
    expect(under({ members }, 525 + 25.4 + SCREW - 0.1, 20)?.meets?.kind).toBe('weld');
    const metal = under({ members }, 100)?.metal ?? [];
    expect(metal.map(({ id }) => id)).toEqual(['M1']);
    expect(metal[0]?.fromMm).toBeCloseTo(2, 9);
    expect(metal[0]?.toMm).toBeCloseTo(5, 9);
  });

  it('goes from the room outward through a lining, and is not told far from every sheet', () => {
    const ceiling = levelPanel('CL', [500, 0, 1900], [1000, 600], { panelKind: 'interior', thicknessMm: 4 });
    const found = screwAt(given({ panels: [belly, roof, ceiling] }), [500, 0, 1890]);
    expect(found).toMatchObject({ panel: 'CL', meets: { id: 'RF' } });
    expect(found?.depthMm).toBeCloseTo(1999 - 1898, 9);
    expect(screwAt(given({}), [500, 0, 1000])).toBeUndefined();
  });

  it('is where a screw pushed in by half millimetres first comes too near', () => {
    const point = fc.tuple(
      fc.integer({ min: 0, max: 1000 }),
      fc.integer({ min: -280, max: 280 }),
      fc.integer({ min: 5, max: 140 }),
    );
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 5 }), point, fc.nat(20), (path, [x, y], toleranceMm) => {
        const [from, to] = [node('F', path[0] as Vec3, { toleranceMm: 0 }), node('T', path.at(-1) as Vec3, { toleranceMm: 0 })];
        const wire = run('R', from, to, path.slice(1, -1), { toleranceMm, medium: 'data' });
        const found = screws(given({ nodes: [from, to], runs: [wire] }));
        const sheet = found.sheets.find(({ panel }) => panel.id === 'BP');
        if (!sheet) throw new Error('the belly is a sheet');
        const { depthMm } = found.depthAt(sheet, [x, y, 0]);
        // Without a size recorded the wire counts by its tolerance only.
        const away = (depth: number): number => nearestOnPolyline([x, y, -1 + depth], wire.path)?.distance ?? Infinity;
        for (let depth = 0; depth < depthMm - 1e-6; depth += 0.5) expect(away(depth)).toBeGreaterThan(toleranceMm + SCREW - 1e-6);
        if (depthMm > 0 && depthMm < SCREW_LOOK_MM) expect(away(depthMm)).toBeCloseTo(toleranceMm + SCREW, 6);
      }),
    );
  });
});

describe('screws by panel', () => {
  it('gives the shallowest thing and shares that no finer look at the panel betters', () => {
    const pipe = run(
      'W',
      a,
      b,
      [
        [0, 0, 60],
        [1000, 0, 60],
      ],
      { toleranceMm: 10, medium: 'gas' },
    );
    const map = screws(given({ nodes: [a, b], runs: [pipe] }));
    const found = screwsByPanel(map, [25.4, 50.8, SCREW_LOOK_MM]).find(({ panel }) => panel === 'BP');
    expect(found?.shallowest).toMatchObject({ id: 'W', kind: 'run' });
    // 61 from the face to the axis, less tolerance, half a screw and half a square
    expect(found?.shallowest?.depthMm).toBeGreaterThan(61 - 10 - SCREW - 22 - 1);
    expect(found?.shallowest?.depthMm).toBeLessThanOrEqual(61 - 10 - SCREW);
    expect(found?.free[0]).toBeCloseTo(1, 9);
    const sheet = map.sheets.find(({ panel }) => panel.id === 'BP');
    let free = 0;
    let all = 0;
    for (let x = 5; x < 1000; x += 10) {
      for (let y = -295; y < 300; y += 10) {
        all += 1;
        if (sheet && map.depthAt(sheet, [x, y, 0]).depthMm >= SCREW_LOOK_MM) free += 1;
      }
    }
    expect(found?.free[2]).toBeGreaterThan(0.5);
    expect(found?.free[2]).toBeLessThanOrEqual(free / all);
  });
});
