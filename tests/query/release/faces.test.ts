import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeOff } from '../../../src/compute/takeoff/index.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import { faces } from '../../../src/query/release/index.js';
import type { Panel, Run } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';
import { node, run } from '../../support/services.js';

/** A coach far from the datum's origin: x 6000–9000, y −1700 to −100, z 400–2400. */
const LOW = [6000, -1700, 400] as const;
const HIGH = [9000, -100, 2400] as const;

/** A sheet across the whole coach at one coordinate of one axis. */
function across(id: string, axis: 0 | 1 | 2, at: number, more: Partial<Panel> = {}): Panel {
  const [p, q] = ([0, 1, 2] as const).filter((k) => k !== axis) as [0 | 1 | 2, 0 | 1 | 2];
  const corner = (a: number, b: number): Vec3 => {
    const place: [number, number, number] = [0, 0, 0];
    [place[axis], place[p], place[q]] = [at, a, b];
    return place;
  };
  const outline = [corner(LOW[p], LOW[q]), corner(HIGH[p], LOW[q]), corner(HIGH[p], HIGH[q]), corner(LOW[p], HIGH[q])];
  return { ...record(id), panelKind: 'skin', outline, holes: [], thicknessMm: 2, ...more };
}
const SKINS = [
  across('SK-F', 0, LOW[0]),
  across('SK-B', 0, HIGH[0]),
  across('SK-L', 1, LOW[1]),
  across('SK-R', 1, HIGH[1]),
  across('RF', 2, HIGH[2], { panelKind: 'roof' }),
  across('BP', 2, LOW[2], { panelKind: 'belly' }),
];
const along = (id: string, from: Vec3, to: Vec3, more: Partial<Run> = {}): Run =>
  run(id, node('A', from), node('B', to), [], more);
const seen = (shell: Partial<Model['shell']>) => {
  const model = buildModel({ panels: SKINS, ...shell });
  return faces(model, takeOff(model));
};
const of = (name: string, runs: readonly Run[], panels: readonly Panel[] = SKINS) =>
  seen({ panels, runs }).find((face) => face.name === name)?.runs ?? [];

describe('the sides of a coach', () => {
  it('are named by where they stand and whether they are inside, wherever the coach is measured from', () => {
    const linings = [
      across('LN-L', 1, LOW[1] + 60, { panelKind: 'interior' }),
      across('LN-R', 1, HIGH[1] - 60, { panelKind: 'interior' }),
      across('LN-F', 0, LOW[0] + 60, { panelKind: 'interior' }),
      across('LN-B', 0, HIGH[0] - 60, { panelKind: 'interior' }),
      across('CL', 2, HIGH[2] - 60, { panelKind: 'interior' }),
      across('FL', 2, LOW[2] + 60, { panelKind: 'interior' }),
      across('SK-U', 2, LOW[2] + 5),
      across('BP-2', 0, LOW[0] + 500, { panelKind: 'belly' }),
      across('SK-L2', 1, LOW[1] + 1),
    ];
    const named = Object.fromEntries(
      seen({ panels: [...SKINS, ...linings] }).map(({ name, panels }) => [name, panels.join(' ')]),
    );
    expect(named).toEqual({
      'front outside': 'SK-F',
      'rear outside': 'SK-B',
      'left outside': 'SK-L SK-L2',
      'right outside': 'SK-R',
      roof: 'RF',
      underside: 'BP SK-U BP-2',
      'left lining': 'LN-L',
      'right lining': 'LN-R',
      'front lining': 'LN-F',
      'rear lining': 'LN-B',
      ceiling: 'CL',
      'floor inside': 'FL',
    });
  });

  it('are none without a sheet that has an area; an access panel is no side', () => {
    expect(seen({ panels: [] })).toEqual([]);
    expect(seen({ panels: [across('AP', 1, LOW[1], { panelKind: 'access' })] })).toEqual([]);
    expect(seen({ panels: [across('LINE', 1, LOW[1], { outline: [LOW, HIGH] })] })).toEqual([]);
    const [face] = seen({ panels: [across('SK', 1, LOW[1]), across('AP', 1, LOW[1], { panelKind: 'access' })] });
    expect(face?.panels).toEqual(['SK']);
  });
});

describe('what runs behind a side', () => {
  /** A run along the coach, so far behind the left skin’s middle plane. */
  const behind = (id: string, mm: number, more: Partial<Run> = {}): Run =>
    along(id, [6200, LOW[1] + mm, 1000], [8800, LOW[1] + mm, 1000], { toleranceMm: 10, ...more });
  const left = (...runs: readonly Run[]) => of('left outside', runs).map(({ id, depthMm }) => `${id} ${depthMm.toFixed(3)}`);

  it('is told from its outside, less its tolerance, to 150 mm and no deeper', () => {
    // Half the sheet 1 and tolerance 10: 161 behind the middle plane is 150 deep.
    expect(left(behind('R', 161))).toEqual(['R 150.000']);
    expect(left(behind('R', 161.1))).toEqual([]);
    expect(left(behind('R', 40))).toEqual(['R 29.000']);
    expect(left(behind('R', 40, { toleranceMm: 0 }))).toEqual(['R 39.000']);
    // 25 where none is on record
    expect(left(behind('R', 176, { toleranceMm: undefined }))).toEqual(['R 150.000']);
    expect(left(behind('R', 5))).toEqual(['R 0.000']);
    const thick = [across('SK-L', 1, LOW[1], { thicknessMm: 80 }), ...SKINS.slice(3)];
    expect(of('left outside', [behind('R', 200)], thick)[0]?.depthMm).toBeCloseTo(150, 9);
    // 1/2 in PEX is 15.875 outside (ASTM F876, from memory)
    const pex = { size: { text: '1/2 in PEX', nominalMm: 12.7, material: 'PEX' }, medium: 'water' } as const;
    expect(left(behind('R', 100, pex))).toEqual([`R ${(100 - 1 - 10 - 15.875 / 2).toFixed(3)}`]);
    expect(left(behind('R', 168, pex))).toEqual([`R ${(168 - 1 - 10 - 15.875 / 2).toFixed(3)}`]);
  });

  it('is in order of depth, then by name; each run once, at its shallowest place', () => {
    expect(left(behind('B', 60), behind('A', 60), behind('C', 30), behind('D', 90))).toEqual([
      'C 19.000',
      'A 49.000',
      'B 49.000',
      'D 79.000',
    ]);
    const slanting = along('S', [6200, LOW[1] + 120, 1000], [8800, LOW[1] + 20, 1000], { toleranceMm: 10, medium: 'gas' });
    const [found, ...more] = of('left outside', [slanting]);
    expect(more).toEqual([]);
    expect(found).toEqual({
      id: 'S',
      medium: 'gas',
      panel: 'SK-L',
      depthMm: expect.closeTo(9, 9),
      at: [8800, expect.closeTo(LOW[1] + 20, 9), 1000],
      toleranceMm: 10,
    });
    const turned = along('S', [8800, LOW[1] + 20, 1000], [6200, LOW[1] + 120, 1000], { toleranceMm: 10 });
    expect(of('left outside', [turned])[0]?.depthMm).toBeCloseTo(9, 9);
    expect(of('left outside', [behind('R', 60, { toleranceMm: undefined })])[0]).not.toHaveProperty('toleranceMm');
  });

  it('is behind the nearest of the sheets of a side', () => {
    const half = (id: string, from: number, to: number): Panel => {
      const whole = across(id, 1, LOW[1]);
      return { ...whole, outline: whole.outline.map(([x, y, z]) => [x === LOW[0] ? from : to, y, z]) };
    };
    const panels = [half('P-1', 6000, 7400), half('P-2', 7600, 9000)];
    const towards = along('S', [6200, LOW[1] + 100, 1000], [8800, LOW[1] + 40, 1000], { toleranceMm: 10 });
    expect(of('left outside', [towards], panels).map(({ panel }) => panel)).toEqual(['P-2']);
    // Beside both, over the gap of 200: 100 from each, and 3–4–5 on top
    const between = along('S', [7500, LOW[1] + 75, 1000], [7500, LOW[1] + 75, 1100], { toleranceMm: 0 });
    expect(of('left outside', [between], panels)[0]).toMatchObject({ panel: 'P-1', depthMm: expect.closeTo(125 - 1, 9) });
  });

  it('is as shallow as a run that comes square to the sheet ends, or goes through it', () => {
    const square = along('S', [7000, LOW[1] + 400, 1000], [7000, LOW[1] + 31, 1000], { toleranceMm: 10 });
    expect(of('left outside', [square])[0]?.depthMm).toBeCloseTo(20, 9);
    const through = along('S', [7000, LOW[1] + 400, 1000], [7000, LOW[1] - 333, 1000], { toleranceMm: 0 });
    expect(of('left outside', [through])[0]?.depthMm).toBe(0);
  });

  it('is left out where a run has no path, and where it runs elsewhere', () => {
    expect(of('left outside', [{ ...behind('R', 40), path: [] }])).toEqual([]);
    expect(of('right outside', [behind('R', 40)])).toEqual([]);
    // 140 behind the sheet and 140 over its upper edge: 198 from it
    const over = along('R', [7000, LOW[1] + 140, HIGH[2] + 140], [8000, LOW[1] + 140, HIGH[2] + 140], { toleranceMm: 0 });
    expect(of('left outside', [over])).toEqual([]);
  });

  it('of any straight run over the sheet is as deep as its nearer end', () => {
    const spot = fc.tuple(
      fc.integer({ min: LOW[0], max: HIGH[0] }),
      fc.integer({ min: LOW[1] + 1, max: LOW[1] + 400 }),
      fc.integer({ min: LOW[2], max: HIGH[2] }),
    );
    fc.assert(
      fc.property(spot, spot, fc.nat(30), (from, to, toleranceMm) => {
        const [found] = of('left outside', [along('R', from, to, { toleranceMm })]);
        // Over the whole sheet the distance from it is the distance along y: least at one of the ends.
        const least = Math.max(0, Math.min(from[1], to[1]) - LOW[1] - 1 - toleranceMm);
        if (least > 150) expect(found).toBeUndefined();
        else expect(found?.depthMm).toBeCloseTo(least, 6);
      }),
    );
  });
});
