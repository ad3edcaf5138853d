import { describe, expect, it } from 'vitest';
import { coverageOf, digestOf } from '../../src/closeout/coverage.js';
import { loadStore } from '../../src/model/load.js';
import { placeAt } from '../../src/model/place-at.js';

const IN = 25.4;

/** A floor rail (6 in deep, 2-1/2 in wide, middle at z 3 in), a post on it, a skin on the left, and what hangs on them. */
function load(nodes: string, more: Readonly<Record<string, string>> = {}) {
  const files = new Map([
    ['shop.yaml', 'shop: {name: S}\n'],
    ['library/stages.yaml', '- {id: gas, name: Gas}\n'],
    ['library/materials.yaml', '- {id: A, kind: aluminium, density: 2700 kg/m3}\n'],
    ['library/sections.yaml', '- {id: T, shape: rectangular tube, depth: 6 in, width: 2-1/2 in, wall: 1/4 in}\n'],
    ['shells/T-1/shell.yaml', 'shell: T-1\nchassis: {axles: [{id: steer, x: 0 in}, {id: drive, x: 250 in}]}\n'],
    [
      'shells/T-1/members.yaml',
      '- {id: FB-L, section: T, alloy: A, from: [0 in, -40 in, 3 in], to: [300 in, -40 in, 3 in]}\n' +
        '- {id: P-06, section: T, alloy: A, from: [100 in, -45 in, 6 in], to: [100 in, -45 in, 90 in]}\n',
    ],
    [
      'shells/T-1/panels.yaml',
      '- {id: SK-L, kind: skin, thickness: 0.1 in, outline: [[0 in, -50 in, 0 in], [300 in, -50 in, 0 in], [300 in, -50 in, 90 in], [0 in, -50 in, 90 in]]}\n',
    ],
    ['shells/T-1/services/gas.yaml', `service: Gas\nmedium: gas\nnodes:\n${nodes}`],
    ...Object.entries(more),
  ]);
  const loaded = loadStore({ root: '', files, photos: new Map() }).shells.get('T-1');
  if (!loaded) throw new Error('not read');
  return loaded;
}
const node = (id: string, at: string, more = ''): string => `  - {id: ${id}, kind: valve, at: ${at}, stage: gas${more}}\n`;
const inches = (at: readonly number[] | undefined): readonly number[] | undefined =>
  at?.map((mm) => Number((mm / IN).toFixed(6)));
const placed = (nodes: string, id = 'V') => inches(load(nodes).model.shell.nodes.find((one) => one.id === id)?.at);

describe('a place told as a tape tells it', () => {
  // By hand: the post's depth (6 in) points to +x, so its faces stand at x 97 and 103 in; the rail's top is at z 6 in; the skin's inner
  // face at y -49.95 in.
  it('is measured from the face that looks the way the tape runs', () => {
    expect(placed(node('V', '{x: 24 in aft of P-06, y: 1 in inboard of SK-L, z: 14 in above FB-L}'))).toEqual([127, -48.95, 20]);
    expect(placed(node('V', '{x: 24 in forward of P-06, y: 1 in outboard of SK-L, z: 1 in below FB-L}'))).toEqual([
      73, -51.05, -1,
    ]);
    expect(placed(node('V', '{x: 2 in aft of drive, y: 2 in right of P-06, z: 40 in}'))).toEqual([252, -41.75, 40]);
  });

  it('is measured from the middle where it says so, and stands on it', () => {
    expect(placed(node('V', '{x: on P-06, y: 40 in, z: 3 in below centre of FB-L}'))).toEqual([100, 40, 0]);
    expect(placed(node('V', '{x: 1 in aft of center of P-06, y: on SK-L, z: 0 in}'))).toEqual([101, -50, 0]);
  });

  it('may stand in one line or in a list', () => {
    const wanted = [127, -50, 20];
    expect(placed(node('V', '"24 in aft of P-06, on SK-L, 14 in above FB-L"'))).toEqual(wanted);
    expect(placed(node('V', '[24 in aft of P-06, on SK-L, 14 in above FB-L]'))).toEqual(wanted);
  });

  it('follows a chain, in whatever order the records stand', () => {
    const chain = node('V', '{x: 1 in aft of U, y: on U, z: on U}') + node('U', '{x: 24 in aft of P-06, y: on SK-L, z: 10 in}');
    expect(placed(chain)).toEqual([128, -50, 10]);
  });

  it('is held to a lid itself, not to the sheet that it is set in', () => {
    const corners = (y: string, low: string, high: string): string =>
      `[[10 in, ${y}, ${low}], [20 in, ${y}, ${low}], [20 in, ${y}, ${high}], [10 in, ${y}, ${high}]]`;
    const panels = {
      'shells/T-1/panels.yaml':
        `- {id: SK-L, kind: skin, thickness: 0.1 in, outline: ${corners('-50 in', '0 in', '90 in')}}\n` +
        `- {id: AP, kind: access, of: SK-L, thickness: 0.1 in, outline: ${corners('-48 in', '20 in', '40 in')}}\n`,
    };
    const { shell } = load(node('V', '{x: 15 in, y: on AP, z: on AP}'), panels).model;
    expect(inches(shell.nodes[0]?.at)).toEqual([15, -48, 30]);
  });

  it('moves with what it hangs on, and the sign-off that covers it lapses', () => {
    const nodes =
      node('V', '{x: 1 in aft of U, y: 0 in, z: 0 in}') +
      node('U', '{x: 24 in aft of P-06, y: 0 in, z: 10 in}', '').replace(', stage: gas', '');
    const rail = '- {id: FB-L, section: T, alloy: A, from: [0 in, -40 in, 3 in], to: [300 in, -40 in, 3 in]}\n';
    const moved = {
      'shells/T-1/members.yaml': `${rail}- {id: P-06, section: T, alloy: A, from: [110 in, -45 in, 6 in], to: [110 in, -45 in, 90 in]}\n`,
    };
    const [before, after] = [load(nodes).model, load(nodes, moved).model];
    expect(inches(after.shell.nodes[0]?.at)).toEqual([138, 0, 0]);
    const digest = (model: typeof before): string => digestOf(coverageOf(model, 'gas', '2026-01-01'));
    expect(digest(after)).not.toBe(digest(before));
    expect([...coverageOf(before, 'gas', '2026-01-01').keys()]).toContain('member P-06');
  });

  it('is known as well as the tape and what it hangs on, by the root of the sum of squares', () => {
    const { model } = load(
      node('V', '{x: 3 in aft of U, y: 0 in, z: 0 in}') + node('U', '{x: 24 in aft of P-06, y: 0 in, z: 0 in}'),
    );
    // 1/8 in for each tape, no doubt of the post: √(1/8² + 1/8²) in.
    const [v, u] = ['V', 'U'].map((id) => model.shell.nodes.find((one) => one.id === id)?.toleranceMm ?? 0);
    expect(u).toBeCloseTo(IN / 8, 9);
    expect(v).toBeCloseTo((IN / 8) * Math.SQRT2, 9);
    expect(model.shell.taped?.get('V')?.on).toEqual(['U']);
  });

  it('is known no better than the shop says of it, where that is worse than the tape', () => {
    const tolerance = (typed: string) =>
      load(node('V', '{x: 24 in aft of P-06, y: 0 in, z: 0 in}', `, tolerance: ${typed}`)).model.shell.nodes[0]?.toleranceMm;
    expect(tolerance('1 in')).toBeCloseTo(IN, 9);
    expect(tolerance('1/16 in')).toBeCloseTo(IN / 8, 9);
  });

  it('takes the face of the box where its line meets nothing, and says so where that may be another', () => {
    const square = load(node('V', '{x: 3 in aft of P-06, y: 80 in, z: 20 in}')).model;
    expect(inches(square.shell.nodes[0]?.at)).toEqual([106, 80, 20]);
    expect(square.shell.taped?.get('V')?.said).toEqual([]);
    const sloped = {
      'shells/T-1/members.yaml':
        '- {id: P-06, section: T, alloy: A, from: [100 in, -45 in, 6 in], to: [130 in, -45 in, 90 in]}\n',
    };
    const { shell } = load(node('V', '{x: 3 in aft of P-06, y: 80 in, z: 20 in}'), sloped).model;
    expect(shell.taped?.get('V')?.said).toEqual(['No line along x meets P-06 there: measured from the face of its box.']);
    // It leans by 30 in: the box's face is about 15 in from the post's at half its height, half of which joins.
    expect((shell.nodes[0]?.toleranceMm ?? 0) / IN).toBeGreaterThan(6);
    expect((shell.nodes[0]?.toleranceMm ?? 0) / IN).toBeLessThan(9);
  });
});

describe('a place that is asked for', () => {
  it('is found as one that is recorded', () => {
    const { model } = load(node('V', '{x: 24 in aft of P-06, y: on SK-L, z: 14 in above FB-L}'));
    const found = placeAt('24 in aft of P-06, on SK-L, 14 in above FB-L', model);
    expect(found).toMatchObject({ at: model.shell.nodes[0]?.at, said: [] });
    expect(placeAt('1 in aft of V, 2 in aft of drive, 0 in', model)).toContain('expected `left of`, `right of`');
    expect(placeAt('1 in aft of P-60, 0 in, 0 in', model)).toContain('`P-06`');
    // The drive axle stands at x 250 in, and nowhere else.
    expect(inches((placeAt('24 in aft of drive, 0 in, 0 in', model) as { readonly at: readonly number[] }).at)).toEqual([
      274, 0, 0,
    ]);
    expect(placeAt('0 in, 3 in left of drive, 0 in', model)).toBe(
      'Axle `drive` has a place on x only, expected a length or something else for y',
    );
    expect(placeAt('1 m, -2 m, 0 m', model)).toEqual({ at: [1000, -2000, 0], uncertaintyMm: 0, said: [] });
  });
});

describe('a place that cannot be known', () => {
  const told = (nodes: string) => load(nodes).findings.map(({ message, place }) => `${place.line} ${message}`);

  it('is told at its line, and its record is left out', () => {
    expect(told(node('V', '{x: 1 in aft of U, y: 0 in, z: 0 in}') + node('U', '{x: 1 in aft of V, y: 0 in, z: 0 in}'))).toEqual([
      '5 The place of `V` hangs on `U`, which hangs on `V`, expected one of them to be known without the others: type it from the datum',
    ]);
    expect(placed(node('V', '{x: 1 in aft of V, y: 0 in, z: 0 in}'))).toBeUndefined();
  });

  it('is told where it is to be inboard of what stands on the center line', () => {
    const keel = {
      'shells/T-1/members.yaml': '- {id: KEEL, section: T, alloy: A, from: [0 in, 0 in, 3 in], to: [300 in, 0 in, 3 in]}\n',
    };
    const { findings, model } = load(node('V', '{x: 0 in, y: 1 in inboard of KEEL, z: 0 in}'), keel);
    expect(findings.map(({ message }) => message)).toEqual([
      '`KEEL` is on the center line, which has no inboard side, expected `left of` or `right of`',
    ]);
    expect(model.shell.nodes).toEqual([]);
  });

  it('names the nearest id', () => {
    const [message] = told(node('V', '{x: 1 in aft of P-O6, y: 0 in, z: 0 in}'));
    expect(message).toContain('4 Found `P-O6` for `x`, which is nowhere in the records');
    expect(message).toContain('`P-06`');
  });

  it.each([
    ['{x: 1 in above P-06, y: 0 in, z: 0 in}', 'Found `above` for `x` in `at`, expected `aft of`, `forward of` or `on`'],
    ['{x: 1 in, y: 0 in}', 'Found no `z` for `at`, expected `x`, `y` and `z`, each a length or as'],
    ['"1,200 mm aft of P-06, 0 in, 0 in"', 'expected x, y and z with a comma between, and no comma within a number'],
    ['{x: 0 in, y: 1 in above drive, z: 0 in}', 'Found `above` for `y`'],
    ['{x: 0 in, y: 0 in, z: 1 in above drive}', 'Axle `drive` has a place on x only'],
    ['{x: aft of P-06, y: 0 in, z: 0 in}', 'expected `24 in aft of P-L-06`'],
  ])('is told: %s', (at, message) => {
    const all = told(node('V', at));
    expect(all).toHaveLength(1);
    expect(all[0]).toContain(message);
  });
});
