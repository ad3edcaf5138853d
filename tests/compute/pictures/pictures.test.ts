import { describe, expect, it } from 'vitest';
import { projectPoint } from '../../../src/compute/camera/camera.js';
import { inSight } from '../../../src/compute/pictures/in-sight.js';
import { isPoint, knownPoint, openingCornerPoints } from '../../../src/compute/pictures/known-points.js';
import { locateInPhoto } from '../../../src/compute/pictures/locate.js';
import { overlay, scaleAt } from '../../../src/compute/pictures/overlay.js';
import { namedPoints, pointLabel, pointTyped } from '../../../src/compute/pictures/point-names.js';
import { type SolvedPhoto, solvePhoto } from '../../../src/compute/pictures/solve-photo.js';
import { photoSight, sightedIn, solvedPhotos } from '../../../src/compute/pictures/solved-photos.js';
import { wasThere } from '../../../src/compute/pictures/was-there.js';
import { distance, type Vec3 } from '../../../src/geometry/vector.js';
import type { Opening, Panel, Photo, SeenPoint } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';
import { cameraTowards } from '../../support/cameras.js';
import { component, node, run, zone } from '../../support/services.js';
import { lineMember, plateMember, sections } from '../../support/structure.js';

/** A made-up camera that looks squarely at the left wall, 2 m away: what it shows follows from similar triangles. */
const FACTS = { widthPx: 4000, heightPx: 3000 };
const FOCAL_PX = 3000;
const WALL_MM = 2000;
const CAMERA = cameraTowards([0, -WALL_MM, 0], [0, 0, 0], FOCAL_PX, FACTS);
/** 90° over twice the focal length of picture: the angle whose half has the tangent 2000 / 3000. */
const ANGLE_DEG = 2 * (Math.atan(FACTS.widthPx / 2 / FOCAL_PX) * (180 / Math.PI));

const pxOf = (at: Vec3): readonly [number, number] => projectPoint(CAMERA, at)?.px as [number, number];
const seenAt = (at: Vec3): SeenPoint => ({ at, px: pxOf(at) });
const photo = (more: Partial<Photo> = {}): Photo =>
  ({
    ...record('PH'),
    file: 'ph.jpg',

    camera: { angleDeg: ANGLE_DEG },
    seen: [
      seenAt([-900, 0, -500]),
      seenAt([900, 0, -500]),
      seenAt([900, 0, 500]),
      seenAt([-900, 0, 500]),
      seenAt([0, -400, 100]),
      seenAt([300, 300, -200]),
      seenAt([-400, 250, 300]),
    ],
    ...more,
  }) as Photo;

const wall = (id: string, y: number, half: number, more: Partial<Panel> = {}): Panel => ({
  ...record(id),
  panelKind: 'skin',
  outline: [
    [-half, y, -half],
    [half, y, -half],
    [half, y, half],
    [-half, y, half],
  ],
  holes: [],
  ...more,
});
const solvedIn = (model: ReturnType<typeof buildModel>, more: Partial<Photo> = {}): SolvedPhoto =>
  solvePhoto(model, photo(more), FACTS);
const spot = (found: ReturnType<typeof locateInPhoto>): Vec3 => {
  if (!('at' in found)) throw new Error(found.why);
  return found.at;
};
const near = (found: Vec3, wanted: Vec3, mm = 0.5): void => expect(distance(found, wanted), `${found}`).toBeLessThan(mm);

describe('a place read from a picture', () => {
  const model = buildModel(
    {
      panels: [
        wall('SKIN', 0, 400),
        wall('BACK', 600, 300),
        wall('LINE', 0, 1, {
          outline: [
            [0, 0, 0],
            [1, 0, 0],
          ],
        }),
      ],
      members: [
        lineMember('POST', [500, 100, -600], [500, 100, 600]),
        lineMember('PROUD', [-700, 10, -300], [-700, 10, 300]),
        plateMember(
          'GUSSET',
          [
            [-100, 200, -100],
            [100, 200, -100],
            [0, 200, 100],
          ],
          6,
        ),
      ],
      zones: [
        zone('CAVITY', [
          [-300, 100, -300],
          [300, 300, 300],
        ]),
      ],
      nodes: [node('N', [0, 0, 0])],
    },
    { sections },
  );
  const tied = () => solvedIn(model);

  it('is tied to where the camera stood', () => {
    const solved = tied();
    expect(solved).toMatchObject({ usable: true, method: 'camera' });
    if (solved.fit?.method !== 'camera') throw new Error('no camera');
    near(solved.fit.camera.centre, CAMERA.centre, 1);
    expect(solved.fit.camera.focalPx).toBeCloseTo(FOCAL_PX, 0);
  });

  it('is where the line of sight meets the panel or plate, by similar triangles', () => {
    const solved = tied();
    // 150 px right of the middle at 3000 px: 1 in 20.
    near(spot(locateInPhoto(model, solved, [2150, 1500], 'SKIN')), [100, 0, 0]);
    near(spot(locateInPhoto(model, solved, [2150, 1350], 'BACK')), [130, 600, 130]);
    near(spot(locateInPhoto(model, solved, [2000, 1500], 'GUSSET')), [0, 200, 0]);
  });

  it('is on the near face of a tube, and in a cavity halfway through', () => {
    const solved = tied();
    // The tube is 50 mm square about y = 100: its near face is at 75 mm.
    const u = 2000 + (FOCAL_PX * 500) / 2075;
    near(spot(locateInPhoto(model, solved, [u, 1500], 'POST')), [500, 75, 0]);
    const found = locateInPhoto(model, solved, [2000, 1500], 'CAVITY');
    near(spot(found), [0, 200, 0]);
    // Anywhere of the 200 mm of the cavity: half of that at least.
    if ('at' in found) expect(found.uncertaintyMm).toBeGreaterThanOrEqual(100);
    const flat = locateInPhoto(model, solved, [2000, 1500], 'SKIN');
    if ('at' in flat) expect(flat.uncertaintyMm).toBeLessThan(25);
    // No hand picks a pixel better than 2 px: 2 × 2000/3000 mm, at 95 % in two directions 2.448 times that.
    if ('at' in flat) expect(flat.uncertaintyMm).toBeGreaterThan((2.448 * 2 * WALL_MM) / FOCAL_PX - 0.01);
  });

  it('is none beside a tube or cavity, on what is no surface, or in a picture of no use', () => {
    const solved = tied();
    expect(locateInPhoto(model, solved, [2000, 1500], 'POST')).toEqual({ why: 'misses' });
    expect(locateInPhoto(model, solved, [3900, 1500], 'CAVITY')).toEqual({ why: 'misses' });
    for (const id of ['N', 'LINE', 'NOBODY'])
      expect(locateInPhoto(model, solved, [2000, 1500], id), id).toEqual({ why: 'no surface' });
    expect(locateInPhoto(model, { ...solved, usable: false }, [2000, 1500], 'SKIN')).toEqual({ why: 'not usable' });
  });

  it('is on the side of a tube as well known as the pixel, and in a channel that doubles back in the leg that comes first', () => {
    const solved = tied();
    const onTube = locateInPhoto(model, solved, [2000 + (FOCAL_PX * 500) / 2075, 1500], 'POST');
    expect('at' in onTube && onTube.uncertaintyMm).toBeLessThan(25);
    // Legs of 100 mm along y = 200 and y = 600: the line of sight down the middle goes through both.
    const legs: readonly Vec3[] = [
      [-300, 200, 0],
      [300, 200, 0],
      [300, 600, 0],
      [-300, 600, 0],
    ];
    for (const along of [legs, [...legs].reverse()]) {
      const channel = { ...record('U'), name: 'U', along, clearMm: [100, 100] } as never;
      near(spot(locateInPhoto(buildModel({ zones: [channel] }), solved, [2000, 1500], 'U')), [0, 200, 0]);
    }
  });

  it('is none on a sheet behind the camera, edge on, or farther away than 50 m', () => {
    const solved = tied();
    const on = (sheet: Panel) => locateInPhoto(buildModel({ panels: [sheet] }), solved, [2150, 1350], sheet.id);
    expect(on(wall('ASTERN', -WALL_MM - 500, 300))).toEqual({ why: 'misses' });
    expect(on(wall('FAR', 60_000, 300))).toEqual({ why: 'misses' });
    expect('at' in on(wall('WITHIN', 40_000, 300))).toBe(true);
    const level = wall('LEVEL', 0, 0, {
      outline: [
        [-100, 0, 0],
        [100, 0, 0],
        [100, 500, 0],
        [-100, 500, 0],
      ],
    });
    // Above the middle of the picture a line of sight rises: it meets no level sheet at the camera’s own height.
    expect(locateInPhoto(buildModel({ panels: [level] }), solved, [2000, 1400], 'LEVEL')).toEqual({ why: 'misses' });
  });

  it('in a picture of a plane lies on that plane only', () => {
    const flat = photo({
      seen: [
        [-900, -500],
        [900, -500],
        [900, 500],
        [-900, 500],
        [100, 50],
        [-300, 200],
      ].map(([x = 0, z = 0]) => seenAt([x, 0, z])),
    });
    const { camera: _, ...bare } = flat;
    const tied = solvePhoto(model, bare as Photo, FACTS);
    expect(tied).toMatchObject({ usable: true, method: 'plane' });
    near(spot(locateInPhoto(model, tied, [2150, 1350], 'SKIN')), [100, 0, 100]);
    expect(locateInPhoto(model, tied, [2150, 1350], 'BACK')).toEqual({ why: 'other plane' });
    // Of a tube of 50 mm whose middle is 10 mm behind the plane one face is 35 mm off it.
    for (const id of ['PROUD', 'POST', 'CAVITY'])
      expect(locateInPhoto(model, tied, [2150, 1350], id)).toEqual({ why: 'other plane' });
    // 2 m away at 3000 px: 1.5 px a millimetre.
    if (tied.fit) expect(scaleAt(tied.fit, [0, 0, 0])).toBeCloseTo(1.5, 2);
    const drawn = overlay(model, tied).drawn.map(({ id }) => id);
    expect(drawn).toContain('SKIN');
    expect(drawn).toContain('N');
    expect(drawn).not.toContain('BACK');
  });
});

describe('what is in sight', () => {
  const post = lineMember('POST', [0, -500, -600], [0, -500, 600]);
  const gusset = plateMember(
    'GUSSET',
    [
      [300, -500, -100],
      [500, -500, -100],
      [400, -500, 100],
    ],
    6,
  );
  const skin = wall('SKIN', -200, 100, {
    outline: [
      [-500, -200, -100],
      [-300, -200, -100],
      [-300, -200, 100],
      [-500, -200, 100],
    ],
  });
  const box = { ...component('BOX', [0, -500, 500], [100, 100, 100]), id: 'BOX' };
  const model = buildModel({ members: [post, gusset], panels: [skin], components: [box] }, { sections });
  const hidden = (at: Vec3, own: readonly string[] = []) => inSight(model, photo()).hiddenBy(CAMERA.centre, at, new Set(own));

  it('is hidden by a tube, a plate or a panel before it, and by nothing beside or behind it', () => {
    expect(hidden([0, 0, 0])).toBe('POST');
    expect(hidden([400 / 0.75, 0, -10])).toBe('GUSSET');
    expect(hidden([-400 / 0.9, 0, 0])).toBe('SKIN');
    expect(hidden([200, 0, 0])).toBeUndefined();
    expect(hidden([0, -600, 0])).toBeUndefined();
    expect(hidden([-400, -300, 0])).toBeUndefined();
  });

  it('is not hidden by itself, nor by what it touches within 15 mm, nor from there', () => {
    expect(hidden([0, 0, 0], ['POST'])).toBeUndefined();
    // The near face of the tube is at −525: a pipe clipped to it stands before it.
    expect(hidden([0, -520, 0])).toBeUndefined();
    expect(hidden([0, -505, 0])).toBe('POST');
    expect(hidden([0, -WALL_MM + 10, 0])).toBeUndefined();
  });

  it('of a photo taken before: what came later hides nothing', () => {
    const stages = ['frame', 'skin'].map((id) => ({ ...record(id), title: id }));
    const at = (more: object, taken: Partial<Photo>) =>
      wasThere(buildModel({}, { stages } as never), photo(taken))({ ...record('X'), ...more } as never);
    expect(at({ date: '2026-05-02' }, { date: '2026-05-01' } as never)).toBe(false);
    expect(at({ date: '2026-05-01' }, { date: '2026-05-01' } as never)).toBe(true);
    expect(at({ fixing: { method: 'adhesive', applied: '2026-05-02' } }, { date: '2026-05-01' } as never)).toBe(false);
    expect(at({ date: '2026-05-02' }, { taken: '2026-05-03T10:00', date: '2026-05-01' } as never)).toBe(true);
    expect(at({ stage: 'skin' }, { stage: 'frame' })).toBe(false);
    expect(at({ stage: 'frame' }, { stage: 'frame' })).toBe(true);
    expect(at({ stage: 'skin' }, {})).toBe(true);
    expect(at({}, { stage: 'frame' })).toBe(true);
    expect(at({ stage: 'frame', planned: true }, { stage: 'skin' })).toBe(false);
    const later = buildModel({ members: [{ ...post, date: '2026-05-02' } as never] }, { sections });
    expect(inSight(later, photo({ date: '2026-05-01' } as never)).hiddenBy(CAMERA.centre, [0, 0, 0], new Set())).toBeUndefined();
    expect(inSight(later, photo({ date: '2026-05-03' } as never)).hiddenBy(CAMERA.centre, [0, 0, 0], new Set())).toBe('POST');
  });

  it('is seen only within the frame, large enough to be read, and in plain sight', () => {
    const solved = solvedIn(model);
    const of = sightedIn(model, solved);
    expect(of?.([200, 0, 0])).toBe('seen');
    expect(of?.([0, 0, 0])).toEqual({ hiddenBy: 'POST' });
    expect(of?.([0, 0, 0], new Set(['POST']))).toBe('seen');
    // The frame is 2000/3000 of the depth to each side, 1500/3000 up and down: 1333 mm and 1000 mm at 2 m.
    expect([1330, 1337, -1330, -1337].map((x) => of?.([x, 0, 20]))).toEqual(['seen', 'outside', 'seen', 'outside']);
    expect([995, 1005, -995, -1005].map((z) => of?.([200, 0, z]))).toEqual(['seen', 'outside', 'seen', 'outside']);
    // Half a pixel a millimetre: 6 m away.
    expect(of?.([700, 3990, 0])).toBe('seen');
    expect(of?.([700, 4010, 0])).toBe('too small');
    expect(of?.([0, -WALL_MM - 100, 0])).toBe('outside');
    expect(sightedIn(model, { ...solved, usable: false })).toBeUndefined();
    const known = solvedPhotos(buildModel({ photos: [photo(), photo({ id: 'NONE', seen: [] })] }), () => FACTS);
    expect([...known.keys()]).toEqual(['PH']);
    expect([...solvedPhotos(buildModel({ photos: [photo()] }), () => undefined).keys()]).toEqual([]);
    const sight = photoSight(model, new Map([['PH', solved]]));
    expect(sight(photo())?.([200, 0, 0])).toBe(true);
    expect(sight(photo())?.([0, 0, 0])).toBe(false);
    expect(sight(photo({ id: 'OTHER' }))).toBeUndefined();
  });
});

describe('a picture drawn over', () => {
  const [a, b] = [node('A', [-600, 0, 300]), node('B', [600, 0, 300])];
  const model = buildModel(
    {
      members: [lineMember('POST', [0, -500, -2000], [0, -500, 2000]), lineMember('AFT', [9000, 0, 0], [9000, 0, 900])],
      panels: [wall('SKIN', 0, 500, { fixing: { method: 'screws', count: 12 } as never }), wall('DEEP', 1200, 300)],
      openings: [
        {
          ...record('DOOR'),
          openingKind: 'door',
          sill: [
            [-200, 0, -300],
            [200, 0, -300],
          ],
          heightMm: 400,
        } as unknown as Opening,
      ],
      nodes: [a, b, node('FAR', [5000, 0, 0])],
      runs: [run('R', a, b)],
    },
    { sections },
  );
  const made = () => overlay(model, solvedIn(model));
  const of = (id: string) => made().drawn.find((one) => one.id === id);

  it('has what is in its frame, where similar triangles put it', () => {
    expect(made().drawn.map(({ id }) => id)).toEqual(['POST', 'SKIN', 'DOOR', 'R', 'A', 'B']);
    const [px] = of('A')?.stretches[0]?.px ?? [];
    expect(px?.[0]).toBeCloseTo(2000 - 900, 0);
    expect(px?.[1]).toBeCloseTo(1500 - 450, 0);
    expect(of('SKIN')?.screws).toBe(12);
    expect(of('A')?.medium).toBe('dc');
    expect(made().pxPerMm).toBeGreaterThan(1.3);
    expect(made().pxPerMm).toBeLessThan(1.6);
  });

  it('has a run in stretches: plain, hidden behind the post, plain again', () => {
    const stretches = of('R')?.stretches ?? [];
    expect(stretches.map(({ hidden }) => hidden)).toEqual([false, true, false]);
    // The post is 50 mm wide from 1475 mm: 68 mm of shadow on the wall, told to a step of 67 mm.
    const hidden = stretches[1]?.px ?? [];
    const width = (hidden.at(-1)?.[0] ?? 0) - (hidden[0]?.[0] ?? 0);
    expect(width).toBeGreaterThan(40);
    expect(width).toBeLessThan(400);
    const all = stretches.flatMap(({ px }) => px.map(([x]) => x));
    expect(Math.min(...all)).toBeCloseTo(1100, 0);
    expect(Math.max(...all)).toBeCloseTo(2900, 0);
  });

  it('draws of a tube only what is in plain sight, its outline 50 mm wide', () => {
    const stretches = of('POST')?.stretches ?? [];
    expect(stretches.every(({ hidden }) => !hidden)).toBe(true);
    const across = stretches.flatMap(({ px }) => px.map(([x]) => x));
    // The near face, 1475 mm away.
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo((50 * FOCAL_PX) / 1475, 0);
  });

  it('leaves out what lies behind the camera or deeper than an arm behind the known points', () => {
    const [c, d] = [node('C', [200, -WALL_MM - 50, 0]), node('D', [200, -WALL_MM - 900, 0])];
    const [near, deep] = [node('NEAR', [200, 990, 0]), node('DEEP-N', [200, 1010, 0])];
    const some = buildModel({ nodes: [c, d, near, deep], runs: [run('BEHIND', c, d), run('IN', d, near)] });
    // The farthest known point is at y = 300, an arm is 700 mm.
    const drawn = overlay(some, solvedIn(some)).drawn.map(({ id }) => id);
    expect(drawn).toEqual(['IN', 'NEAR']);
  });

  it('lets a tank hide what is behind it where its size is on record: a cube of its contents is only a guess', () => {
    const tank = (body?: { sizeMm: Vec3 }) =>
      ({
        ...record('TK'),
        name: 'TK',
        contents: 'fresh water',
        at: [0, -500, 0],
        capacityM3: 0.1,
        massKg: 10,
        ...(body ? { body } : {}),
      }) as never;
    const hides = (body?: { sizeMm: Vec3 }) =>
      inSight(buildModel({ tanks: [tank(body)] }), photo()).hiddenBy(CAMERA.centre, [0, 0, 0], new Set());
    expect(hides({ sizeMm: [400, 400, 400] })).toBe('TK');
    expect(hides()).toBeUndefined();
  });

  it('lets a bay hide what is behind it, and nothing that is in it or seen from in it', () => {
    const bay = (at: Vec3, sizeMm: Vec3) => ({ ...record('BAY'), name: 'BAY', at, body: { sizeMm } }) as never;
    const hides = (at: Vec3, sizeMm: Vec3, place: Vec3) =>
      inSight(buildModel({ bays: [bay(at, sizeMm)] }), photo()).hiddenBy(CAMERA.centre, place, new Set());
    expect(hides([0, -500, 0], [400, 400, 400], [0, 0, 0])).toBe('BAY');
    expect(hides([0, -500, 0], [400, 400, 400], [0, -450, 0])).toBeUndefined();
    expect(hides([0, -WALL_MM, 0], [400, 400, 400], [0, 0, 0])).toBeUndefined();
  });

  it('draws a line in stretches that have a length, as far as a twentieth beyond its edge and no further', () => {
    // At 2 m a twentieth of the picture is 133 mm to the side and 100 mm up and down.
    const inside = [node('L', [-1460, 0, 0]), node('T', [0, 0, 1095]), node('M', [1460, 0, 0]), node('B', [0, 0, -1095])];
    const outside = [node('L2', [-1475, 0, 0]), node('T2', [0, 0, 1105]), node('M2', [1475, 0, 0]), node('B2', [0, 0, -1105])];
    const across = run('X', node('X1', [-4000, 0, 200]), node('X2', [4000, 0, 200]));
    const above = run('Y', node('Y1', [-4000, 0, 3000]), node('Y2', [4000, 0, 3000]));
    const some = buildModel({ nodes: [...inside, ...outside], runs: [across, above] });
    const { drawn } = overlay(some, solvedIn(some));
    expect(drawn.map(({ id }) => id).sort()).toEqual(['B', 'L', 'M', 'T', 'X']);
    const [stretch, ...others] = drawn.find(({ id }) => id === 'X')?.stretches ?? [];
    expect(others).toEqual([]);
    const along = stretch?.px.map(([u]) => u) ?? [];
    expect(Math.min(...along)).toBeGreaterThanOrEqual(-200);
    expect(Math.max(...along)).toBeLessThanOrEqual(4200);
    expect(Math.min(...along)).toBeLessThan(0);
    expect(Math.max(...along)).toBeGreaterThan(4000);
    for (const [, v] of stretch?.px ?? []) expect(v).toBeCloseTo(1500 - 300, 0);
  });

  it('draws of a box the edges that its outline may run along: of a tube end on, those of the face before the camera', () => {
    // A tube that runs away from the camera shows its near end, 50 mm square, and its four long edges lie within that.
    const tube = lineMember('END', [0, -500, 0], [0, 100, 0]);
    const some = buildModel({ members: [tube] }, { sections });
    const px = overlay(some, solvedIn(some)).drawn.flatMap(({ stretches }) => stretches.flatMap((one) => one.px));
    const half = (25 * FOCAL_PX) / 1500;
    for (const k of [0, 1] as const) {
      const at = px.map((one) => one[k]);
      expect(Math.min(...at)).toBeCloseTo((k === 0 ? 2000 : 1500) - half, 0);
      expect(Math.max(...at)).toBeCloseTo((k === 0 ? 2000 : 1500) + half, 0);
    }
    // The far end is hidden by nothing but itself; no edge of it is drawn.
    const far = (25 * FOCAL_PX) / 2100;
    const corners = px.filter(([u, v]) => Math.abs(Math.abs(u - 2000) - far) < 0.5 && Math.abs(Math.abs(v - 1500) - far) < 0.5);
    expect(corners).toEqual([]);
  });

  it('is empty of a photo of no use', () => {
    expect(overlay(model, { ...solvedIn(model), usable: false }).drawn).toEqual([]);
  });
});

describe('a point to tie a picture to', () => {
  const opening = (y: number): Opening =>
    ({
      ...record('DOOR'),
      sill: [
        [100, y, 0],
        [900, y, 0],
      ],
      heightMm: 1800,
    }) as unknown as Opening;
  const level = lineMember('RAIL', [0, 0, 0], [1000, 0, 0]);
  const post = lineMember('POST', [0, 0, 900], [0, 0, 100]);
  const roof = wall('ROOF', 0, 0, {
    outline: [
      [900, 500, 2000],
      [900, -500, 2000],
      [100, -500, 2000],
      [100, 500, 2000],
    ],
  });
  const model = buildModel(
    {
      members: [
        level,
        post,
        plateMember(
          'PLATE',
          [
            [0, 0, 0],
            [1, 0, 0],
            [0, 0, 1],
          ],
          4,
        ),
      ],
      panels: [wall('LEFT', -1200, 400), wall('RIGHT', 1200, 400), roof, wall('BARE', 0, 0, { outline: [] })],
      openings: [opening(-1200)],
      nodes: [node('N', [1, 2, 3], { toleranceMm: 6 }), { ...node('LOST', [0, 0, 0]), at: undefined } as never],
      components: [component('C', [0, 0, 0])],
    },
    { sections },
    {},
  );
  const point = (seen: Partial<SeenPoint>) => knownPoint(model, { px: [0, 0], ...seen } as SeenPoint);
  const place = (seen: Partial<SeenPoint>) => {
    const found = point(seen);
    return isPoint(found) ? found.at : found;
  };

  it('is a typed place, a node, an end of a member by its height or its record', () => {
    expect(place({ at: [7, 8, 9] })).toEqual([7, 8, 9]);
    expect(place({ is: 'N' })).toEqual([1, 2, 3]);
    expect(place({ is: 'POST', end: 'low' })).toEqual([0, 0, 100]);
    expect(place({ is: 'POST', end: 'high' })).toEqual([0, 0, 900]);
    expect(place({ is: 'POST', end: 'from' })).toEqual([0, 0, 900]);
    expect(place({ is: 'RAIL', end: 'to' })).toEqual([1000, 0, 0]);
  });

  it('is a corner, clockwise from the lower front one seen from outside; of a roof from the front left', () => {
    const corners = (is: string) => [1, 2, 3, 4].map((corner) => place({ is, corner }));
    // From outside the left wall the rear is on the right hand: clockwise from the lower front corner is up first.
    expect(corners('LEFT')).toEqual([
      [-400, -1200, -400],
      [-400, -1200, 400],
      [400, -1200, 400],
      [400, -1200, -400],
    ]);
    expect(corners('RIGHT')).toEqual([
      [-400, 1200, -400],
      [400, 1200, -400],
      [400, 1200, 400],
      [-400, 1200, 400],
    ]);
    expect(corners('ROOF')).toEqual([
      [100, -500, 2000],
      [100, 500, 2000],
      [900, 500, 2000],
      [900, -500, 2000],
    ]);
    expect(openingCornerPoints(opening(-1200))).toEqual([
      [100, -1200, 0],
      [100, -1200, 1800],
      [900, -1200, 1800],
      [900, -1200, 0],
    ]);
    expect(openingCornerPoints(opening(1200))[1]).toEqual([900, 1200, 0]);
    expect(openingCornerPoints({ ...opening(0), sill: [] } as never)).toEqual([]);
  });

  it('is none where the record gives no point, and says what would', () => {
    const said = (seen: Partial<SeenPoint>) => (point(seen) as { found: string }).found;
    expect(said({})).toBe('neither `is` nor `at`');
    expect(said({ is: 'NOBODY' })).toBe('`NOBODY`');
    expect(said({ is: 'LOST' })).toBe('node LOST without a place');
    expect(said({ is: 'PLATE', end: 'low' })).toBe('plate PLATE');
    expect(said({ is: 'POST' })).toBe('member POST without `end`');
    expect(said({ is: 'RAIL', end: 'high' })).toBe('`end: high` of RAIL, which lies level');
    expect(said({ is: 'LEFT' })).toBe('LEFT without `corner`');
    expect(said({ is: 'LEFT', corner: 5 })).toBe('`corner: 5` of LEFT');
    expect(said({ is: 'BARE', corner: 1 })).toBe('BARE without corners');
    expect(said({ is: 'C' })).toBe('component C');
  });

  it('is known to its tolerance over √3 (GUM 4.3.7), a member’s end to half of what is seen of it as well', () => {
    const sigma = (seen: Partial<SeenPoint>, along?: Vec3) => {
      const found = point(seen);
      return isPoint(found) ? found.sigmaMm(along) : Number.NaN;
    };
    // A tape to 1/8 in.
    expect(sigma({ at: [0, 0, 0] })).toBeCloseTo(3.175 / Math.sqrt(3), 6);
    expect(sigma({ is: 'N' })).toBeCloseTo(6 / Math.sqrt(3), 6);
    const half = Math.hypot(25, 3.175) / Math.sqrt(3);
    expect(sigma({ is: 'POST', end: 'low' })).toBeCloseTo(half, 6);
    expect(sigma({ is: 'POST', end: 'low' }, [0, 1, 0])).toBeCloseTo(half, 6);
    // Over a corner of the square: √2 as wide.
    expect(sigma({ is: 'POST', end: 'low' }, [Math.SQRT1_2, Math.SQRT1_2, 0])).toBeCloseTo(
      Math.hypot(25 * Math.SQRT2, 3.175) / Math.sqrt(3),
      6,
    );
    expect(sigma({ is: 'POST', end: 'low' }, [0, 0, 1])).toBeCloseTo(half, 6);
  });

  it('has a name for each of them', () => {
    const names = namedPoints(model).map(({ named }) => pointLabel(named));
    expect(names.slice(0, 5)).toEqual(['N', 'RAIL from end', 'RAIL to end', 'POST low end', 'POST high end']);
    expect(names).toContain('LEFT corner 4');
    expect(names.filter((name) => name.startsWith('DOOR'))).toHaveLength(4);
    expect(pointTyped({ is: 'POST', end: 'low' })).toBe('is: POST, end: low');
    expect(pointTyped({ is: 'DOOR', corner: 2 })).toBe('is: DOOR, corner: 2');
    expect(pointTyped({ is: 'N' })).toBe('is: N');
  });
});
