import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import { drilledSheets, isFarBeside, onFace, underFace } from '../../../src/query/release/drilled-sheets.js';
import { metalAlong, screwMetalOf } from '../../../src/query/release/screw-metal.js';
import { screws } from '../../../src/query/release/screws.js';
import { screwsByPanel } from '../../../src/query/release/screws-by-panel.js';
import type { Panel } from '../../../src/records/index.js';
import { buildModel, section } from '../../support/build.js';
import { accessPanel, component, levelPanel, lineMember, node, run } from '../../support/services.js';
import { plateMember } from '../../support/structure.js';
import { assessment } from '../lookup/assessment.js';

const upright = (id: string, y: number, more: Partial<Panel> = {}): Panel => {
  const panel = levelPanel(id, [500, 0, 0], [1000, 800], { panelKind: 'skin', thicknessMm: 2, ...more });
  return { ...panel, outline: panel.outline.map(([x, across]): Vec3 => [x, y, across + 500]) };
};
/** Which way one drills into each sheet. */
const ways = (...panels: readonly Panel[]) =>
  Object.fromEntries(
    drilledSheets(buildModel({ panels })).map(({ panel, into }) => [
      panel.id,
      into
        .map(Math.round)
        .map((k) => k + 0)
        .join(' '),
    ]),
  );

describe('the side that one drills from', () => {
  const belly = levelPanel('BP', [500, 0, 0], [1000, 800], { thicknessMm: 2 });
  const roof = levelPanel('RF', [500, 0, 1000], [1000, 800], { panelKind: 'roof', thicknessMm: 2 });
  const sides = [belly, roof, upright('L', -400), upright('R', 400)];
  const inner = [
    upright('LL', -350, { panelKind: 'interior' }),
    upright('LR', 350, { panelKind: 'interior' }),
    levelPanel('CL', [500, 0, 950], [1000, 800], { panelKind: 'interior' }),
  ];
  const expected = { BP: '0 0 1', RF: '0 0 -1', L: '0 1 0', R: '0 -1 0', LL: '0 -1 0', LR: '0 1 0', CL: '0 0 1' };

  it('is outside for skins and inside for linings, whichever way an outline runs', () => {
    expect(ways(...sides, ...inner)).toEqual(expected);
    const back = [...sides, ...inner].map((panel) => ({ ...panel, outline: [...panel.outline].reverse() }));
    expect(ways(...back)).toEqual(expected);
    // Under a roof as low as the belly both still are drilled from outside.
    expect(
      ways(levelPanel('BP', [500, 0, 9], [1000, 800]), levelPanel('RF', [500, 0, 0], [1000, 800], { panelKind: 'roof' })),
    ).toEqual({
      BP: '0 0 1',
      RF: '0 0 -1',
    });
  });

  it('is where a panel is said to face; an access panel, and one without area, is no such sheet', () => {
    expect(ways(...sides.map((panel) => (panel.id === 'L' ? { ...panel, facing: 'right' as const } : panel)))).toMatchObject({
      L: '0 -1 0',
    });
    expect(
      ways(
        ...sides,
        accessPanel('AP', [500, 0, 0], [200, 200]),
        upright('LINE', 0, {
          outline: [
            [0, 0, 0],
            [9, 9, 9],
          ],
        }),
      ),
    ).toEqual({
      BP: '0 0 1',
      RF: '0 0 -1',
      L: '0 1 0',
      R: '0 -1 0',
    });
    expect(ways()).toEqual({});
  });

  it('is where depth begins: half a thickness out of the middle plane', () => {
    const [sheet] = drilledSheets(buildModel({ panels: [{ ...belly, thicknessMm: 6 }, roof] }));
    if (!sheet) throw new Error('the belly is a sheet');
    expect(onFace(sheet, [100, 50, 77])).toEqual([100, 50, -3]);
    expect(underFace(sheet, [100, 50, 77])).toEqual({ depthMm: 80, besideMm: 0 });
    expect(underFace(sheet, [100, 50, -10]).depthMm).toBe(-7);
    // 3–4–5 beside a corner
    expect(underFace(sheet, [1030, 440, 20])).toEqual({ depthMm: expect.closeTo(23, 9), besideMm: expect.closeTo(50, 9) });
    const [thin] = drilledSheets(buildModel({ panels: [{ ...belly, thicknessMm: undefined }, roof] }));
    expect(thin && underFace(thin, [100, 50, 77]).depthMm).toBe(77);
  });

  it('a place is only called far beside a sheet where it is, and is called so beyond any of its sides', () => {
    const [sheet] = drilledSheets(buildModel({ panels: [upright('L', -400), upright('R', 400)] }));
    if (!sheet) throw new Error('the skin is a sheet');
    const far = (x: number, z: number): boolean => isFarBeside(sheet, [x, -300, z], 50);
    expect([far(-49.9, 500), far(1049.9, 500), far(500, 50.1), far(500, 949.9)]).toEqual([false, false, false, false]);
    expect([far(-50.1, 500), far(1050.1, 500), far(500, 49.9), far(500, 950.1)]).toEqual([true, true, true, true]);
    const place = fc.integer({ min: -300, max: 1300 });
    fc.assert(
      fc.property(place, place, fc.nat(200), (x, z, by) => {
        if (isFarBeside(sheet, [x, -300, z], by)) expect(underFace(sheet, [x, -300, z]).besideMm).toBeGreaterThan(by);
      }),
    );
  });
});

const TUBE = section('TUBE', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm: 3, cornerRadiusMm: 0 });
const library: Partial<Model['library']> = { sections: new Map([[TUBE.id, TUBE]]) };

describe('metal to screw into', () => {
  const along = (start: Vec3, ...members: Model['shell']['members']) =>
    metalAlong(screwMetalOf(buildModel({ members }, library)), start, [0, 0, 1]).map(
      ({ id, fromMm, toMm }) => `${id} ${fromMm.toFixed(3)}–${toMm.toFixed(3)}`,
    );
  const level = (id: string, z: number, thicknessMm: number) =>
    plateMember(
      id,
      [
        [0, 0, z],
        [100, 0, z],
        [100, 100, z],
        [0, 100, z],
      ],
      thicknessMm,
    );

  it('is a plate, through its thickness, and the near wall of a tube', () => {
    expect(along([50, 50, 0], level('P', 30, 8))).toEqual(['P 26.000–34.000']);
    expect(along([50, 50, 0], level('P', 2, 8))).toEqual(['P 0.000–6.000']);
    expect(along([150, 50, 0], level('P', 30, 8))).toEqual([]);
    // Outside 50, so 25 under its middle line
    expect(along([50, 0, 0], lineMember('T', 'TUBE', [0, 0, 45], [100, 0, 45]))).toEqual(['T 20.000–23.000']);
  });

  it('of a tube is the wall that comes first, from either side of it', () => {
    const tube = lineMember('T', 'TUBE', [0, 0, 26], [100, 0, 26]);
    const metal = screwMetalOf(buildModel({ members: [tube] }, library));
    const first = (start: Vec3, way: Vec3): string =>
      metalAlong(metal, start, way)
        .map(({ fromMm, toMm }) => `${fromMm.toFixed(3)}–${toMm.toFixed(3)}`)
        .join(' ');
    expect(first([50, 0, 0], [0, 0, 1])).toBe('1.000–4.000');
    expect(first([50, 0, 55], [0, 0, -1])).toBe('4.000–7.000');
    expect(first([50, -30, 26], [0, 1, 0])).toBe('5.000–8.000');
    expect(first([50, 30, 26], [0, -1, 0])).toBe('5.000–8.000');
  });

  it('slanting is met through more of it: 3–4–5', () => {
    const slope = plateMember(
      'S',
      [
        [0, 0, 0],
        [80, 0, 60],
        [80, 100, 60],
        [0, 100, 0],
      ],
      8,
    );
    // Square thickness 8 along z is 8 / 0.8 = 10, about the height 30 at x = 40
    expect(along([40, 50, 0], slope)).toEqual(['S 25.000–35.000']);
  });

  it('begins within 60 mm; the first of each member, nearest first, then by name', () => {
    expect(along([50, 50, 0], level('P', 63, 6), level('Q', 64, 6))).toEqual(['P 60.000–66.000']);
    expect(along([50, 50, 0], level('C', 40, 2), level('B', 20, 2), level('A', 40, 2))).toEqual([
      'B 19.000–21.000',
      'A 39.000–41.000',
      'C 39.000–41.000',
    ]);
  });

  it('is none of a member without a section, a length or an area', () => {
    expect(along([50, 0, 0], lineMember('X', 'none', [0, 0, 45], [100, 0, 45]))).toEqual([]);
    expect(along([50, 0, 0], lineMember('X', 'TUBE', [50, 0, 45], [50, 0, 45]))).toEqual([]);
    expect(
      along(
        [50, 0, 0],
        plateMember(
          'X',
          [
            [0, 0, 9],
            [100, 0, 9],
          ],
          5,
        ),
      ),
    ).toEqual([]);
  });
});

describe('of several things in the way of a screw', () => {
  const belly = levelPanel('BP', [500, 0, 0], [1000, 600], { thicknessMm: 2 });
  const roof = levelPanel('RF', [500, 0, 2000], [1000, 600], { panelKind: 'roof', thicknessMm: 2 });
  const depthAt = (shell: Partial<Model['shell']>) => {
    const map = screws(assessment({ ...shell, panels: [belly, roof, ...(shell.panels ?? [])] }, library));
    const sheet = map.sheets.find(({ panel }) => panel.id === 'BP');
    if (!sheet) throw new Error('the belly is a sheet');
    return map.depthAt(sheet, [500, 0, 0]);
  };
  /** Half of a screw of 1/4 in. */
  const SCREW = 3.175;
  const point = (z: number, i: number) => node(`N-${i}`, [500, 0, z], { toleranceMm: 0 });
  const block = (z: number, i: number) => ({ ...component(`C-${i}`, [500, 0, z], [40, 40, 10]), toleranceMm: 0 });
  const floor = (z: number, i: number) =>
    levelPanel(`FL-${i}`, [500, 0, z], [1000, 600], { panelKind: 'interior', thicknessMm: 4 });
  const DEEP = 152.4;

  it('the shallowest ends it, and the shallowest service is told besides, in whatever order they are on record', () => {
    const heights = fc.uniqueArray(fc.integer({ min: 20, max: 200 }), { minLength: 1, maxLength: 4 });
    const kinds = fc.array(fc.constantFrom('node', 'component', 'panel'), { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(heights, kinds, (all, of) => {
        const pick = (kind: string): readonly number[] => all.filter((_, i) => of[i] === kind);
        const found = depthAt({
          nodes: pick('node').map(point),
          components: pick('component').map(block),
          panels: pick('panel').map(floor),
        });
        // From the face at −1: to the ball of the screw about a node, to the lower face of a box, to the lower face of a sheet.
        const services = [...pick('node').map((z) => z + 1 - SCREW), ...pick('component').map((z) => z - 5 + 1 - SCREW)];
        const sheets = pick('panel').map((z) => z + 1 - 2);
        const least = Math.min(DEEP, ...services, ...sheets);
        expect(found.depthMm).toBeCloseTo(least, 6);
        if (least === DEEP) expect(found.meets).toBeUndefined();
        else expect(found.meets?.depthMm).toBeCloseTo(least, 6);
        const service = Math.min(...services);
        if (service >= DEEP) expect(found.service).toBeUndefined();
        else expect(found.service?.depthMm).toBeCloseTo(service, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('a sheet laid on the face is screwed through, up to 12 mm', () => {
    expect(depthAt({ panels: [floor(12.9, 0)] }).depthMm).toBe(DEEP);
    expect(depthAt({ panels: [floor(13, 0)] })).toMatchObject({ depthMm: expect.closeTo(12, 9), meets: { kind: 'panel' } });
    expect(depthAt({ panels: [floor(5, 0)], nodes: [point(4, 0)] }).depthMm).toBeCloseTo(5 - SCREW, 6);
  });
});

describe('screws by panel', () => {
  const belly = levelPanel('BP', [500, 0, 0], [1000, 600], { thicknessMm: 2 });
  const roof = levelPanel('RF', [500, 0, 2000], [1000, 600], { panelKind: 'roof', thicknessMm: 2 });
  const found = (shell: Partial<Model['shell']>, depths: readonly number[] = [20, 100]) => {
    const given = assessment({ panels: [belly, roof], ...shell }, library);
    return screwsByPanel(screws(given), depths).find(({ panel }) => panel === 'BP');
  };

  it('an empty panel is free all over, with nothing to screw into', () => {
    expect(found({})).toEqual({ panel: 'BP', free: [expect.closeTo(1, 9), expect.closeTo(1, 9)], metal: [] });
  });

  it('is free where nothing stands over it: a run over its middle takes a strip of it', () => {
    const [a, b] = [node('A', [0, 0, 60], { toleranceMm: 0 }), node('B', [1000, 0, 60], { toleranceMm: 0 })];
    const one = found({ nodes: [a, b], runs: [run('W', a, b, [], { toleranceMm: 10, medium: 'data' })] });
    expect(one?.free[0]).toBeCloseTo(1, 9);
    // Twenty rows of 30; a square counts by its middle with 10 of tolerance, half a screw and half a diagonal: 35.2, which of the rows
    // at 15, 45 … from the run's line holds the first on each side.
    expect(one?.free[1]).toBeCloseTo(18 / 20, 9);
    // Over the middle of the nearest row of squares, which is at y = 0 or half a square beside it
    expect(one?.shallowest).toMatchObject({ id: 'W', kind: 'run' });
    expect(Math.abs(one?.shallowest?.at[1] as number)).toBeLessThanOrEqual(15.5);
    expect(one?.shallowest?.at[2]).toBeCloseTo(0, 9);
  });

  it('names the metal that stands behind most of it first', () => {
    const members = [
      lineMember('SHORT', 'TUBE', [0, -200, 30], [300, -200, 30]),
      lineMember('LONG', 'TUBE', [0, 200, 30], [900, 200, 30]),
      lineMember('ALSO', 'TUBE', [0, 0, 30], [300, 0, 30]),
    ];
    expect(found({ members })?.metal[0]).toBe('LONG');
    expect([...(found({ members })?.metal ?? [])].sort()).toEqual(['ALSO', 'LONG', 'SHORT']);
  });

  it('tells where the shallowest place is, whichever way a run slants', () => {
    const ends = [node('A', [0, 0, 120], { toleranceMm: 0 }), node('B', [1000, 0, 40], { toleranceMm: 0 })] as const;
    for (const [a, b] of [ends, [ends[1], ends[0]] as const]) {
      const one = found({ nodes: [a, b], runs: [run('W', a, b, [], { toleranceMm: 0, medium: 'data' })] });
      expect(one?.shallowest?.at[0]).toBeGreaterThan(950);
    }
  });

  it('names members that stand behind as much of it by their names', () => {
    const members = [
      lineMember('B', 'TUBE', [0, -150, 30], [900, -150, 30]),
      lineMember('A', 'TUBE', [0, 150, 30], [900, 150, 30]),
      lineMember('C', 'TUBE', [0, 0, 130], [900, 0, 130]),
    ];
    expect(found({ members })?.metal).toEqual(['A', 'B']);
    expect(found({ members: [...members].reverse() })?.metal).toEqual(['A', 'B']);
  });

  it('leaves out holes, and a panel too large to be true', () => {
    const holes: Vec3[][] = [
      [
        [10, -290, 0],
        [990, -290, 0],
        [990, -10, 0],
        [10, -10, 0],
      ],
    ];
    const [a, b] = [node('A', [0, -150, 40], { toleranceMm: 0 }), node('B', [1000, -150, 40], { toleranceMm: 0 })];
    const runs = [run('W', a, b, [], { toleranceMm: 0, medium: 'data' })];
    const nodes = [a, b];
    expect(found({ nodes, runs }, [100])?.free[0]).toBeLessThan(0.95);
    // What runs over the hole alone meets no screw but at its rim.
    expect(found({ nodes, runs, panels: [{ ...belly, holes }, roof] }, [100])?.free[0]).toBeGreaterThan(0.95);
    expect(found({ panels: [levelPanel('BP', [0, 0, 0], [2e6, 600]), roof] })).toBeUndefined();
  });
});
