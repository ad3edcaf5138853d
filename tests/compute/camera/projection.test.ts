import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { focalFromAngle, focalFromEquivalent, projectPoint, rayThrough } from '../../../src/compute/camera/camera.js';
import { homographyOf, inverse, type PlanePair, shownBy } from '../../../src/compute/camera/homography.js';
import { cameraOfProjection, projectionOf } from '../../../src/compute/camera/space-dlt.js';
import { camerasOfThree } from '../../../src/compute/camera/three-points.js';
import { distance, dot, subtract, unit, type Vec3 } from '../../../src/geometry/vector.js';
import { BOX, cameraTowards } from '../../support/cameras.js';

const SIZE = { widthPx: 4032, heightPx: 3024 };

describe('a camera', () => {
  it('shows what is to its right and below on the right and below', () => {
    const camera = cameraTowards([0, -2000, 0], [0, 0, 0], 3000, SIZE);
    // Looking from the left side of the coach at it: rearward (+x) is to the right.
    expect(projectPoint(camera, [100, 0, 0])?.px[0]).toBeCloseTo(2016 + 150, 6);
    expect(projectPoint(camera, [0, 0, 100])?.px[1]).toBeCloseTo(1512 - 150, 6);
    expect(projectPoint(camera, [0, -3000, 0])).toBeUndefined();
  });

  it('sends the line of sight of a pixel back through the place that it shows, distorted or not', () => {
    const within = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
    fc.assert(
      fc.property(within(-900, 900), within(-400, 400), within(-600, 600), within(-0.1, 0.1), (x, y, z, k1) => {
        const camera = cameraTowards([300, -2500, 200], [0, 0, 0], 2900, SIZE, k1);
        const shown = projectPoint(camera, [x, y, z]);
        if (!shown) return;
        const ray = rayThrough(camera, shown.px);
        const off = subtract([x, y, z], camera.centre);
        expect(dot(unit(off), ray)).toBeGreaterThan(1 - 1e-9);
      }),
    );
  });

  it('has the focal length that its angle of view or the equivalent on film says', () => {
    // 90° from side to side: as long as half the width. 43.27 mm is the diagonal of a 36 mm × 24 mm frame (Pythagoras).
    expect(focalFromAngle(90, SIZE)).toBeCloseTo(2016, 6);
    expect(focalFromEquivalent(43.2666, SIZE)).toBeCloseTo(5040, 1);
  });
});

describe('a homography', () => {
  // The unit square to any quadrilateral in closed form: Heckbert, "Fundamentals of texture mapping and image warping", master’s thesis, UCB 1989, 2.2.3.
  function ofSquare(q: readonly (readonly [number, number])[]): (x: number, y: number) => readonly [number, number] {
    const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = q as [
      [number, number],
      [number, number],
      [number, number],
      [number, number],
    ];
    const [dx1, dx2, sx] = [x1 - x2, x3 - x2, x0 - x1 + x2 - x3];
    const [dy1, dy2, sy] = [y1 - y2, y3 - y2, y0 - y1 + y2 - y3];
    const below = dx1 * dy2 - dx2 * dy1;
    const g = (sx * dy2 - dx2 * sy) / below;
    const h = (dx1 * sy - sx * dy1) / below;
    return (x, y) => {
      const w = g * x + h * y + 1;
      return [
        ((x1 - x0 + g * x1) * x + (x3 - x0 + h * x3) * y + x0) / w,
        ((y1 - y0 + g * y1) * x + (y3 - y0 + h * y3) * y + y0) / w,
      ];
    };
  }
  const QUAD = [
    [412, 1630],
    [2210, 1601],
    [1990, 402],
    [610, 298],
  ] as const;
  const SQUARE = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as const;
  const pairs: readonly PlanePair[] = SQUARE.map((on, i) => ({ on, px: QUAD[i] as readonly [number, number] }));

  it('of four corners is that of the closed form, and its inverse leads back', () => {
    const made = homographyOf(pairs);
    if (!made) throw new Error('no homography');
    const closed = ofSquare(QUAD);
    for (const on of [
      [0.5, 0.5],
      [0.2, 0.9],
      [0.77, 0.13],
    ] as const) {
      const shown = shownBy(made, on) as readonly [number, number];
      const [u, v] = closed(on[0], on[1]);
      expect(shown[0]).toBeCloseTo(u, 6);
      expect(shown[1]).toBeCloseTo(v, 6);
      const back = shownBy(inverse(made), shown) as readonly [number, number];
      expect(back[0]).toBeCloseTo(on[0], 9);
      expect(back[1]).toBeCloseTo(on[1], 9);
    }
  });

  it('is none of three points, or where three of four lie on a line and the fourth on it too', () => {
    expect(homographyOf(pairs.slice(0, 3))).toBeUndefined();
    const flat = [0, 1, 2, 3].map((i): PlanePair => ({ on: [i, i], px: [100 + 50 * i, 200 + 50 * i] }));
    expect(homographyOf(flat)).toBeUndefined();
  });
});

describe('a projection', () => {
  it('is parted into where its camera stands and its focal length', () => {
    // Hartley and Zisserman, Multiple View Geometry, 2nd ed. 2003, example 6.2, page 163: centre (1000, 2000, 1500), K 468.2, 427.2.
    const p = [
      3.53553e2, 3.39645e2, 2.77744e2, -1.44946e6, -1.03528e2, 2.33212e1, 4.59607e2, -6.32525e5, 7.07107e-1, -3.53553e-1,
      6.12372e-1, -9.18559e2,
    ];
    const camera = cameraOfProjection(p, [300, 200], [1000 + 707, 2000 - 353, 1500 + 612]);
    expect(camera?.centre[0]).toBeCloseTo(1000, 1);
    expect(camera?.centre[1]).toBeCloseTo(2000, 1);
    expect(camera?.centre[2]).toBeCloseTo(1500, 1);
    expect(camera?.focalPx).toBeCloseTo(Math.sqrt(468.2 * 427.2), 0);
    expect(camera?.look[0]).toBeCloseTo(Math.SQRT1_2, 4);
    expect(camera?.look[1]).toBeCloseTo(-0.353553, 4);
    expect(camera?.look[2]).toBeCloseTo(0.612372, 4);
    // The same with everything behind it is no camera.
    expect(cameraOfProjection(p, [300, 200], [1000 - 707, 2000 + 353, 1500 - 612])).toBeUndefined();
  });

  it('of six places in space is that of the camera that shows them; of six in a plane there is none', () => {
    const camera = cameraTowards([1200, -2600, 900], [300, 0, 400], 3050, SIZE);
    const seen = (at: Vec3) => ({ at, px: projectPoint(camera, at)?.px as readonly [number, number] });
    const found = cameraOfProjection(projectionOf(BOX.map(seen)) as readonly number[], camera.principal, [300, 0, 400]);
    expect(distance(found?.centre as Vec3, camera.centre)).toBeLessThan(1e-3);
    expect(found?.focalPx).toBeCloseTo(3050, 3);
    expect(projectionOf(BOX.map(([x, , z]) => seen([x, 0, z])))).toBeUndefined();
  });
});

describe('three points', () => {
  it('have the four answers of the textbook tetrahedron', () => {
    // Fischler and Bolles, "Random sample consensus", CACM 24, 1981, section IV: an equilateral base of side 2√3 seen under angles of
    // cosine 20/32 from an apex has legs (4, 4, 4), (1, 4, 4), (4, 1, 4) and (4, 4, 1). From memory; each is true by the law of cosines:
    // 4² + 4² − 2·4·4·20/32 = 12, and 4² + 1² − 2·4·1·20/32 = 12.
    const side = 2 * Math.sqrt(3);
    const base: readonly [Vec3, Vec3, Vec3] = [
      [0, 0, 0],
      [side, 0, 0],
      [side / 2, (side * Math.sqrt(3)) / 2, 0],
    ];
    // Three lines of sight with that angle between each two: 120° apart about the axis, tangent t with cos = (1 − t²/2) / (1 + t²).
    const t = Math.sqrt((1 - 20 / 32) / (0.5 + 20 / 32));
    const pixels = [0, 1, 2].map(
      (k) => [1000 * t * Math.cos((k * 2 * Math.PI) / 3), 1000 * t * Math.sin((k * 2 * Math.PI) / 3)] as const,
    );
    const lens = { ...cameraTowards([0, 0, 0], [0, 0, 1], 1000, { widthPx: 0, heightPx: 0 }), principal: [0, 0] as const };
    const found = camerasOfThree(
      lens,
      base,
      pixels as unknown as readonly [(typeof pixels)[0], (typeof pixels)[0], (typeof pixels)[0]] as never,
    );
    const legs = found.map(({ centre }) => base.map((at) => Math.round(distance(centre, at) * 1e4) / 1e4).join(' ')).sort();
    expect(new Set(legs)).toEqual(new Set(['4 4 4', '1 4 4', '4 1 4', '4 4 1']));
  });
});
