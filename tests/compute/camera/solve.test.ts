import { describe, expect, it } from 'vitest';
import { type Camera, type Pixel, projectPoint } from '../../../src/compute/camera/camera.js';
import type { Sighting } from '../../../src/compute/camera/fit.js';
import { locateOn } from '../../../src/compute/camera/locate.js';
import { solvePicture } from '../../../src/compute/camera/solve.js';
import { distance, type Vec3 } from '../../../src/geometry/vector.js';
import { cameraTowards, WALL } from '../../support/cameras.js';

/** A synthetic camera: what it should find is known. Park and Miller’s generator, CACM 31, 1988. */
class Chance {
  constructor(private seed: number) {}
  next(): number {
    this.seed = (this.seed * 16807) % 2147483647;
    return this.seed / 2147483647;
  }
  between(least: number, most: number): number {
    return least + (most - least) * this.next();
  }
  /** Box and Muller, 1958. */
  normal(): number {
    return Math.sqrt(-2 * Math.log(this.next())) * Math.cos(2 * Math.PI * this.next());
  }
}

const SIZE = { widthPx: 4032, heightPx: 3024 };
const TRIALS = Number(process.env.SHELLBOOK_FUZZ ?? 0) > 0 ? 400 : 20;
const LIMIT_MM = 20;

interface Setting {
  readonly flat: boolean;
  readonly focal: boolean;
  readonly points: number;
  readonly noisePx: number;
}

function trial(chance: Chance, { flat, points, noisePx }: Setting): { camera: Camera; sightings: Sighting[]; spreadMm: number } {
  const focalPx = (chance.between(24, 50) / Math.hypot(36, 24)) * Math.hypot(SIZE.widthPx, SIZE.heightPx);
  const away = chance.between(1200, 3500);
  const centre: Vec3 = [chance.between(-700, 700), -away, chance.between(-500, 500)];
  const camera = cameraTowards(centre, [chance.between(-150, 150), 0, chance.between(-150, 150)], focalPx, SIZE);
  const spreadMm = (away / focalPx) * SIZE.widthPx * 0.38;
  const sightings: Sighting[] = [];
  while (sightings.length < points) {
    const at: Vec3 = [
      chance.between(-1, 1) * spreadMm,
      flat ? 0 : chance.between(-0.3, 0.5) * 600,
      chance.between(-0.75, 0.75) * spreadMm,
    ];
    const seen = sightingOf(camera, at, noisePx, chance);
    if (seen)
      sightings.push({ ...seen, at: flat ? [at[0] + chance.normal(), 0, at[2] + chance.normal()] : jittered(at, chance) });
  }
  return { camera, sightings, spreadMm };
}

const jittered = (at: Vec3, chance: Chance): Vec3 => [at[0] + chance.normal(), at[1] + chance.normal(), at[2] + chance.normal()];

function sightingOf(camera: Camera, at: Vec3, noisePx: number, chance: Chance): Sighting | undefined {
  const shown = projectPoint(camera, at)?.px;
  if (!shown) return undefined;
  const px: Pixel = [shown[0] + noisePx * chance.normal(), shown[1] + noisePx * chance.normal()];
  return px[0] >= 0 && px[1] >= 0 && px[0] <= SIZE.widthPx && px[1] <= SIZE.heightPx
    ? { at, px, sigmaMm: 1, sigmaPx: noisePx }
    : undefined;
}

const onWall = (from: Vec3, along: Vec3): Vec3 | undefined => {
  const by = -from[1] / along[1];
  return by > 0 ? [from[0] + by * along[0], 0, from[2] + by * along[2]] : undefined;
};

describe('a picture with points that are known', () => {
  it.each([
    { flat: true, focal: false, points: 8, noisePx: 1.5 },
    { flat: true, focal: true, points: 6, noisePx: 1 },
    { flat: false, focal: true, points: 8, noisePx: 2 },
    { flat: false, focal: false, points: 10, noisePx: 1.5 },
  ])(
    'tells places that it was not told within what it says, 19 times in 20: $points points, flat $flat, focal length $focal',
    (setting) => {
      const chance = new Chance(20261 + setting.points + Number(setting.focal));
      let [inside, told] = [0, 0];
      for (let k = 0; k < TRIALS; k++) {
        const { camera, sightings, spreadMm } = trial(chance, setting);
        const solved = solvePicture(sightings, { size: SIZE, ...(setting.focal ? { focalPx: camera.focalPx } : {}) }, LIMIT_MM);
        if (!solved.fit || !solved.usable) continue;
        for (let j = 0; j < 5; j++) {
          const at: Vec3 = [chance.between(-0.6, 0.6) * spreadMm, 0, chance.between(-0.5, 0.5) * spreadMm];
          const seen = sightingOf(camera, at, setting.noisePx, chance);
          const found = seen && locateOn(solved.fit, seen.px, onWall, setting.noisePx);
          if (!found) continue;
          told++;
          if (distance(found.at, at) <= found.uncertaintyMm) inside++;
        }
      }
      expect(told).toBeGreaterThan(TRIALS * 3);
      // 95 % is meant; three standard deviations of a share counted in so few trials are allowed for.
      expect(inside / told).toBeGreaterThan(0.95 - 3 * Math.sqrt((0.95 * 0.05) / told));
    },
  );

  it('is less sure of places in proportion to how far away the camera stood', () => {
    // A pixel covers depth / focal length (Hartley and Zisserman, 6.1): twice as far, twice as much, once the points are exact.
    const at = (away: number): number => {
      const camera = cameraTowards([0, -away, 0], [0, 0, 0], 3000, SIZE);
      const half = away * 0.4;
      const places: readonly Vec3[] = [-1, 0, 1].flatMap((a) => [-1, 0, 1].map((b): Vec3 => [a * half, 0, b * half * 0.8]));
      const sightings = places.map((place) => ({
        at: place,
        px: projectPoint(camera, place)?.px as Pixel,
        sigmaMm: 0,
        sigmaPx: 2,
      }));
      const { fit } = solvePicture(sightings, { size: SIZE }, LIMIT_MM);
      return (fit && locateOn(fit, [2016, 1512], onWall, 2)?.uncertaintyMm) ?? Number.NaN;
    };
    expect(at(4000) / at(2000)).toBeCloseTo(2, 1);
    expect(at(2000) / at(1000)).toBeCloseTo(2, 1);
  });

  it('names one wrong point where there is one to spare, and does not average it in', () => {
    const chance = new Chance(77);
    for (const setting of [
      { flat: true, focal: false, points: 8, noisePx: 1 },
      { flat: false, focal: true, points: 8, noisePx: 1 },
    ]) {
      const { camera, sightings } = trial(chance, setting);
      const wrong = sightings.map((one, i) => (i === 2 ? { ...one, px: [one.px[0] + 180, one.px[1] - 90] as const } : one));
      const solved = solvePicture(wrong, { size: SIZE, ...(setting.focal ? { focalPx: camera.focalPx } : {}) }, LIMIT_MM);
      expect(solved.usable).toBe(true);
      expect(solved.points.map(({ leftOut }) => leftOut)).toEqual(sightings.map((_, i) => i === 2));
      expect(solved.points[2]?.residualMm).toBeGreaterThan(LIMIT_MM);
      expect(solved.leftOutMm).toBeLessThan(LIMIT_MM);
    }
  });
});

describe('a picture that cannot be used', () => {
  const camera = cameraTowards([200, -2000, 300], [0, 0, 0], 3000, SIZE);
  const see = (places: readonly Vec3[], with_: Camera = camera): readonly Sighting[] =>
    places.map((at) => ({ at, px: projectPoint(with_, at)?.px as Pixel, sigmaMm: 1, sigmaPx: 2 }));
  const ROOM: readonly Vec3[] = [...WALL.slice(0, 4), [100, -300, 100], [-200, 250, -50], [250, -150, -250], [-350, 150, 300]];
  const whats = (sightings: readonly Sighting[], focalPx?: number, size = SIZE) => {
    const solved = solvePicture(sightings, { size, ...(focalPx === undefined ? {} : { focalPx }) }, LIMIT_MM);
    return [solved.usable, ...solved.notes.map(({ what }) => what)];
  };

  it('has too few points, or no fifth one to tell how good it is', () => {
    expect(whats(see(WALL.slice(0, 3)))).toEqual([false, 'too few']);
    expect(whats(see(WALL.slice(0, 4)))).toEqual([false, 'too few']);
    expect(whats(see(WALL.slice(0, 5)))).toEqual([true]);
    expect(whats(see(ROOM.slice(0, 6)))).toEqual([false, 'too few']);
    expect(whats(see(ROOM.slice(0, 7)))).toEqual([true]);
    expect(whats(see(ROOM.slice(0, 5)), 3000)).toEqual([true]);
  });

  it('has its points on a line, one twice, or one outside', () => {
    expect(whats(see([-2, -1, 0, 1, 2].map((k): Vec3 => [k * 250, 0, k * 100])))).toEqual([false, 'on a line']);
    expect(whats(see([...WALL.slice(0, 4), WALL[0] as Vec3]))).toEqual([false, 'twice']);
    const beside = see(WALL).map((one, i) => (i === 1 ? { ...one, px: [5000, 200] as const } : one));
    expect(whats(beside)).toEqual([false, 'outside']);
  });

  it('is mirrored, or was counted on a copy turned by a quarter', () => {
    const mirrored = see(ROOM).map((one) => ({ ...one, px: [SIZE.widthPx - one.px[0], one.px[1]] as const }));
    expect(whats(mirrored, 3000)).toEqual([false, 'mirrored']);
    const tall = { widthPx: SIZE.heightPx, heightPx: SIZE.widthPx };
    expect(whats(see(ROOM), 3000, tall)).toEqual([false, 'turned']);
  });

  it('has points in the wrong order', () => {
    const px = see(WALL).map((one) => one.px);
    const order = [3, 0, 2, 1, 4, 5];
    expect(whats(WALL.map((at, i) => ({ at, px: px[order[i] as number] as Pixel, sigmaMm: 1, sigmaPx: 2 })))[0]).toBe(false);
  });

  it('is a crop: used without its focal length, and said so', () => {
    const cropped = see(ROOM).map((one) => ({ ...one, px: [one.px[0] - 700, one.px[1] - 300] as const }));
    // What its file says of the lens is of the whole frame, and is taken to be of the crop’s diagonal.
    const small = { widthPx: 2600, heightPx: 2400 };
    const said = 3000 * (Math.hypot(2600, 2400) / Math.hypot(SIZE.widthPx, SIZE.heightPx));
    expect(whats(cropped, said, small)).toEqual([true, 'cropped']);
  });
});
