import { describe, expect, it } from 'vitest';
import { access } from '../../src/compute/access/index.js';
import { near } from '../../src/query/lookup/index.js';
import { judged } from './store.js';

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
