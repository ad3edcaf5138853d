import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearances } from '../../../src/compute/access/clearances.js';
import { movingParts } from '../../../src/compute/access/moving.js';
import { convexOfBox } from '../../../src/geometry/convex.js';
import { convexDistance } from '../../../src/geometry/convex-distance.js';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Model } from '../../../src/model/shell.js';
import type { Axle, Opening } from '../../../src/records/index.js';
import { tyreSize } from '../../../src/records/tyre-size.js';
import { buildModel, record, section } from '../../support/build.js';
import { component, lineMember, node, run } from '../../support/services.js';

/** Hub 500 under the rail, tyre 1000 × 300; at full bump its top is at z = 100. */
const axle: Axle = {
  id: 'drive',
  xMm: 6000,
  trackMm: 2000,
  dual: false,
  lift: false,
  steered: false,
  travel: { bumpMm: 100, reboundMm: 80 },
  tyres: { count: 2, loadIndex: [150], diameterMm: 1000, widthMm: 300 },
};
const on = (axles: readonly Axle[], more: Partial<Model['shell']> = {}): Model =>
  buildModel(
    { chassis: { frame: { railTopAboveGroundMm: 1000 }, axles }, ...more },
    { sections: new Map([['BAR', section('BAR', { shape: 'flat bar', depthMm: 20, widthMm: 20 })]]) },
  );
const along = (id: string, from: Vec3, to: Vec3, toleranceMm?: number) =>
  run(id, node(`${id}a`, from), node(`${id}b`, to), [], toleranceMm === undefined ? {} : { toleranceMm });
const near = (model: Model) => clearances(model, { runs: [] }).tooNear;

describe('the room of a tyre', () => {
  it('is the disc from full rebound to full bump', () => {
    const over = (z: number) => near(on([axle], { runs: [along('R', [5900, 1000, z], [6100, 1000, z])] }))[0];
    expect(over(149)).toMatchObject({ part: 'drive', kind: 'tyre', what: 'run', id: 'R', limitMm: 50 });
    expect(over(149)?.distanceMm).toBeCloseTo(49, 2);
    expect(over(151)).toBeUndefined();
    // Down at full rebound: hub at −580, and the tyre's side at y = 850
    const below = near(on([axle], { runs: [along('R', [6000, 820, -1070], [6000, 820, -900])] }))[0];
    expect(below?.distanceMm).toBeCloseTo(30, 2);
  });

  it('judges a run nearer by its tolerance, and members and equipment by their outsides', () => {
    const over = near(on([axle], { runs: [along('R', [5900, 1000, 160], [6100, 1000, 160], 15)] }))[0];
    expect(over?.recordedMm).toBeCloseTo(60, 2);
    expect(over?.distanceMm).toBeCloseTo(45, 2);
    const bar = near(on([axle], { members: [lineMember('M', 'BAR', [5000, 1000, 130], [7000, 1000, 130])] }))[0];
    expect(bar).toMatchObject({ id: 'M', what: 'member' });
    expect(bar?.distanceMm).toBeCloseTo(20, 2);
    const box = near(on([axle], { components: [component('C', [6000, 1000, 190], [100, 100, 100])] }))[0];
    expect(box?.distanceMm).toBeCloseTo(40, 2);
  });

  it('is wider for duals, and for a wheel that steers as long and wide as it gets on the way to full lock', () => {
    const bounds = (more: Partial<Axle>) => {
      const { min, max } = (
        movingParts(on([{ ...axle, ...more }])).parts.find(({ name }) => name.includes('right')) as never as {
          bounds: { min: Vec3; max: Vec3 };
        }
      ).bounds;
      return [max[0] - min[0], max[1] - min[1], max[2] - min[2]] as const;
    };
    const [long, wide, high] = bounds({});
    expect(wide).toBeCloseTo(300, 6);
    expect(high).toBeCloseTo(1000 + 180, 6);
    // Sides that touch the circle outside stand out by 1 − cos 7.5° at the corners.
    expect(long).toBeGreaterThanOrEqual(1000);
    expect(long).toBeLessThan(1000 / Math.cos(Math.PI / 24) + 1e-6);
    expect(bounds({ dual: true, tyres: { ...axle.tyres, spacingMm: 340 } as never })[1]).toBeCloseTo(640, 6);
    const turned = bounds({ steered: true, steerDeg: 40 });
    // 500 sin 40° + 150 cos 40° each side; the longest on the way is the diagonal √(500² + 150²)
    expect(turned[1]).toBeCloseTo(2 * (500 * Math.sin((40 * Math.PI) / 180) + 150 * Math.cos((40 * Math.PI) / 180)), 6);
    expect(turned[0]).toBeGreaterThanOrEqual(2 * Math.hypot(500, 150) - 1e-9);
  });

  it('holds every place of the tyre at any travel and any lock', () => {
    const { parts } = movingParts(on([{ ...axle, steered: true, steerDeg: 38 }]));
    const right = parts.find(({ name }) => name.includes('right'));
    if (!right) throw new Error('an axle has a right side');
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, share, share, share, (lift, lock, turn, out, across) => {
        const hub = -500 - 80 + lift * 180;
        const angle = ((2 * lock - 1) * 38 * Math.PI) / 180;
        const [r, a, w] = [500 * Math.sqrt(out), 2 * Math.PI * turn, 300 * (across - 0.5)];
        const [alongWheel, up] = [r * Math.cos(a), r * Math.sin(a)];
        const at: Vec3 = [
          6000 + alongWheel * Math.cos(angle) - w * Math.sin(angle),
          1000 + alongWheel * Math.sin(angle) + w * Math.cos(angle),
          hub + up,
        ];
        const speck = {
          center: at,
          axes: [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ] as const,
          half: [1e-3, 1e-3, 1e-3] as const,
        };
        expect(convexDistance(convexOfBox(speck), right.room)).toBe(0);
      }),
    );
  });

  it('is not judged where travel, lock or size is not on record, and says what is missing', () => {
    const { travel: _, ...still } = axle;
    const { tooNear, unknown } = clearances(
      on([{ ...still, steered: true }], { runs: [along('R', [5900, 1000, 0], [6100, 1000, 0])] }),
      { runs: [] },
    );
    expect(tooNear).toEqual([]);
    expect(unknown).toEqual([{ id: 'drive', kind: 'tyre', missing: ['`travel: {bump: …, rebound: …}`', '`steer_angle`'] }]);
  });

  it('comes from the size on the side wall: 295/75R22.5 is 22.5 × 25.4 + 2 × 0.75 × 295 = 1014 mm (ISO 4223-1, from memory)', () => {
    expect(tyreSize('295/75R22.5')).toEqual({ diameterMm: 1014, widthMm: 295 });
    expect(tyreSize('LT275/70R18')?.diameterMm).toBeCloseTo(18 * 25.4 + 2 * 0.7 * 275, 9);
    expect(tyreSize('11R22.5')).toBeUndefined();
    expect(tyreSize(undefined)).toBeUndefined();
  });
});

describe('the way of a slide-out', () => {
  const opening: Opening = {
    ...record('SO-1'),
    openingKind: 'slide-out',
    wall: 'left',
    sill: [
      [4000, -1200, 300],
      [7000, -1200, 300],
    ],
    widthMm: 3000,
    heightMm: 1700,
    gussets: [],
    travelMm: 600,
    depthMm: 700,
  };

  it('goes from as deep as it stands to as far as it comes out', () => {
    const at = (y: number) => near(on([], { openings: [opening], runs: [along('R', [5000, y, 900], [6000, y, 900])] }))[0];
    expect(at(-460)?.distanceMm).toBeCloseTo(40, 3);
    expect(at(-440)).toBeUndefined();
    expect(at(-1839)?.distanceMm).toBeCloseTo(39, 3);
    expect(at(-1851)).toBeUndefined();
  });

  it('is free for what drives it, by id or by circuit, and not for the members about it', () => {
    const inWay = { ...along('HY/1', [5000, -900, 900], [6000, -900, 900]), circuit: 'HY' };
    const judged = (drivenBy: readonly string[]) =>
      near(
        on([], {
          openings: [{ ...opening, drivenBy }],
          runs: [inWay],
          members: [lineMember('P', 'BAR', [3990, -1200, 0], [3990, -1200, 2000])],
        }),
      );
    expect(judged([]).map(({ id }) => id)).toEqual(['HY/1']);
    expect(judged(['HY'])).toEqual([]);
    expect(judged(['HY/1'])).toEqual([]);
  });

  it('is not judged without travel and depth', () => {
    const { travelMm: _, depthMm: __, ...bare } = opening;
    expect(clearances(on([], { openings: [bare] }), { runs: [] }).unknown).toEqual([
      { id: 'SO-1', kind: 'slide', missing: ['`travel`', '`depth`'] },
    ]);
  });
});

describe('hot parts', () => {
  const flue = { ...component('F', [0, 0, 0], [100, 100, 100]), hot: 'dry' as const };

  it('want 230 mm when dry and 50 when wet, or what their maker says', () => {
    const at = (y: number, more: object = {}) =>
      near(on([], { components: [{ ...flue, ...more }], runs: [along('R', [-500, y, 0], [500, y, 0])] }))[0];
    expect(at(279)?.distanceMm).toBeCloseTo(229, 3);
    expect(at(281)).toBeUndefined();
    expect(at(101, { hot: 'wet' })).toBeUndefined();
    expect(at(99, { hot: 'wet' })?.limitMm).toBe(50);
    expect(at(151, { keepClearMm: 100 })).toBeUndefined();
    expect(at(149, { keepClearMm: 100 })?.limitMm).toBe(100);
    expect(at(200, { sizeMm: undefined })?.distanceMm).toBeCloseTo(200, 2);
  });

  it('do not count the run that ends on them', () => {
    expect(near(on([], { components: [flue], runs: [along('G', [60, 0, 0], [500, 0, 0])] }))).toEqual([]);
  });
});
