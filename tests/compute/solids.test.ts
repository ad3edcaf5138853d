import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memberBox, memberFrame, openingCorners, plateFaces } from '../../src/compute/solids.js';
import { cross, distance, dot, norm, scale, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';
import { sectionEnvelope } from '../../src/sections/index.js';
import { record } from '../support/build.js';

const spot = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -4000, max: 9000 }))) as unknown as fc.Arbitrary<Vec3>;
const close = (found: Vec3, expected: Vec3, digits = 9): void => {
  for (const k of [0, 1, 2] as const) expect(found[k]).toBeCloseTo(expected[k], digits);
};

/** Rotation of a vector about a unit axis: B. Olinde Rodrigues, "Des lois géométriques …", J. Math. Pures Appl. 5, 1840. */
function turned(v: Vec3, axis: Vec3, deg: number): Vec3 {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const along = dot(axis, v) * (1 - c);
  const across = cross(axis, v);
  return ([0, 1, 2] as const).map((k) => v[k] * c + across[k] * s + axis[k] * along) as unknown as Vec3;
}

describe('the directions of a member', () => {
  it.each([
    ['rearward', [0, 0, 0], [900, 0, 0], [0, 0, 1], [0, 1, 0]],
    ['forward', [900, 0, 0], [0, 0, 0], [0, 0, 1], [0, -1, 0]],
    ['to the right', [0, 0, 0], [0, 900, 0], [0, 0, 1], [-1, 0, 0]],
    ['upright', [0, 0, 0], [0, 0, 900], [1, 0, 0], [0, -1, 0]],
    // 3–4–5 in the plane y = 0: the depth leans back by as much as the member rises
    ['rising rearward', [0, 0, 0], [400, 0, 300], [-0.6, 0, 0.8], [0, 1, 0]],
  ] as const)('at no roll, %s', (_name, from, to, depth, width) => {
    const frame = memberFrame({ from, to, rollDeg: 0 });
    close(frame.depth, depth);
    close(frame.width, width);
  });

  it('are at right angles, turn with the roll right-handed about the line, and stand in the vertical plane without it', () => {
    fc.assert(
      fc.property(spot, spot, fc.integer({ min: -180, max: 180 }), (from, to, rollDeg) => {
        fc.pre(distance(from, to) > 1);
        const { along, depth, width, lengthMm } = memberFrame({ from, to, rollDeg });
        expect(lengthMm).toBeCloseTo(distance(from, to), 9);
        close(scale(along, lengthMm), subtract(to, from), 6);
        for (const one of [along, depth, width]) expect(norm(one)).toBeCloseTo(1, 9);
        close(width, cross(depth, along));
        expect(dot(along, depth)).toBeCloseTo(0, 9);
        const flat = memberFrame({ from, to, rollDeg: 0 });
        close(depth, turned(flat.depth, along, rollDeg));
        const isUpright = Math.hypot(along[0], along[1]) < 1e-3;
        if (isUpright) expect(flat.depth[0]).toBeCloseTo(1, 5);
        else {
          expect(flat.width[2]).toBeCloseTo(0, 9);
          expect(flat.depth[2]).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('count as upright within 0.06° of it', () => {
    const leaning = (deg: number): Vec3 =>
      memberFrame({ from: [0, 0, 0], to: [0, Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)], rollDeg: 0 })
        .depth;
    close(leaning(0.05), [1, 0, 0], 2);
    close(leaning(0.07), [0, -1, 0], 2);
    close(leaning(179.95), [1, 0, 0], 2);
  });
});

describe('what a member fills', () => {
  it('is its section’s outside, in the middle of its line', () => {
    const line = { kind: 'line', section: 'T', from: [0, 0, 0], to: [1000, 0, 0], rollDeg: 90 } as const;
    const box = memberBox(line, { shape: 'rectangular tube', depthMm: 100, widthMm: 50, wallMm: 5, cornerRadiusMm: 0 });
    expect(box.center).toEqual([500, 0, 0]);
    expect(box.half).toEqual([500, 50, 25]);
    // Rolled right-handed by a quarter about x, the depth goes from up to the left.
    close(box.axes[0], [1, 0, 0]);
    close(box.axes[1], [0, -1, 0]);
    close(box.axes[2], [0, 0, 1]);
  });

  it('goes by the outside of each shape', () => {
    expect(sectionEnvelope({ shape: 'round bar', diameterMm: 20 })).toEqual([20, 20]);
    expect(sectionEnvelope({ shape: 'round tube', diameterMm: 40, wallMm: 3 })).toEqual([40, 40]);
    expect(sectionEnvelope({ shape: 'corner radius', outerRadiusMm: 150, wallMm: 4, sweepDeg: 90 })).toEqual([150, 150]);
    expect(sectionEnvelope({ shape: 'flat bar', depthMm: 60, widthMm: 6 })).toEqual([60, 6]);
  });
});

describe('a plate', () => {
  it('has half of its thickness on each side of its outline', () => {
    const outline: Vec3[] = [
      [0, 0, 7],
      [300, 0, 7],
      [0, 400, 7],
    ];
    const [one, other] = plateFaces(outline, 6);
    expect(one).toEqual(outline.map(([x, y]) => [x, y, 10]));
    expect(other).toEqual(outline.map(([x, y]) => [x, y, 4]));
  });

  it('keeps its outline’s shape wherever it stands', () => {
    fc.assert(
      fc.property(spot, spot, spot, fc.integer({ min: 1, max: 20 }), (a, b, c, thicknessMm) => {
        fc.pre(norm(cross(subtract(b, a), subtract(c, a))) > 1);
        const faces = plateFaces([a, b, c], thicknessMm);
        const normal = unit(cross(subtract(b, a), subtract(c, a)));
        [a, b, c].forEach((corner, i) => {
          for (const [k, side] of [1, -1].entries()) {
            const off = subtract(faces[k]?.[i] as Vec3, corner);
            close(off, scale(normal, (side * thicknessMm) / 2), 6);
          }
        });
      }),
    );
  });
});

describe('an opening', () => {
  const opening = (sill: readonly Vec3[]) => ({
    ...record('SO-1'),
    openingKind: 'slide-out',
    sill,
    widthMm: 1000,
    heightMm: 700,
    gussets: [],
  });

  it('stands on its sill, from its first place to its last', () => {
    const sill: Vec3[] = [
      [0, -900, 100],
      [500, -900, 100],
      [1000, -900, 110],
    ];
    expect(openingCorners(opening(sill))).toEqual([
      [0, -900, 100],
      [1000, -900, 110],
      [1000, -900, 810],
      [0, -900, 800],
    ]);
  });

  it('has a sill of two places as a rule', () => {
    expect(
      openingCorners(
        opening([
          [0, 0, 0],
          [1000, 0, 0],
        ]),
      )?.[2],
    ).toEqual([1000, 0, 700]);
  });

  it('has no corners where its sill is no line', () => {
    expect(openingCorners(opening([]))).toBeUndefined();
    expect(openingCorners(opening([[1, 2, 3]]))).toBeUndefined();
  });
});
