import { describe, expect, it } from 'vitest';
import { surfaces } from '../../src/compute/access/surfaces.js';
import type { Vec3 } from '../../src/geometry/vector.js';
import { isPlaced, placedNodes, unplaced } from '../../src/model/placed.js';
import { placesOf } from '../../src/query/place.js';
import { extentOf, placeWord } from '../../src/query/place-words.js';
import type { Opening, Panel, Shell } from '../../src/records/index.js';
import { buildModel, record } from '../support/build.js';
import { levelPanel, lineMember, node, run } from '../support/services.js';

/** A body of 6 × 2.5 m, skin from 0 to 2.5 m over the rail; a room of 5.8 × 2.2 m in it from 300 mm to 2.3 m. */
const upright = (id: string, y: number, more: Partial<Panel>): Panel => ({
  ...record(id),
  panelKind: 'skin',
  outline: [
    [0, y, 0],
    [6000, y, 0],
    [6000, y, 2500],
    [0, y, 2500],
  ],
  holes: [],
  ...more,
});
const inside = { panelKind: 'interior' } as const;
const skins = [
  upright('SK-L', -1250, { facing: 'left' }),
  upright('SK-R', 1250, { facing: 'right' }),
  levelPanel('RF', [3000, 0, 2500], [6000, 2500], { panelKind: 'roof' }),
];
const linings = [
  levelPanel('FL', [3000, 0, 300], [5800, 2200], { ...inside, facing: 'up' }),
  levelPanel('CL', [3000, 0, 2300], [5800, 2200], { ...inside, facing: 'down' }),
];
const frame = { axles: [], frame: { railTopAboveGroundMm: 1000 } } as unknown as Shell['chassis'];
const words = (at: Vec3, shell: Partial<Shell> = { panels: [...skins, ...linings] }): string | undefined =>
  placesOf(buildModel({ chassis: frame, ...shell, nodes: [node('N', at)] }))('N');
const region = (at: Vec3, shell?: Partial<Shell>): string | undefined =>
  words(at, shell)?.replace(/, [\d,]+ mm (?:above|below) the .*$/u, '');

describe('the region of a place', () => {
  it.each<[Vec3, string]>([
    [[3000, -1000, 1000], 'left wall, inside, middle third'],
    [[3000, 1000, 1000], 'right wall, inside, middle third'],
    [[300, 0, 1000], 'front wall, inside'],
    [[5700, 0, 1000], 'rear wall, inside'],
    [[3000, 0, 2200], 'ceiling, inside, middle third'],
    [[3000, 0, 1000], 'inside, away from the walls, middle third'],
    // 450 mm from the lining counts as at it, 451 mm does not.
    [[3000, -650, 1000], 'left wall, inside, middle third'],
    [[3000, -649, 1000], 'inside, away from the walls, middle third'],
    [[3000, -1200, 1000], 'in the left wall, middle third'],
    [[3000, 1200, 1000], 'in the right wall, middle third'],
    [[20, 0, 1000], 'in the front wall, front third'],
    [[5980, 0, 1000], 'in the rear wall, rear third'],
    [[3000, 0, 2400], 'between the ceiling and the roof, in the middle, middle third'],
    [[3000, -1300, 1000], 'left side, outside, middle third'],
    [[3000, 1300, 1000], 'right side, outside, middle third'],
    [[3000, 1250.5, 1000], 'in the right wall, middle third'],
    // In line with the skins' own ends it is still in the body.
    [[0, 0, 1000], 'in the front wall, front third'],
    [[6000, 0, 1000], 'in the rear wall, rear third'],
    [[-100, 0, 1000], 'ahead of the body, outside'],
    [[6100, 0, 1000], 'behind the body, outside'],
    [[3000, 0, 2600], 'on the roof, middle third'],
    [[3000, -400, 100], 'under the coach, left, middle third'],
    [[1000, 400, -100], 'under the coach, right, front third'],
    [[3000, 149, -100], 'under the coach, in the middle, middle third'],
  ])('%j is %s', (at, wanted) => {
    expect(region(at)).toBe(wanted);
  });

  it('over a belly sheet is between it and the floor; beside the sheet under the coach', () => {
    const belly = levelPanel('BP', [1000, 0, 0], [1000, 2000], { panelKind: 'belly' });
    const panels = [...skins, ...linings, belly];
    expect(region([1000, -400, 100], { panels })).toBe('between the floor and the belly, left, front third');
    expect(region([3000, -400, 100], { panels })).toBe('under the coach, left, middle third');
    // A sheet more than 600 mm below is none of the floor's.
    const deep = levelPanel('BP', [1000, 0, -600], [1000, 2000], { panelKind: 'belly' });
    expect(region([1000, -400, 10], { panels: [...skins, ...linings, deep] })).not.toContain('belly');
  });

  it('without a room is in the body, and without a body on the chassis', () => {
    expect(region([3000, -400, 1000], { panels: skins })).toBe('in the body, left, middle third');
    expect(words([3000, -400, 1000], { panels: [] })).toBe('on the chassis, 2,000 mm above the ground');
  });

  it('is so high over the floor inside and over the ground outside, and below it where it is', () => {
    expect(words([3000, 0, 1000])).toContain('700 mm above the floor');
    expect(words([3000, 0, -1200])).toMatch(/, 200 mm below the ground$/u);
    expect(words([3000, 0, 2600], { panels: skins, chassis: { axles: [], frame: {} } as never })).toBe(
      'on the roof, middle third',
    );
  });

  it('inside names the nearest door by its sill', () => {
    const door = (id: string, x: number): Opening =>
      ({
        ...record(id),
        openingKind: 'entry door',
        heightMm: 1800,
        sill: [
          [x, 1250, 300],
          [x + 700, 1250, 300],
        ],
      }) as unknown as Opening;
    const openings = [door('D-1', 500), door('D-2', 4500)];
    expect(words([1500, 0, 1000], { panels: [...skins, ...linings], openings })).toMatch(/D-1/u);
    expect(words([4400, 0, 1000], { panels: [...skins, ...linings], openings })).toMatch(/D-2/u);
    expect(words([3000, 0, 2600], { panels: [...skins, ...linings], openings })).not.toMatch(/D-/u);
    // One on either side of the coach, as far to the rear: the side decides. A door is not found by itself.
    const across = door('D-3', 500);
    const left = { ...across, sill: across.sill.map(([x, y, z]) => [x, -y, z]) } as unknown as Opening;
    const both = [left, { ...across, id: 'D-4' } as Opening];
    expect(words([1000, 500, 1000], { panels: [...skins, ...linings], openings: both })).toMatch(/D-4/u);
    expect(words([1000, -500, 1000], { panels: [...skins, ...linings], openings: both })).toMatch(/D-3/u);
    const model = buildModel({ chassis: frame, panels: [...skins, ...linings], openings: [door('D-1', 500)] });
    expect(placesOf(model)('D-1')).not.toMatch(/D-1/u);
  });

  it('of a sheet is its surface: outside over the ground and without a door, inside over the floor and by the door', () => {
    const lining = upright('IP-L', -1100, { ...inside, facing: 'right' });
    const opening = {
      ...record('D-1'),
      openingKind: 'entry door',
      heightMm: 1800,
      sill: [
        [500, 1250, 300],
        [1200, 1250, 300],
      ],
    } as unknown as Opening;
    const model = buildModel({ chassis: frame, panels: [...skins, ...linings, lining], openings: [opening] });
    expect(placesOf(model)('SK-L')).toBe('left side, middle third, 2,250 mm above the ground');
    // The lowest of the linings starts at the rail, the floor lies 300 mm over it, the middle of the sheet at 1,250 mm.
    expect(placesOf(model)('IP-L')).toMatch(/^left wall, inside, middle third, 950 mm above the floor, .*D-1/u);
    expect(placesOf(model)('RF')).toBe('roof, middle third, in the middle');
  });
});

describe('words that are asked for', () => {
  const bounds = { min: [0, -1250, 0], max: [9000, 1250, 1000] } as const;
  const says = (word: string, at: Vec3) => placeWord(word)?.(at, bounds);
  it.each<[string, Vec3, Vec3]>([
    ['front', [2999, 0, 0], [3000, 0, 0]],
    ['middle', [6000, 0, 0], [6001, 0, 0]],
    ['middle', [3000, 0, 0], [2999, 0, 0]],
    ['rear', [6001, 0, 0], [6000, 0, 0]],
    ['roof', [0, 0, 850], [0, 0, 849]],
    ['belly', [0, 0, 149], [0, 0, 151]],
    ['centre', [0, -150, 0], [0, -151, 0]],
    ['left', [0, -25, 0], [0, -24, 0]],
    ['right', [0, 25, 0], [0, 24, 0]],
  ])('%s: up to its edge and no further', (word, within, beyond) => {
    expect(says(word, within)).toBe(true);
    expect(says(word, beyond)).toBe(false);
  });

  it('count from the coach’s own front and floor, wherever the datum stands', () => {
    const off = { min: [3000, -1250, 1000], max: [12000, 1250, 2000] } as const;
    const at = (word: string, x: number, z = 1500) => placeWord(word)?.([x, 0, z], off);
    expect([at('front', 5999), at('front', 6000), at('rear', 9001), at('rear', 9000)]).toEqual([true, false, true, false]);
    expect([at('roof', 6000, 1850), at('roof', 6000, 1849), at('belly', 6000, 1149), at('belly', 6000, 1151)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });

  it('have other names, and some are no places', () => {
    for (const [other, word] of [
      ['aft', 'rear'],
      ['back', 'rear'],
      ['fore', 'front'],
      ['overhead', 'roof'],
      ['curb', 'right'],
      ['driver', 'left'],
    ])
      expect(placeWord(other as string), other).toBe(placeWord(word as string));
    expect(placeWord('toString')).toBeUndefined();
  });

  it('are taken of members and panels, and of nodes where there is neither', () => {
    const nodes = [node('A', [1, 2, 3]), node('B', [-4, 5, 6]), { ...node('C', [0, 0, 0]), at: undefined } as never];
    const shell = (more: Partial<Shell>) => buildModel({ nodes, ...more }).shell;
    expect(extentOf(shell({}))).toEqual({ min: [-4, 2, 3], max: [1, 5, 6] });
    expect(extentOf(shell({ members: [lineMember('M', 'T', [10, 20, 30], [40, 20, 30])] }))).toEqual({
      min: [10, 20, 30],
      max: [40, 20, 30],
    });
    expect(extentOf(shell({ nodes: [] }))).toBeUndefined();
  });
});

describe('what has no place', () => {
  it('is a node without `at` and a run that ends there', () => {
    const [a, b] = [node('A', [0, 0, 0]), node('B', [9, 0, 0])];
    const lost = { ...node('LOST', [0, 0, 0]), at: undefined } as never;
    const shell = { nodes: [a, b, lost], runs: [run('1', a, b), run('2', a, lost)] };
    expect(unplaced(shell)).toEqual(['LOST', '2']);
    expect(placedNodes(shell.nodes)).toEqual([a, b]);
    expect([a, lost].map(isPlaced)).toEqual([true, false]);
  });
});

describe('the host of a panel', () => {
  const of = (panels: readonly Panel[], id: string) => surfaces(buildModel({ panels })).get(id);
  const hatch = (more: Partial<Panel>): Panel => levelPanel('AP', [3000, 0, 2300], [300, 300], { panelKind: 'access', ...more });

  it('is the last of the chain of `of`; a circle or a name that nobody has ends it', () => {
    const mid = levelPanel('MID', [3000, 0, 2300], [400, 400], { panelKind: 'interior', of: 'CL' });
    expect(of([...skins, ...linings, mid, hatch({ of: 'MID' })], 'AP')).toEqual(of([...skins, ...linings], 'CL'));
    expect(of([...skins, hatch({ of: 'AP' })], 'AP')).toBeDefined();
    expect(of([...skins, ...linings, hatch({ of: 'NOBODY', facing: 'down' })], 'AP')).toEqual(of([...skins, ...linings], 'CL'));
  });

  it('is the sheet that an access panel lies on, and none for other panels', () => {
    const faces = hatch({ facing: 'down' });
    expect(of([...skins, ...linings, faces], 'AP')).toMatchObject({ side: 'ceiling', seenFrom: 'inside' });
    // A hatch in the roof sheet.
    const above = levelPanel('AP', [3000, 0, 2500], [300, 300], { panelKind: 'access', facing: 'up' });
    expect(of([...skins, ...linings, above], 'AP')).toEqual({ side: 'roof', seenFrom: 'outside', faces: 'up' });
  });

  it('of two sheets as near is the one that the panel looks out of', () => {
    const twin = (id: string, facing: 'up' | 'down') =>
      levelPanel(id, [3000, 0, 1200], [1000, 1000], { panelKind: 'interior', facing });
    for (const order of [
      [twin('UP', 'up'), twin('DOWN', 'down')],
      [twin('DOWN', 'down'), twin('UP', 'up')],
    ])
      for (const facing of ['up', 'down'] as const) {
        const lid = levelPanel('AP', [3000, 0, 1200], [300, 300], { panelKind: 'access', facing });
        expect(of([...skins, ...order, lid], 'AP')?.faces).toBe(facing);
      }
  });
});
