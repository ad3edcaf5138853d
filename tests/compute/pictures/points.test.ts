import { describe, expect, it } from 'vitest';
import { type Pixel, projectPoint } from '../../../src/compute/camera/camera.js';
import { fitCamera, fitPlane, type Sighting } from '../../../src/compute/camera/fit.js';
import { locateOn } from '../../../src/compute/camera/locate.js';
import { planeAt } from '../../../src/compute/camera/plane.js';
import { inSight } from '../../../src/compute/pictures/in-sight.js';
import { isPoint, knownPoint, openingCornerPoints } from '../../../src/compute/pictures/known-points.js';
import { namedPoints, pointLabel } from '../../../src/compute/pictures/point-names.js';
import { solvePhoto } from '../../../src/compute/pictures/solve-photo.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Opening, Panel, Photo, SeenPoint } from '../../../src/records/index.js';
import { buildModel, limits, record } from '../../support/build.js';
import { cameraTowards, ROOM as PLACES } from '../../support/cameras.js';
import { lineMember, sections } from '../../support/structure.js';

const FACTS = { widthPx: 4000, heightPx: 3000 };
const FOCAL_PX = 3000;
const CAMERA = cameraTowards([0, -2000, 0], [0, 0, 0], FOCAL_PX, FACTS);
const pxOf = (at: Vec3): Pixel => projectPoint(CAMERA, at)?.px as Pixel;
const ROOM = PLACES.slice(0, 7);
const panel = (outline: readonly Vec3[], facing?: Panel['facing'], holes: readonly (readonly Vec3[])[] = []): Panel => ({
  ...record('P'),
  panelKind: 'interior',
  outline,
  holes,
  ...(facing ? { facing } : {}),
});

describe('the corners of a panel', () => {
  const corners = (one: Panel): readonly (Vec3 | undefined)[] =>
    [1, 2, 3, 4].map((corner) => {
      const found = knownPoint(buildModel({ panels: [one] }), { px: [0, 0], is: 'P', corner } as SeenPoint);
      return isPoint(found) ? found.at : undefined;
    });
  const [LL, RL, RU, LU]: readonly [Vec3, Vec3, Vec3, Vec3] = [
    [100, -40, 0],
    [100, 40, 0],
    [100, 40, 90],
    [100, -40, 90],
  ];
  const across = [RU, LU, LL, RL];

  it('across the coach begin low on its left; who looks at the front wall from ahead has that on the right hand', () => {
    // Clockwise from the lower right corner the next is the lower left one, which is the coach's right.
    expect(corners(panel(across, 'front'))).toEqual([LL, RL, RU, LU]);
    // From behind it is on the left hand: up first.
    expect(corners(panel(across, 'rear'))).toEqual([LL, LU, RU, RL]);
    expect(corners(panel(across))).toEqual([LL, LU, RU, RL]);
  });

  it('of a ceiling are clockwise from below, of a floor from above', () => {
    const level: readonly Vec3[] = [
      [900, 500, 70],
      [900, -500, 70],
      [100, -500, 70],
      [100, 500, 70],
    ];
    const [a, b, c, d] = [level[2], level[3], level[0], level[1]];
    expect(corners(panel(level, 'up'))).toEqual([a, b, c, d]);
    expect(corners(panel(level, 'down'))).toEqual([a, d, c, b]);
  });

  it('of a sheet on the center line are those of a right one; a millimetre makes none lower', () => {
    const at = (rearLow: number, y = 0): readonly Vec3[] => [
      [0, y, 0],
      [80, y, 0 - rearLow],
      [80, y, 90],
      [0, y, 90],
    ];
    expect(corners(panel(at(0)))[1]).toEqual([80, 0, 0]);
    expect(corners(panel(at(0, -20)))[1]).toEqual([0, -20, 90]);
    expect(corners(panel(at(0, -20), 'right'))[1]).toEqual([80, -20, 0]);
    expect(corners(panel(at(0.9)))[0]).toEqual([0, 0, 0]);
    expect(corners(panel(at(1.1)))[0]).toEqual([80, 0, -1.1]);
  });

  it('of an opening are the same from whichever end its sill was typed', () => {
    const opening = (sill: readonly Vec3[]) =>
      openingCornerPoints({ ...record('O'), sill, heightMm: 1800 } as unknown as Opening);
    const [a, b]: readonly [Vec3, Vec3] = [
      [100, -1200, 5],
      [900, -1200, 5],
    ];
    expect(opening([a, b])).toEqual(opening([b, a]));
    expect(opening([a, b])[0]).toEqual(a);
    expect(opening([a])).toEqual([]);
  });
});

describe('the end of a member', () => {
  const end = (from: Vec3, to: Vec3, which: 'low' | 'high') =>
    knownPoint(buildModel({ members: [lineMember('M', from, to)] }, { sections }), {
      px: [0, 0],
      is: 'M',
      end: which,
    } as SeenPoint);
  it('is the low or high one where it rises by a millimetre', () => {
    expect(isPoint(end([0, 0, 0], [500, 0, 0.9], 'low'))).toBe(false);
    for (const [which, at] of [
      ['low', [0, 0, 0]],
      ['high', [500, 0, 1]],
    ] as const)
      expect(end([0, 0, 0], [500, 0, 1], which)).toMatchObject({ at });
    expect(end([0, 0, 1], [500, 0, 0], 'low')).toMatchObject({ at: [500, 0, 0] });
    const named = (rise: number) =>
      namedPoints(buildModel({ members: [lineMember('M', [0, 0, 0], [500, 0, rise])] }, { sections })).map((one) =>
        pointLabel(one.named),
      );
    expect(named(0.9)).toEqual(['M from end', 'M to end']);
    expect(named(1.1)).toEqual(['M low end', 'M high end']);
  });

  it('is known to the shop’s own tape, of a section that nobody knows twice over', () => {
    const sigma = (known: boolean, tapeMm?: number) => {
      const shop = tapeMm === undefined ? {} : { limits: { ...limits, tapeMm } };
      const model = buildModel({ members: [lineMember('M', [0, 0, 0], [0, 0, 500])] }, known ? { sections } : {}, shop);
      const found = knownPoint(model, { px: [0, 0], is: 'M', end: 'low' } as SeenPoint);
      return isPoint(found) ? found.sigmaMm() : Number.NaN;
    };
    expect(sigma(true, 4)).toBeCloseTo(Math.hypot(25, 4) / Math.sqrt(3), 9);
    expect(sigma(false, 4)).toBeCloseTo(Math.hypot(4, 4) / Math.sqrt(3), 9);
    expect(sigma(false)).toBeCloseTo((3.175 * Math.SQRT2) / Math.sqrt(3), 9);
  });
});

describe('a photo', () => {
  const solved = (seen: readonly unknown[], facts: object = {}, more: object = {}, shop = {}) =>
    solvePhoto(buildModel({}, {}, shop), { ...record('PH'), file: 'ph.jpg', seen, ...more } as unknown as Photo, {
      ...FACTS,
      ...facts,
    });
  const seen = ROOM.map((at) => ({ at, px: pxOf(at) }));

  it('goes by the focal length of its file before the angle that somebody typed', () => {
    // 3000 px of a diagonal of 5000 px are 0.6 of 43.267 mm, the diagonal of a 36 mm × 24 mm frame.
    const found = solved(seen.slice(0, 6), { equivalentMm: 0.6 * Math.hypot(36, 24) }, { camera: { angleDeg: 20 } });
    expect(found).toMatchObject({ usable: true, method: 'camera' });
    expect(found.fit?.unknowns).toBe(6);
    if (found.fit?.method === 'camera') expect(found.fit.camera.focalPx).toBeCloseTo(FOCAL_PX, 6);
    // With neither it has to find the focal length, and wants seven places.
    expect(solved(seen.slice(0, 6)).notes).toEqual([{ what: 'too few', have: 6, need: 7, plane: false, focal: false }]);
    expect(solved(seen).fit?.unknowns).toBe(7);
  });

  it('leaves out what is no point, and says which of the list', () => {
    const found = solved([seen[0], { is: 'NOBODY', px: [1, 2] }, ...seen.slice(1)]);
    expect([...found.noPoints.keys()]).toEqual([1]);
    expect(found.usable).toBe(true);
    expect(found.points).toHaveLength(7);
  });

  it('is of use within the shop’s own limit, else within 20 mm', () => {
    // Every place 3 mm to one side or the other: worse than 1 mm, better than 20 mm.
    const rough = seen.map(({ at: [x, y, z], px }, i) => ({ at: [x + (i % 2 === 0 ? 3 : -3), y, z], px }));
    const known = { equivalentMm: 0.6 * Math.hypot(36, 24) };
    expect(solved(rough, known).usable).toBe(true);
    expect(solved(rough, known, {}, { limits: { ...limits, overlayMm: 1 } }).usable).toBe(false);
  });

  it('without any marked point is of no use', () => {
    expect(solved([])).toMatchObject({ usable: false, points: [] });
  });
});

describe('how well a place is read', () => {
  // Known places so exact that only the picked pixel counts: 2 px of 2000 / 3000 mm, √5.991 = 2.448 times that for 19 in 20.
  const exact: readonly Sighting[] = ROOM.map((at) => ({ at, px: pxOf(at), sigmaMm: 0, sigmaPx: 1e-6 }));
  const fit = fitCamera(exact, { size: FACTS, focalPx: FOCAL_PX });
  const wall =
    (within: (x: number) => boolean = () => true) =>
    (from: Vec3, along: Vec3): Vec3 | undefined => {
      const by = -from[1] / along[1];
      const x = from[0] + by * along[0];
      return within(x) ? [x, 0, from[2] + by * along[2]] : undefined;
    };
  const wanted = (2.448 * 2 * 2000) / FOCAL_PX;

  it('follows from the pixel, the distance and the focal length, anywhere on a wall that stands square to the axis', () => {
    if (!fit) throw new Error('no fit');
    for (const px of [
      [2000, 1500],
      [3500, 700],
    ] as const) {
      const found = locateOn(fit, px, wall(), 2);
      expect(found?.uncertaintyMm).toBeCloseTo(wanted, 2);
      expect(found?.at[0]).toBeCloseTo(((px[0] - 2000) * 2000) / FOCAL_PX, 3);
      expect(found?.at[2]).toBeCloseTo(((1500 - px[1]) * 2000) / FOCAL_PX, 3);
    }
    // Four times as rough a pick, four times as unsure.
    expect(locateOn(fit, [2000, 1500], wall(), 8)?.uncertaintyMm).toBeCloseTo(4 * wanted, 2);
    expect(locateOn(fit, [2000, 1500], () => undefined, 2)).toBeUndefined();
  });

  it('is the same on a plane', () => {
    const flat = ROOM.slice(0, 4).map((at): Sighting => ({ at, px: pxOf(at), sigmaMm: 0, sigmaPx: 1e-6 }));
    const middle: Sighting = { at: [100, 0, 50], px: pxOf([100, 0, 50]), sigmaMm: 0, sigmaPx: 1e-6 };
    const plane = fitPlane([...flat, middle], planeAt([0, 0, 0], [0, -1, 0]));
    if (!plane) throw new Error('no fit');
    const found = locateOn(plane, [2300, 1350], () => undefined, 2);
    expect(found?.uncertaintyMm).toBeCloseTo(wanted, 2);
    [200, 0, 100].forEach((value, k) => void expect(found?.at[k]).toBeCloseTo(value, 4));
  });
});

describe('a hole in a sheet', () => {
  it('hides nothing that is seen through it', () => {
    const square = (half: number): readonly Vec3[] => [
      [-half, -500, -half],
      [half, -500, -half],
      [half, -500, half],
      [-half, -500, half],
    ];
    const hidden = (at: Vec3) =>
      inSight(buildModel({ panels: [panel(square(400), undefined, [square(100)])] }), {
        ...record('PH'),
        file: 'ph.jpg',
      } as unknown as Photo).hiddenBy(CAMERA.centre, at, new Set());
    // The sheet stands at three quarters of the way: its hole of 100 mm covers 133 mm of the wall.
    expect([130, 137, 530, 537].map((x) => hidden([x, 0, 0]))).toEqual([undefined, 'P', 'P', undefined]);
  });
});
