import { describe, expect, it } from 'vitest';
import { obstacles } from '../../../src/compute/access/obstacles.js';
import { lineWalls } from '../../../src/compute/access/walls.js';
import { bendFaults, linePath, memberBox, memberBoxes, stationAt } from '../../../src/compute/solids.js';
import { joints } from '../../../src/compute/structure/joints.js';
import { memberFigures } from '../../../src/compute/takeoff/members.js';
import { VIEWS } from '../../../src/drawing/projection.js';
import { silhouette } from '../../../src/drawing/visibility.js';
import { boxBounds, nearestInBox } from '../../../src/geometry/box.js';
import { distance, polylineLength, type Vec3 } from '../../../src/geometry/vector.js';
import type { LineMember, Member, SectionShape } from '../../../src/records/index.js';
import { buildModel, section } from '../../support/build.js';
import { lineMember } from '../../support/services.js';

const IN = 25.4;
const TUBE: SectionShape = {
  shape: 'rectangular tube',
  depthMm: IN,
  widthMm: IN,
  wallMm: IN / 8,
  cornerRadiusMm: 0,
};
const ANGLE: SectionShape = { shape: 'angle', depthMm: 50, widthMm: 50, wallMm: 5, filletMm: 0, toeRadiusMm: 0 };

const bent = (id: string, from: Vec3, to: Vec3, bends: readonly (readonly [Vec3, number])[], sectionId = 'RT1'): Member => {
  const straight = lineMember(id, sectionId, from, to);
  return { ...straight, shape: { ...straight.shape, bends: bends.map(([at, radiusMm]) => ({ at, radiusMm })) } as LineMember };
};
const shapeOf = (member: Member): LineMember => member.shape as LineMember;

/** A wheel arch: 20 in up, 42 in back, 20 in down, its corners bent on 8 in. */
const ARCH = bent(
  'WA',
  [0, 0, 0],
  [42 * IN, 0, 0],
  [
    [[0, 0, 20 * IN], 8 * IN],
    [[42 * IN, 0, 20 * IN], 8 * IN],
  ],
);
const library = {
  sections: new Map([
    ['RT1', section('RT1', TUBE)],
    ['L50', section('L50', ANGLE)],
  ]),
};
const model = (...members: readonly Member[]) => buildModel({ members }, library);

/** Worked by hand with the handbook's formulas for arcs: length r × angle, centre of gravity 2r/π from the centre of a quarter circle. */
describe('a bent member', () => {
  it('is as long, heavy and centred as a bender would cut it', () => {
    const [figure] = memberFigures(model(ARCH));
    // 12 + 12.566 + 26 + 12.566 + 12 in; 0.4375 in² of metal; 2700 kg/m³.
    expect((figure?.lengthMm ?? 0) / IN).toBeCloseTo(75.133, 3);
    expect(figure?.massKg).toBeCloseTo(0.4375 * 75.1327 * 16.387064e-6 * 2700, 4);
    // Height: (2 × 12 × 6 + 2 × 12.566 × (12 + 16/π) + 26 × 20) / 75.133 in.
    expect((figure?.centroid[2] ?? 0) / IN).toBeCloseTo(14.555, 3);
    expect((figure?.centroid[0] ?? 0) / IN).toBeCloseTo(21, 6);
  });

  it('is drawn by chords that stay within half a millimetre of the arc', () => {
    const path = linePath(shapeOf(ARCH));
    expect(polylineLength(path) / IN).toBeCloseTo(75.133, 1);
    const centre: Vec3 = [8 * IN, 0, 12 * IN];
    const onFirstArc = path.filter(([x, , z]) => x < 8 * IN && z > 12 * IN);
    expect(onFirstArc.length).toBeGreaterThan(5);
    for (const at of onFirstArc) expect(distance(at, centre)).toBeCloseTo(8 * IN, 6);
  });

  it('turns its section with it, so that the heel of an angle stays on the inside of the bend', () => {
    // Up, then to the rear: at `from` the depth points rearward, which is into the bend; after it, down.
    const leg = bent('A', [0, 0, 0], [1000, 0, 1000], [[[0, 0, 1000], 300]], 'L50');
    const [start, end] = [stationAt(shapeOf(leg), 0).frame, stationAt(shapeOf(leg), 1).frame];
    expect(start.depth).toEqual([1, 0, 0]);
    expect(end.depth.map((one) => Math.round(one * 1e9) / 1e9)).toEqual([0, 0, -1]);
    expect(end.along.map((one) => Math.round(one * 1e9) / 1e9)).toEqual([1, 0, 0]);
  });

  it('an arc all along, by its chord and rise', () => {
    // Chord 2400, rise 100: R = (1200² + 100²) / 200 = 7250 mm; half angle asin(1200/7250); the corner stands 1200 × tan of that over the chord.
    const half = Math.asin(1200 / 7250);
    const bow = bent('BOW', [0, -1200, 0], [0, 1200, 0], [[[0, 0, 1200 * Math.tan(half)], 7250]]);
    expect(bendFaults(shapeOf(bow))).toEqual([]);
    expect(stationAt(shapeOf(bow), 0.5).at[2]).toBeCloseTo(100, 3);
    expect(memberFigures(model(bow))[0]?.lengthMm).toBeCloseTo(2 * 7250 * half, 2);
  });

  it('stands where its metal is: not in the corner, and not on the chord', () => {
    const quarter = bent('Q', [0, 0, 0], [1000, 0, 1000], [[[0, 0, 1000], 300]]);
    const walls = lineWalls(quarter, TUBE);
    const away = (at: Vec3): number => Math.min(...walls.map((wall) => distance(at, nearestInBox(at, wall))));
    // From the sharp corner to the outer face of the arc: 300 (√2 − 1) less half of an inch.
    expect(away([0, 0, 1000])).toBeCloseTo(300 * (Math.SQRT2 - 1) - IN / 2, 0);
    // From the arc's centre: 300 less half of an inch.
    expect(away([300, 0, 700])).toBeCloseTo(300 - IN / 2, 0);
    const solid = obstacles(model(quarter));
    const way = (y: number, x: number, z: number) => ({
      start: [x, -y, z] as Vec3,
      hand: [x, y, z] as Vec3,
      target: [x, y + 50, z] as Vec3,
      radiusMm: 20,
    });
    const onArc = 300 * (1 - Math.SQRT1_2);
    expect(solid.inTheWay(way(200, onArc, 1000 - onArc))).toEqual(['Q']);
    expect(solid.isClear(way(200, 10, 990))).toBe(true);
    expect(solid.isClear(way(200, 500, 500))).toBe(true);
  });

  it('is joined to what touches its arc, and not to what stands at its corner', () => {
    const quarter = bent('Q', [0, 0, 0], [1000, 0, 1000], [[[0, 0, 1000], 300]]);
    // A bar across the coach under a slant of 45°, its face on the outer side of the arc, and one 10 mm further out.
    const bar = (id: string, offMm: number): Member => {
      const out = (300 + IN / 2 + 10 + offMm) * Math.SQRT1_2;
      return { ...lineMember(id, 'BAR', [300 - out, -200, 700 + out], [300 - out, 200, 700 + out]) };
    };
    const bars = { sections: new Map([...library.sections, ['BAR', section('BAR', { shape: 'round bar', diameterMm: 20 })]]) };
    const found = (one: Member) => joints(buildModel({ members: [quarter, one] }, bars)).joints.map(({ members }) => members);
    expect(found(bar('ON', 0))).toEqual([['Q', 'ON']]);
    expect(found(bar('OFF', 10))).toEqual([]);
    expect(found({ ...lineMember('CORNER', 'BAR', [0, -200, 1000], [0, 200, 1000]) })).toEqual([]);
  });

  it('is outlined as a band along its bend from the side, and as a bar from its edge', () => {
    const { library: known } = model(ARCH);
    const area = (ring: readonly (readonly [number, number])[]): number =>
      Math.abs(
        ring.reduce(
          (sum, [x, y], i) => sum + x * (ring[(i + 1) % ring.length]?.[1] ?? 0) - y * (ring[(i + 1) % ring.length]?.[0] ?? 0),
          0,
        ),
      ) / 2;
    const side = area(silhouette(ARCH, known, VIEWS.left)?.ring ?? []);
    expect(side / (75.133 * IN * IN)).toBeCloseTo(1, 2);
    const front = area(silhouette(ARCH, known, VIEWS.front)?.ring ?? []);
    expect(front / (20.5 * IN * IN)).toBeCloseTo(1, 1);
  });

  it('lies whole in the box that stands for it', () => {
    const whole = boxBounds(memberBox(shapeOf(ARCH), TUBE));
    for (const box of memberBoxes(shapeOf(ARCH), TUBE)) {
      const { min, max } = boxBounds(box);
      for (const k of [0, 1, 2] as const) {
        expect(min[k]).toBeGreaterThanOrEqual(whole.min[k] - 1e-6);
        expect(max[k]).toBeLessThanOrEqual(whole.max[k] + 1e-6);
      }
    }
    expect(whole.max[2] / IN).toBeCloseTo(20.5, 1);
  });

  it('says of a bend that does not fit how large it may be', () => {
    const tight = bent('T', [0, 0, 0], [1000, 0, 500], [[[0, 0, 500], 600]]);
    expect(bendFaults(shapeOf(tight))).toEqual([{ bend: 0, mostMm: expect.closeTo(500, 6) }]);
    expect(bendFaults(shapeOf(bent('BACK', [0, 0, 0], [0, 0, 0], [[[0, 0, 500], 60]])))).toEqual([{ bend: 0, mostMm: 0 }]);
    // It is still drawn, as large as it goes.
    expect(memberFigures(model(tight))[0]?.lengthMm).toBeCloseTo(500 + (Math.PI / 2) * 500, 6);
  });
});
