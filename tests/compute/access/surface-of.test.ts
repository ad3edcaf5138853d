import { describe, expect, it } from 'vitest';
import {
  intoFace,
  outOf,
  type Surface,
  surfaceKey,
  surfaces,
  surfacesInOrder,
  surfaceWords,
} from '../../../src/compute/access/surfaces.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Panel } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';

/** A body of 6 × 2.5 × 2.3 m, spanned by its skins; each other panel is a sheet of 400 mm about a place, across one axis. */
const sheet = (id: string, axis: 0 | 1 | 2, middle: Vec3, more: Partial<Panel> = {}, half = 200): Panel => {
  const [a, b] = ([0, 1, 2] as const).filter((k) => k !== axis) as [0 | 1 | 2, 0 | 1 | 2];
  const corner = (i: number, j: number): Vec3 =>
    middle.map((value, k) => value + (k === a ? i * half : k === b ? j * half : 0)) as unknown as Vec3;
  return {
    ...record(id),
    panelKind: 'interior',
    outline: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
    holes: [],
    ...more,
  };
};
const skin = { panelKind: 'skin' } as const;
const BODY = [
  sheet('SK-F', 0, [0, 0, 1150], skin),
  sheet('SK-B', 0, [6000, 0, 1150], skin),
  sheet('SK-L', 1, [3000, -1250, 1150], skin),
  sheet('SK-R', 1, [3000, 1250, 1150], skin),
  sheet('BP', 2, [3000, 0, 0], { panelKind: 'belly' }),
  sheet('RF', 2, [3000, 0, 2300], { panelKind: 'roof' }),
];
const surfaceOf = (panel: Panel, more: readonly Panel[] = []): Surface =>
  surfaces(buildModel({ panels: [...BODY, ...more, panel] })).get(panel.id) as Surface;

describe('the surface of one panel', () => {
  it.each<[string, Panel, Surface]>([
    [
      'a skin looks away from the middle',
      sheet('P', 1, [3000, -1200, 500], skin),
      { side: 'left', seenFrom: 'outside', faces: 'left' },
    ],
    ['a cap too', sheet('P', 0, [5900, 0, 500], { panelKind: 'cap' }), { side: 'rear', seenFrom: 'outside', faces: 'rear' }],
    [
      'a skin that says where it faces is of that side, wherever it stands',
      sheet('P', 1, [3000, -1200, 500], { ...skin, facing: 'right' }),
      { side: 'right', seenFrom: 'outside', faces: 'right' },
    ],
    [
      'what it says of another axis than its own counts for nothing',
      sheet('P', 1, [3000, -1200, 500], { ...skin, facing: 'front' }),
      { side: 'left', seenFrom: 'outside', faces: 'left' },
    ],
    [
      'a level skin over the middle is of the roof, under it of the underside',
      sheet('P', 2, [3000, 0, 2000], skin),
      { side: 'roof', seenFrom: 'outside', faces: 'up' },
    ],
    ['under the middle', sheet('P', 2, [3000, 0, 200], skin), { side: 'underside', seenFrom: 'outside', faces: 'down' }],
    [
      'at the middle it counts as the low side',
      sheet('P', 2, [3000, 0, 1150], skin),
      { side: 'underside', seenFrom: 'outside', faces: 'down' },
    ],
    ['a lining looks into the room', sheet('P', 1, [3000, -1200, 500]), { side: 'left', seenFrom: 'inside', faces: 'right' }],
    ['on the right', sheet('P', 1, [3000, 1200, 500]), { side: 'right', seenFrom: 'inside', faces: 'left' }],
    ['in front', sheet('P', 0, [50, 0, 500]), { side: 'front', seenFrom: 'inside', faces: 'rear' }],
    ['in the rear', sheet('P', 0, [5950, 0, 500]), { side: 'rear', seenFrom: 'inside', faces: 'front' }],
    ['250 mm within is still the wall', sheet('P', 1, [3000, -1000, 500]), { side: 'left', seenFrom: 'inside', faces: 'right' }],
    [
      'further in it is a partition',
      sheet('P', 1, [3000, -999, 500]),
      { side: 'partition', seenFrom: 'inside', faces: 'right', planeMm: -999 },
    ],
    [
      'so it is from the other side',
      sheet('P', 0, [5749, 0, 500]),
      { side: 'partition', seenFrom: 'inside', faces: 'front', planeMm: 5749 },
    ],
    [
      'a lining that looks out of the room is a partition',
      sheet('P', 1, [3000, -1200, 500], { facing: 'left' }),
      { side: 'partition', seenFrom: 'inside', faces: 'left', planeMm: -1200 },
    ],
    [
      'a level lining on high is the ceiling',
      sheet('P', 2, [3000, 0, 2200]),
      { side: 'ceiling', seenFrom: 'inside', faces: 'down' },
    ],
    ['below it is the floor', sheet('P', 2, [3000, 0, 100]), { side: 'floor', seenFrom: 'inside', faces: 'up' }],
    [
      'a level one that looks up is a floor at any height',
      sheet('P', 2, [3000, 0, 2200], { facing: 'up' }),
      { side: 'floor', seenFrom: 'inside', faces: 'up' },
    ],
    [
      'an access panel in nothing looks out',
      sheet('P', 1, [1000, -1190, 500], { panelKind: 'access' }),
      { side: 'left', seenFrom: 'outside', faces: 'left' },
    ],
    [
      'said to look out, the same',
      sheet('P', 1, [1000, -1190, 500], { panelKind: 'access', facing: 'left' }),
      { side: 'left', seenFrom: 'outside', faces: 'left' },
    ],
    [
      'said to look in, it is in the lining',
      sheet('P', 1, [1000, -1190, 500], { panelKind: 'access', facing: 'right' }),
      { side: 'left', seenFrom: 'inside', faces: 'right' },
    ],
    [
      'a belly is the underside',
      sheet('P', 1, [1000, -1190, 500], { panelKind: 'belly' }),
      { side: 'underside', seenFrom: 'outside', faces: 'down' },
    ],
    [
      'a roof sheet is the roof',
      sheet('P', 1, [1000, -1190, 500], { panelKind: 'roof' }),
      { side: 'roof', seenFrom: 'outside', faces: 'up' },
    ],
  ])('%s', (_, panel, wanted) => {
    expect(surfaceOf(panel)).toEqual(wanted);
  });

  it('of a sheet without an area goes by where it faces and its first corner', () => {
    const line = (facing?: Panel['facing'], at: Vec3 = [5990, 0, 500]): Surface =>
      surfaceOf({ ...record('P'), panelKind: 'skin', outline: [at], holes: [], ...(facing ? { facing } : {}) });
    expect(line('rear')).toEqual({ side: 'rear', seenFrom: 'outside', faces: 'rear' });
    // Where it says nothing, across the coach: at y 0 the low side.
    expect(line()).toEqual({ side: 'left', seenFrom: 'outside', faces: 'left' });
    expect(line(undefined, [5990, 700, 500])).toEqual({ side: 'right', seenFrom: 'outside', faces: 'right' });
    expect(surfaceOf({ ...record('P'), panelKind: 'skin', outline: [], holes: [] }).side).toBe('left');
  });

  it('is none where there are no panels', () => {
    expect([...surfaces(buildModel())]).toEqual([]);
  });
});

describe('an access panel that names no host', () => {
  const lining = sheet('IP', 1, [3000, -1150, 1150], {}, 500);
  const lid = (y: number, more: Partial<Panel> = {}, middle: Vec3 = [3000, y, 1150]): Surface =>
    surfaceOf(sheet('AP', 1, middle, { panelKind: 'access', facing: 'left', ...more }, 100), [lining]);
  const inLining = { side: 'left', seenFrom: 'inside', faces: 'right' };
  const outside = { side: 'left', seenFrom: 'outside', faces: 'left' };

  it('is in the sheet that it lies on within 25 mm, to either side', () => {
    expect(lid(-1150)).toEqual(inLining);
    expect(lid(-1125)).toEqual(inLining);
    expect(lid(-1175)).toEqual(inLining);
    expect(lid(-1124)).toEqual(outside);
    expect(lid(-1176)).toEqual(outside);
  });

  it('is in none beside it, nor in one that it stands across', () => {
    expect(lid(0, {}, [3499, -1150, 1150])).toEqual(inLining);
    expect(lid(0, {}, [3501, -1150, 1150])).toEqual(outside);
    const across = sheet('AP', 0, [3000, -1150, 1150], { panelKind: 'access', facing: 'front' }, 100);
    expect(surfaceOf(across, [lining]).side).toBe('front');
  });

  it('is in the nearer of two sheets, in whatever order they stand', () => {
    const outer = sheet('OUT', 1, [3000, -1170, 1150], { ...skin }, 500);
    const at = (y: number, sheets: readonly Panel[]) =>
      surfaceOf(sheet('AP', 1, [3000, y, 1150], { panelKind: 'access' }, 100), sheets).seenFrom;
    for (const sheets of [
      [lining, outer],
      [outer, lining],
    ]) {
      expect(at(-1152, sheets)).toBe('inside');
      expect(at(-1168, sheets)).toBe('outside');
    }
  });

  it('is never in another access panel, and no other kind is in anything', () => {
    const other = sheet('AP-0', 1, [3000, -1150, 1150], { panelKind: 'access', facing: 'right' }, 500);
    expect(surfaceOf(sheet('AP', 1, [3000, -1150, 1150], { panelKind: 'access', facing: 'left' }, 100), [other])).toEqual(
      outside,
    );
    expect(surfaceOf(sheet('SK', 1, [3000, -1150, 1150], skin, 100), [lining])).toEqual(outside);
  });

  it('named hosts come first, and a host that nobody knows is looked for by place', () => {
    const of = (host: string) => lid(-1150, { of: host });
    expect(of('SK-R')).toEqual({ side: 'right', seenFrom: 'outside', faces: 'right' });
    expect(of('NOBODY')).toEqual(inLining);
    // It names itself: a circle of one.
    expect(of('AP')).toEqual(inLining);
  });
});

describe('surfaces by name and in order', () => {
  it('look out of their face, a drill goes the other way', () => {
    const left: Surface = { side: 'left', seenFrom: 'outside', faces: 'left' };
    expect(outOf(left)).toEqual([0, -1, 0]);
    expect(intoFace(left).map((part) => part + 0)).toEqual([0, 1, 0]);
    expect(outOf({ side: 'floor', seenFrom: 'inside', faces: 'up' })).toEqual([0, 0, 1]);
  });

  it('have one key for one view', () => {
    expect(surfaceKey({ side: 'left', seenFrom: 'outside', faces: 'left' })).toBe('left outside');
    expect(surfaceKey({ side: 'ceiling', seenFrom: 'inside', faces: 'down' })).toBe('ceiling inside');
    const partition = (planeMm?: number): string =>
      surfaceKey({ side: 'partition', seenFrom: 'inside', faces: 'rear', ...(planeMm === undefined ? {} : { planeMm }) });
    // Planes within the same 25 mm are one: 1200 / 25 = 48.
    expect([partition(1200), partition(1212), partition(1213)]).toEqual([
      'partition rear 48',
      'partition rear 48',
      'partition rear 49',
    ]);
    expect(partition()).toBe('partition rear 0');
  });

  it.each<[Surface['side'], Surface['seenFrom'], string]>([
    ['roof', 'outside', 'roof'],
    ['underside', 'outside', 'underside'],
    ['ceiling', 'inside', 'ceiling'],
    ['floor', 'inside', 'floor'],
    ['partition', 'inside', 'partition, seen from the rear'],
    ['left', 'outside', 'left side'],
    ['right', 'outside', 'right side'],
    ['left', 'inside', 'left wall, inside'],
    ['right', 'inside', 'right wall, inside'],
    ['front', 'outside', 'front'],
    ['rear', 'outside', 'rear'],
    ['front', 'inside', 'front wall, inside'],
    ['rear', 'inside', 'rear wall, inside'],
  ])('%s %s is called %s', (side, seenFrom, wanted) => {
    expect(surfaceWords({ side, seenFrom, faces: 'rear' })).toBe(wanted);
  });

  it('are walked around outside, over and under, then inside, then partitions from the front, each once', () => {
    const linings = [
      sheet('P-2R', 0, [4000, 0, 1000], { facing: 'rear' }),
      sheet('P-2F', 0, [4000, 0, 1000], { facing: 'front' }),
      sheet('P-1R', 0, [2000, 0, 1000], { facing: 'rear' }),
      sheet('CL', 2, [3000, 0, 2200]),
      sheet('FL', 2, [3000, 0, 100]),
      sheet('IP-B', 0, [5950, 0, 1000]),
      sheet('IP-F', 0, [50, 0, 1000]),
      sheet('IP-R', 1, [3000, 1200, 1000]),
      sheet('IP-L', 1, [3000, -1200, 1000]),
      sheet('IP-L2', 1, [4000, -1200, 1000]),
    ];
    const panels = [...linings, ...[...BODY].reverse()];
    const walked = [
      'left outside',
      'right outside',
      'front outside',
      'rear outside',
      'roof outside',
      'underside outside',
      'left inside',
      'right inside',
      'front inside',
      'rear inside',
      'floor inside',
      'ceiling inside',
      'partition rear 80',
      'partition front 160',
      'partition rear 160',
    ];
    expect(surfacesInOrder(buildModel({ panels })).map(surfaceKey)).toEqual(walked);
    expect(surfacesInOrder(buildModel({ panels: [...panels].reverse() })).map(surfaceKey)).toEqual(walked);
  });
});
