import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongRay, rayToBall, rayToTube } from '../../src/geometry/ray.js';
import { nearestOnSegment } from '../../src/geometry/segment.js';
import { unit, type Vec3 } from '../../src/geometry/vector.js';

const place = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -40, max: 40 }))) as unknown as fc.Arbitrary<Vec3>;
const way = place.filter((at) => at.some((part) => part !== 0)).map(unit);

describe('ray and tube', () => {
  it('meets the side, a round end, or nothing', () => {
    // A tube of radius 5 along x from 0 to 100, looked at from 20 over it, from its end, and past it.
    expect(rayToTube([50, 0, 20], [0, 0, -1], [0, 0, 0], [100, 0, 0], 5)).toBe(15);
    expect(rayToTube([-20, 0, 0], [1, 0, 0], [0, 0, 0], [100, 0, 0], 5)).toBe(15);
    expect(rayToTube([50, 0, 3], [0, 0, -1], [0, 0, 0], [100, 0, 0], 5)).toBe(0);
    expect(rayToTube([50, 6, 20], [0, 0, -1], [0, 0, 0], [100, 0, 0], 5)).toBeUndefined();
    // 3–4–5 on the ball at the end: 3 beyond it, the ball is 4 high there
    expect(rayToTube([103, 0, 20], [0, 0, -1], [0, 0, 0], [100, 0, 0], 5)).toBe(16);
    expect(rayToTube([50, 0, 20], [0, 0, 1], [0, 0, 0], [100, 0, 0], 5)).toBeUndefined();
    expect(rayToTube([1, 2, 20], [0, 0, -1], [1, 2, 3], [1, 2, 3], 5)).toBe(12);
  });

  it('is met at once from its surface, and where the ray only grazes it', () => {
    expect(rayToTube([50, 0, 5], [0, 0, 1], [0, 0, 0], [100, 0, 0], 5)).toBe(0);
    expect(rayToTube([50, -20, 5], [0, 1, 0], [0, 0, 0], [100, 0, 0], 5)).toBe(20);
    expect(rayToBall([5, 0, 0], [1, 0, 0], [0, 0, 0], 5)).toBe(0);
    expect(rayToBall([-10, 5, 0], [1, 0, 0], [0, 0, 0], 5)).toBe(10);
    expect(rayToBall([-10, 5.001, 0], [1, 0, 0], [0, 0, 0], 5)).toBeUndefined();
    expect(rayToBall([20, 0, 0], [1, 0, 0], [0, 0, 0], 5)).toBeUndefined();
    expect(rayToBall([-20, 0, 0], [1, 0, 0], [0, 0, 0], 5)).toBe(15);
  });

  it('is met first where a walk along the ray comes within the radius first', () => {
    fc.assert(
      fc.property(place, way, place, place, fc.integer({ min: 1, max: 15 }), (start, along, from, to, radius) => {
        const met = rayToTube(start, along, from, to, radius);
        const away = (t: number): number => nearestOnSegment(alongRay(start, along, t), from, to).distance;
        if (met !== undefined && met > 0) expect(away(met)).toBeCloseTo(radius, 6);
        for (let t = 0; t < Math.min(met ?? 200, 200); t += 0.25) expect(away(t)).toBeGreaterThan(radius - 1e-6);
      }),
    );
  });

  it('of no length is a ball', () => {
    fc.assert(
      fc.property(place, way, place, fc.integer({ min: 1, max: 15 }), (start, along, at, radius) => {
        const [tube, ball] = [rayToTube(start, along, at, at, radius), rayToBall(start, along, at, radius)];
        if (ball === undefined) expect(tube).toBeUndefined();
        else expect(tube).toBeCloseTo(ball, 9);
      }),
    );
  });
});
