import { describe, expect, it } from 'vitest';
import { access } from '../../src/compute/access/index.js';
import { near } from '../../src/query/lookup/index.js';
import { judged } from './store.js';

describe('the bent bow under the front cap of the demo shell', () => {
  it('is as long and heavy as worked by hand, and joined at both ends', () => {
    const { model, figures } = judged('OV-021').assessment;
    const bow = figures.takeOff.members.find(({ id }) => id === 'BW-F');
    // 2 × (5.4375 − 4) + (86 − 8) + 2 × 4 π/2 = 93.4414 in; 1 − 0.75² = 0.4375 in² of 2700 kg/m³ over the 93.4375 in that were cut.
    expect((bow?.lineLengthMm ?? 0) / 25.4).toBeCloseTo(93.4414, 3);
    expect(bow?.massKg).toBeCloseTo(0.4375 * 93.4375 * 16.387064e-6 * model.library.materials.get('6061-T6')!.densityKgM3, 6);
    // Middle: (2.875 × 43.28125… ends at 44 and bends at 38.5625) worked along x: straights at 43.28125, arcs at 38.5625 + 4 − 8/π, back at 38.5625 in.
    const arcs = 4 * Math.PI;
    const x = (2.875 * 43.28125 + arcs * (42.5625 - 8 / Math.PI) + 78 * 38.5625) / (2.875 + arcs + 78);
    expect((bow?.centroid[0] ?? 0) / 25.4).toBeCloseTo(x, 4);
    expect(
      figures.joints.joints.filter(({ members }) => members.includes('BW-F')).map(({ members, welds }) => [members, welds]),
    ).toEqual([[['FT-F', 'BW-F'], ['W-0618']]]);
  });
});

describe('reach in the demo shell', () => {
  const { assessment } = judged('OV-021');
  const { model, figures } = assessment;

  it('has a person before every access panel, and a hand at every node', () => {
    const blocked = Object.entries(figures.access.approaches).filter(([, { clear }]) => !clear);
    expect(blocked).toEqual([]);
    expect(figures.access.coverage.nodesInReach).toBe(figures.access.coverage.nodes);
  });

  it('a tank 1-1/2 in (38 mm) under AP-14 blocks it', () => {
    const capacityM3 = 0.19;
    const half = (Math.cbrt(capacityM3) * 1000) / 2;
    const panel = model.shell.panels.find(({ id }) => id === 'AP-14') as (typeof model.shell.panels)[number];
    const [x, y, z] = panel.outline.reduce<[number, number, number]>(
      (sum, at) => [sum[0] + at[0] / 4, sum[1] + at[1] / 4, sum[2] + at[2] / 4],
      [0, 0, 0],
    );
    const tank = { id: 'SPARE', contents: 'water', capacityM3, at: [x, y, z - 38.1 - half] as const, densityKgM3: 1000 };
    const shell = { ...model.shell, tanks: [...model.shell.tanks, tank] };
    const found = access({ ...model, shell });
    expect(found.approaches['AP-14']).toMatchObject({ clear: false, from: 'under the coach' });
    expect(found.approaches['AP-14']?.blockedBy).toContain('SPARE');
    expect(found.nodes.find(({ id }) => id === 'AC-01/J1')?.panels.find((one) => one.panel === 'AP-14')?.approach?.clear).toBe(
      false,
    );
  });

  it('finds the tank in whose middle one asks, and the rail beside which one asks', () => {
    const fuel = model.shell.tanks.find(({ id }) => id === 'FUEL') as (typeof model.shell.tanks)[number];
    expect(near(assessment, fuel.at, 76)[0]).toMatchObject({ id: 'FUEL', kind: 'tank', distanceMm: 0 });
    expect(near(assessment, [3000, -450, -100], 76).map(({ id }) => id)).toContain('chassis rail left');
  });
});
