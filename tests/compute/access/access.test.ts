import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { access } from '../../../src/compute/access/index.js';
import { obstacles } from '../../../src/compute/access/obstacles.js';
import { panelOpening } from '../../../src/compute/access/opening.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import { buildModel, section } from '../../support/build.js';
import { accessPanel, component, levelPanel, lineMember, node, run, zone } from '../../support/services.js';

const TUBE = section('TUBE', { shape: 'rectangular tube', depthMm: 100, widthMm: 100, wallMm: 5, cornerRadiusMm: 0 });
const library: Partial<Model['library']> = { sections: new Map([[TUBE.id, TUBE]]) };
/** A trough of 4 m over a belly at z = 0, opened by a panel of 300 × 250 at x = 1 m. */
const trough = zone('TROUGH', [
  [0, -400, 0],
  [4000, 400, 600],
]);
const belly = levelPanel('BP', [2000, 0, 0], [4000, 800]);
const panel = accessPanel('AP', [1000, 0, 0], [300, 250], { of: 'BP' });

const look = (shell: Partial<Model['shell']>) =>
  access(buildModel({ zones: [trough], panels: [belly, panel], ...shell }, library));
const reachOf = (at: Vec3, shell: Partial<Model['shell']> = {}) => look({ ...shell, nodes: [node('N', at)] }).nodes[0];

describe('a node behind a panel', () => {
  it('is measured from the nearest place of the opening', () => {
    // 3–4–5: 300 beyond the rim along x (150 from the middle), 400 up
    const found = reachOf([1450, 0, 400]);
    expect(found?.panels[0]?.distanceMm).toBeCloseTo(500, 9);
    expect(found?.panels[0]?.reach).toBe('arm');
    expect(found?.inReach).toBe(true);
  });

  it('is classed by distance: RCH-P1', () => {
    expect(reachOf([1000, 0, 165])?.panels[0]?.reach).toBe('hand');
    expect(reachOf([1000, 0, 166])?.panels[0]?.reach).toBe('forearm');
    expect(reachOf([1000, 0, 405])?.panels[0]?.reach).toBe('arm');
    expect(reachOf([2000, 0, 100])?.panels[0]?.reach).toBe('beyond');
    expect(reachOf([2000, 0, 100])?.inReach).toBe(false);
  });

  it('counts only on the inner side, and the panel it is set in is open at the hole', () => {
    expect(reachOf([1000, 0, -100])?.panels).toEqual([]);
    expect(reachOf([1000, 0, 100])?.panels[0]?.blockedBy).toEqual([]);
  });

  it('is limited by the opening: RCH-P3', () => {
    const small = accessPanel('SMALL', [1000, 0, 0], [90, 90], { of: 'BP' });
    expect(reachOf([1000, 0, 300], { panels: [belly, small] })?.panels[0]?.reach).toBe('beyond');
    expect(reachOf([1000, 0, 150], { panels: [belly, small] })?.panels[0]?.reach).toBe('hand');
  });

  it('puts the larger size of the opening along the longer side of the outline', () => {
    const tall = levelPanel('TALL', [1000, 0, 0], [200, 700], { panelKind: 'access', facing: 'down', openingMm: [600, 130] });
    // The opening runs ±300 in y: 60 beyond its rim there, 1000 − 65 beyond its side in x.
    expect(reachOf([1000, 360, 80], { panels: [tall] })?.panels[0]?.distanceMm).toBeCloseTo(100, 9);
    expect(reachOf([1125, 0, 80], { panels: [tall] })?.panels[0]?.distanceMm).toBeCloseTo(100, 9);
  });

  it('looks out of the panel as it faces', () => {
    const floor = { ...panel, facing: 'up' as const };
    expect(reachOf([1000, 0, 100], { panels: [belly, floor] })?.panels).toEqual([]);
    expect(
      reachOf([1000, 0, -100], {
        panels: [belly, floor],
        zones: [
          zone('Z', [
            [0, -400, -300],
            [4000, 400, 0],
          ]),
        ],
      })?.inReach,
    ).toBe(true);
  });

  it('takes the facing from the panel it is set in where it says none, and says so', () => {
    const { facing: _, ...silent } = panel;
    const figures = look({ panels: [belly, silent], nodes: [node('N', [1000, 0, 100])] });
    expect(figures.nodes[0]?.inReach).toBe(true);
    expect(figures.assumptions.join('\n')).toContain('AP: no facing recorded');
  });
});

describe('what stands in the way', () => {
  it('a closed sheet over the whole trough blocks, and is named', () => {
    const lid = levelPanel('LID', [2000, 0, 60], [4000, 800], { panelKind: 'interior' });
    const found = reachOf([1000, 0, 300], { panels: [belly, panel, lid] });
    expect(found?.panels[0]?.blockedBy).toEqual(['LID']);
    expect(found?.inReach).toBe(false);
  });

  it('a sheet is passed where it has a hole', () => {
    const hole: Vec3[] = [
      [900, -100, 60],
      [1100, -100, 60],
      [1100, 100, 60],
      [900, 100, 60],
    ];
    const lid = levelPanel('LID', [2000, 0, 60], [4000, 800], { panelKind: 'interior', holes: [hole] });
    expect(reachOf([1000, 0, 300], { panels: [belly, panel, lid] })?.inReach).toBe(true);
  });

  it('a node inside a tube is blocked by its wall, unless the way comes in by the open end', () => {
    const across = lineMember('CB', 'TUBE', [1000, -400, 200], [1000, 400, 200]);
    expect(reachOf([1000, 0, 200], { members: [across] })?.panels[0]?.blockedBy).toEqual(['CB']);
    const upright = lineMember('POST', 'TUBE', [1000, 0, 100], [1000, 0, 600]);
    expect(reachOf([1000, 0, 300], { members: [upright] })?.inReach).toBe(true);
  });

  it('a node on the far face of a beam is reached around it from another place of the opening', () => {
    const beam = lineMember('CB', 'TUBE', [1000, -400, 200], [1000, 400, 200]);
    const found = reachOf([1040, 0, 330], { members: [beam] });
    expect(found?.inReach).toBe(true);
    expect(found?.panels[0]?.distanceMm).toBeGreaterThan(330);
  });

  it('a node that lies on a member is not blocked by it', () => {
    const beam = lineMember('CB', 'TUBE', [1000, -400, 200], [1000, 400, 200]);
    expect(reachOf([1000, 0, 150], { members: [beam] })?.inReach).toBe(true);
  });

  it('a component with a size blocks; what it holds is part of it', () => {
    const box = component('PUMP', [1000, 0, 150], [600, 700, 100]);
    expect(reachOf([1000, 0, 300], { components: [box] })?.panels[0]?.blockedBy).toEqual(['PUMP']);
    expect(reachOf([1000, 0, 150], { components: [box] })?.inReach).toBe(true);
    expect(reachOf([1000, 0, 300], { components: [component('PUMP', [1000, 0, 150])] })?.inReach).toBe(true);
  });

  it('another access panel is closed', () => {
    const inner = accessPanel('AP-IN', [1000, 0, 80], [500, 700], { facing: 'down' });
    const found = reachOf([1000, 0, 300], { panels: [belly, panel, inner] });
    expect(found?.panels.find((one) => one.panel === 'AP')?.blockedBy).toEqual(['AP-IN']);
    expect(found?.panels[0]?.panel).toBe('AP-IN');
  });
});

describe('a hand is thicker than a line', () => {
  /** Two upright sheets with a slot of some width between them, right above the opening. */
  const slot = (widthMm: number): Partial<Model['shell']> => ({
    members: [-1, 1].map((side) =>
      lineMember(
        `S${side}`,
        'BAR',
        [1000 + side * (widthMm / 2 + 200), -400, 200],
        [1000 + side * (widthMm / 2 + 200), 400, 200],
      ),
    ),
  });
  const bars: Partial<Model['library']> = {
    sections: new Map([['BAR', section('BAR', { shape: 'flat bar', depthMm: 100, widthMm: 400 })]]),
  };
  const through = (widthMm: number) =>
    access(buildModel({ zones: [trough], panels: [belly, panel], nodes: [node('N', [1000, 0, 400])], ...slot(widthMm) }, bars))
      .nodes[0];

  it('needs a slot as wide as the opening for a flat hand, RCH-M01: 55 mm', () => {
    expect(through(57)?.inReach).toBe(true);
    expect(through(53)?.inReach).toBe(false);
    expect(through(53)?.panels[0]?.blockedBy).toEqual(['S-1', 'S1']);
  });

  it('but for the last of the way, where a fingertip is enough: RCH-A04, 63 mm', () => {
    const near = (z: number) =>
      access(buildModel({ zones: [trough], panels: [belly, panel], nodes: [node('N', [1000, 0, z])], ...slot(20) }, bars))
        .nodes[0];
    // The bars begin at 150, their edges 10 from the way: the round end of a hand straight up stops √(27.5² − 10²) = 25.6 before them; a slanted one gains little.
    expect(near(150 - 25.6 + 63 - 0.5)?.inReach).toBe(true);
    expect(near(150 - 25.6 + 63 + 8)?.inReach).toBe(false);
  });

  it('reaches along a wall a thing that is close to it', () => {
    const wall = levelPanel('W', [1010, 0, 0], [0, 0], {
      outline: [
        [1010, -400, 0],
        [1010, 400, 0],
        [1010, 400, 600],
        [1010, -400, 600],
      ],
    });
    expect(reachOf([1000, 0, 300], { panels: [belly, panel, wall] })?.inReach).toBe(true);
  });

  it('judges the reach as if the place lay further off by its tolerance, and says so', () => {
    const at = (toleranceMm: number) => look({ nodes: [node('N', [1000, 0, 660], { toleranceMm })] }).nodes[0]?.panels[0];
    expect(at(15)).toMatchObject({ distanceMm: 660, reach: 'arm', toleranceMm: 15 });
    expect(at(16)).toMatchObject({ distanceMm: 660, reach: 'beyond', toleranceMm: 16 });
  });

  it('is told with a tool and with both hands: RCH-P2, RCH-M09', () => {
    const at = (z: number, opening: readonly [number, number]) =>
      look({ panels: [belly, accessPanel('AP', [1000, 0, 0], opening, { of: 'BP' })], nodes: [node('N', [1000, 0, z])] }).nodes[0]
        ?.panels[0];
    expect(at(560, [300, 250])).toMatchObject({ tool: true });
    expect(at(562, [300, 250])?.tool).toBeUndefined();
    // RCH-M26: at 400 deep the width wanted is 300
    expect(at(400, [300, 125])).toMatchObject({ twoHands: true });
    expect(at(400, [299, 125])?.twoHands).toBeUndefined();
    expect(at(400, [300, 124])?.twoHands).toBeUndefined();
    // RCH-M10: two arms to the shoulders
    expect(at(600, [500, 125])).toMatchObject({ twoHands: true });
  });
});

/** The same shell seen in a mirror: left for right. */
const mirrored = ([x, y, z]: Vec3): Vec3 => [x, -y, z];
const spots = fc.array(
  fc.tuple(fc.integer({ min: 200, max: 3800 }), fc.integer({ min: -380, max: 380 }), fc.integer({ min: 20, max: 580 })),
  { minLength: 1, maxLength: 6 },
);

describe('whatever stands in the trough', () => {
  const crossed = (turn: (at: Vec3) => Vec3) =>
    [600, 950, 1400].map((x, i) => lineMember(`CB${i}`, 'TUBE', turn([x, -400, 120 + 90 * i]), turn([x, 300, 120 + 90 * i])));
  const coverage = (places: readonly Vec3[], more: Partial<Model['shell']> = {}, turn = (at: Vec3): Vec3 => at) => {
    const [a, b] = [node('A', turn([100, 90, 200])), node('B', turn([3900, 90, 200]))];
    return look({
      members: crossed(turn),
      nodes: [a, b, ...places.map((at, i) => node(`N${i}`, turn(at)))],
      runs: [run('R', a, b, places.map(turn))],
      ...more,
    });
  };

  it('one access panel more never lowers what is in reach', () => {
    fc.assert(
      fc.property(spots, fc.integer({ min: 300, max: 3700 }), (places, x) => {
        const before = coverage(places).coverage;
        const after = coverage(places, {
          panels: [belly, panel, accessPanel('MORE', [x, 100, 0], [260, 200], { of: 'BP' })],
        }).coverage;
        expect(after.nodesInReach).toBeGreaterThanOrEqual(before.nodesInReach);
        expect(after.runLengthInReachMm).toBeGreaterThanOrEqual(before.runLengthInReachMm - 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('is found by the index as by a look at everything', () => {
    const from = fc.tuple(fc.integer({ min: 870, max: 1130 }), fc.integer({ min: -90, max: 90 }));
    fc.assert(
      fc.property(spots, from, ([target], [x, y]) => {
        const model = buildModel(
          { members: crossed((at) => at), panels: [belly, panel, levelPanel('LID', [900, 0, 250], [900, 500])] },
          library,
        );
        const opening = panelOpening(panel, belly, [0, 0, 300]);
        if (!opening || !target) throw new Error('the panel has an area');
        const way = { start: [x, y, 0] as Vec3, hand: target, target, radiusMm: 27.5 };
        const [index, all] = [obstacles(model), obstacles(model, Infinity)].map((one) => [...one.inTheWay(way, opening)].sort());
        expect(index).toEqual(all);
        expect(obstacles(model).isClear(way, opening)).toBe(all?.length === 0);
      }),
    );
  });

  it('the mirrored shell gets the mirrored answer', () => {
    fc.assert(
      fc.property(spots, (places) => {
        const told = (figures: ReturnType<typeof look>) =>
          figures.nodes.map(({ id, panels, inReach }) => [
            id,
            inReach,
            panels[0]?.panel,
            Math.round((panels[0]?.distanceMm ?? 0) * 1e6),
          ]);
        expect(told(coverage(places, {}, mirrored))).toEqual(told(coverage(places)));
      }),
      { numRuns: 40 },
    );
  });
});

describe('open and named', () => {
  it('a node in no concealed zone needs no panel, unless its record names one', () => {
    const { nodes } = look({
      panels: [],
      nodes: [node('OUT', [1000, 0, 900]), node('NAMED', [1000, 0, 900], { panel: 'AP' }), node('IN', [1000, 0, 100])],
    });
    expect(nodes.map((one) => one.open)).toEqual([true, false, false]);
  });

  it('keeps the panel that the record names, however far', () => {
    const { nodes } = look({ nodes: [node('FAR', [3900, 0, 100], { panel: 'AP' })] });
    expect(nodes[0]?.panels).toMatchObject([{ panel: 'AP', distanceMm: Math.hypot(2750, 100), reach: 'beyond', blockedBy: [] }]);
  });
});

describe('runs', () => {
  const start = node('A', [0, 0, 100]);
  const end = node('B', [4000, 0, 100]);

  it('are in reach as far as an arm goes to both sides of the opening', () => {
    const figures = look({ nodes: [start, end], runs: [run('R', start, end)] });
    // √(675² − 100²) = 667.55 beyond each rim of the 300 mm opening: 1635.1 mm of way, in pieces of 100 mm
    expect(figures.runs[0]?.inReachMm).toBeGreaterThan(1500);
    expect(figures.runs[0]?.inReachMm).toBeLessThan(1740);
    expect(figures.runs[0]?.lengthMm).toBeCloseTo(4000, 6);
    expect(figures.coverage.runLengthInReachMm).toBe(figures.runs[0]?.inReachMm);
  });

  it('count as in reach where they lie open', () => {
    const figures = look({
      panels: [],
      zones: [
        zone('HALF', [
          [0, -400, 0],
          [2000, 400, 600],
        ]),
      ],
      nodes: [start, end],
      runs: [run('R', start, end)],
    });
    expect(figures.runs[0]?.inReachMm).toBeCloseTo(2000, 6);
  });

  it('are followed through the fewest panels, in order along the way', () => {
    const at = (id: string, x: number) => accessPanel(id, [x, 0, 0], [300, 250], { of: 'BP' });
    // 600 and 3400 lay the ends open, 2000 the middle; 1400 is needless.
    const panels = [belly, at('P4', 3400), at('P2', 1400), at('P1', 600), at('P3', 2000)];
    const figures = look({ panels, nodes: [start, end], runs: [run('R', start, end)] });
    expect(figures.runs[0]?.follow).toEqual(['P1', 'P3', 'P4']);
  });
});

describe('behind a panel', () => {
  it('lists nodes, runs, members, components and zones, nearest first, with their nearest place', () => {
    const [a, b] = [node('A', [0, 0, 250]), node('B', [4000, 0, 250])];
    const figures = look({
      nodes: [a, b, node('N', [1000, 50, 120])],
      runs: [run('R', a, b)],
      members: [lineMember('M', 'TUBE', [800, -400, 550], [800, 400, 550])],
      components: [component('C', [1300, 0, 300], [100, 100, 100])],
    });
    const items = figures.behind.AP ?? [];
    expect(items.map((item) => [item.id, item.kind])).toEqual([
      ['TROUGH', 'zone'],
      ['N', 'node'],
      ['R', 'run'],
      ['C', 'component'],
      ['M', 'member'],
    ]);
    const by = new Map(items.map((item) => [item.id, item]));
    expect(by.get('N')?.distanceMm).toBeCloseTo(120, 6);
    expect(by.get('R')?.distanceMm).toBeCloseTo(250, 6);
    // C begins 100 mm beyond the rim at 1150 and 250 mm up; M's underside is 500 up and within the opening's length at x 850.
    expect(by.get('C')?.distanceMm).toBeCloseTo(Math.hypot(100, 250), 3);
    expect(by.get('M')?.distanceMm).toBeCloseTo(500, 3);
    expect([...items].sort((x, y) => x.distanceMm - y.distanceMm)).toEqual(items);
  });

  it('leaves out what is outside the panel or further than an arm', () => {
    const figures = look({ nodes: [node('UNDER', [1000, 0, -50]), node('FAR', [1000, 0, 676]), node('JUST', [1000, 0, 675])] });
    expect(figures.behind.AP?.map((item) => item.id)).toEqual(['TROUGH', 'JUST']);
  });
});
