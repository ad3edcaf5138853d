import { describe, expect, it } from 'vitest';
import { access } from '../../../src/compute/access/index.js';
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
    expect(nodes[0]?.panels).toEqual([{ panel: 'AP', distanceMm: Math.hypot(2750, 100), reach: 'beyond', blockedBy: [] }]);
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
