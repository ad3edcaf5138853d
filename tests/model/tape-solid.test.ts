import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/geometry/vector.js';
import { tapeEnd } from '../../src/model/tape-end.js';
import { type TapeSolid, tapeSolid } from '../../src/model/tape-solid.js';
import { typedOrigin } from '../../src/model/typed-origin.js';
import type { TapePhrase } from '../../src/records/form/tape.js';
import { buildModel, record } from '../support/build.js';
import { component, levelPanel, lineMember, zone } from '../support/services.js';
import { plateMember, sections } from '../support/structure.js';

const { library } = buildModel({}, { sections });
const solid = (kind: Parameters<typeof tapeSolid>[0], of: unknown): TapeSolid => {
  const found = tapeSolid(kind, of, library);
  if (!found) throw new Error('no solid');
  return found;
};

/** Each bound by hand from the middle, less and more half of the size. */
describe('what a tape is held to', () => {
  it('is the box about a component, and a point of what has no size', () => {
    const { bounds, meets } = solid('component', component('C', [100, 200, 300], [20, 40, 60]));
    expect(bounds).toEqual({ min: [90, 180, 270], max: [110, 220, 330] });
    expect(meets(0, [0, 200, 300])).toEqual([90, 110]);
    expect(meets(1, [100, 0, 300])).toEqual([180, 220]);
    expect(meets(2, [100, 200, 0])).toEqual([270, 330]);
    // On a face it still meets it, a millimetre beside it not.
    for (const [y, z] of [
      [180, 300],
      [220, 300],
      [200, 270],
      [200, 330],
    ] as const)
      expect(meets(0, [0, y, z]), `${y} ${z}`).toEqual([90, 110]);
    for (const [y, z] of [
      [179, 300],
      [221, 300],
      [200, 269],
      [200, 331],
    ] as const)
      expect(meets(0, [0, y, z]), `${y} ${z}`).toBeUndefined();
    expect(meets(2, [89, 200, 0])).toBeUndefined();
    expect(solid('component', component('C', [1, 2, 3])).bounds).toEqual({ min: [1, 2, 3], max: [1, 2, 3] });
  });

  it('is the box about the middle of its size where that is not its center of gravity', () => {
    const off = { ...component('C', [100, 200, 300], [20, 40, 60]), middle: [0, 0, 0] };
    expect(solid('component', off).bounds).toEqual({ min: [-10, -20, -30], max: [10, 20, 30] });
  });

  it('is the body of what has one', () => {
    const bay = { ...record('B'), at: [100, 200, 300], body: { sizeMm: [20, 40, 60] } };
    expect(solid('bay', bay).bounds).toEqual({ min: [90, 180, 270], max: [110, 220, 330] });
    const moved = { ...bay, body: { sizeMm: [20, 40, 60], middle: [0, 0, 0] } };
    expect(solid('bay', moved).bounds).toEqual({ min: [-10, -20, -30], max: [10, 20, 30] });
    // What stands beside `body` is no size of it.
    expect(solid('bay', { ...record('B'), at: [1, 2, 3], sizeMm: [20, 40, 60] }).bounds.max).toEqual([1, 2, 3]);
  });

  it('is nothing where there is no record or no place', () => {
    expect(tapeSolid('node', undefined, library)).toBeUndefined();
    expect(tapeSolid('node', record('N'), library)).toBeUndefined();
    expect(tapeSolid('member', lineMember('M', 'NOBODY', [0, 0, 0], [1, 0, 0]), library)).toBeUndefined();
    expect(tapeSolid('panel', levelPanel('P', [0, 0, 0], [0, 0]), library)).toBeUndefined();
    expect(tapeSolid('zone', { ...record('Z') }, library)).toBeUndefined();
    expect(tapeSolid('opening', { ...record('O'), sill: [[0, 0, 0]], heightMm: 100 }, library)).toBeUndefined();
  });

  it('is both faces of an upright sheet, half of its thickness to each side of its corners', () => {
    const skin = {
      ...levelPanel('P', [0, 0, 0], [1, 1], { thicknessMm: 4 }),
      outline: [
        [0, -1000, 0],
        [1000, -1000, 0],
        [1000, -1000, 500],
        [0, -1000, 500],
      ],
    };
    const { bounds, meets } = solid('panel', skin);
    expect(bounds).toEqual({ min: [0, -1002, 0], max: [1000, -998, 500] });
    const met = meets(1, [500, 0, 250]);
    expect(met?.[0]).toBeCloseTo(-1002, 6);
    expect(met?.[1]).toBeCloseTo(-998, 6);
    expect(meets(1, [1001, 0, 250])).toBeUndefined();
    // Within its own plane a line meets no face of it.
    expect(meets(0, [500, -1000, 250])).toBeUndefined();
    expect(meets(2, [500, -1000, 250])).toBeUndefined();
    // Without a thickness it is its own plane.
    const { thicknessMm: _, ...thin } = skin;
    expect(solid('panel', thin).bounds).toEqual({ min: [0, -1000, 0], max: [1000, -1000, 500] });
  });

  it('is the slanting way through a sheet that leans by 45°', () => {
    // 10 mm thick: 10 / √2 / 2 = 3.54 mm to each side on x and z, and 10 · √2 / 2 = 7.07 mm along a line on either.
    const plate = plateMember(
      'G',
      [
        [0, 100, 0],
        [1000, 100, 1000],
        [1000, 600, 1000],
        [0, 600, 0],
      ],
      10,
    );
    const { bounds, meets } = solid('member', plate);
    const [thin, through] = [10 / Math.SQRT2 / 2, (10 * Math.SQRT2) / 2];
    [-thin, 100, -thin].forEach((value, k) => void expect(bounds.min[k]).toBeCloseTo(value, 9));
    [1000 + thin, 600, 1000 + thin].forEach((value, k) => void expect(bounds.max[k]).toBeCloseTo(value, 9));
    for (const [axis, at] of [
      [2, [400, 250, 0]],
      [0, [0, 250, 400]],
    ] as const) {
      const met = meets(axis, at);
      expect(met?.[0]).toBeCloseTo(400 - through, 6);
      expect(met?.[1]).toBeCloseTo(400 + through, 6);
    }
    expect(meets(0, [0, 99, 400])).toBeUndefined();
  });

  it('is the doorway of an opening, without a thickness', () => {
    const door = {
      ...record('O'),
      sill: [
        [0, 900, 100],
        [700, 900, 100],
      ],
      heightMm: 1800,
    };
    const { bounds, meets } = solid('opening', door);
    expect(bounds).toEqual({ min: [0, 900, 100], max: [700, 900, 1900] });
    expect(meets(1, [350, 0, 1000])?.map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([900, 900]);
    expect(meets(1, [350, 0, 1901])).toBeUndefined();
  });

  it('is the outside of a tube, hollow or not, and nothing beside it', () => {
    // 50 mm square about its line.
    const { bounds, meets } = solid('member', lineMember('POST', 'RT50', [500, 100, 0], [500, 100, 600]));
    expect([bounds.min, bounds.max].flat().map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([475, 75, 0, 525, 125, 600]);
    for (const [axis, at, low, high] of [
      [0, [0, 100, 300], 475, 525],
      [1, [500, 0, 300], 75, 125],
    ] as const) {
      const met = meets(axis, at);
      expect(met?.[0]).toBeCloseTo(low, 6);
      expect(met?.[1]).toBeCloseTo(high, 6);
    }
    expect(meets(0, [0, 130, 300])).toBeUndefined();
    expect(meets(0, [0, 100, 601])).toBeUndefined();
    // Down its hollow there is no metal.
    expect(meets(2, [500, 100, 0])).toBeUndefined();
  });

  it('is the box of a zone, or what is swept along its line: half of its width on the axes that the line does not run along', () => {
    const box = zone('Z', [
      [100, 50, 30],
      [0, 0, 0],
    ]);
    expect(solid('zone', box).bounds).toEqual({ min: [0, 0, 0], max: [100, 50, 30] });
    const swept = (along: readonly Vec3[], clearMm?: readonly [number, number]) =>
      solid('zone', { ...record('Z'), along, ...(clearMm ? { clearMm } : {}) }).bounds;
    const clear = [100, 60] as const;
    expect(
      swept(
        [
          [0, 10, 20],
          [1000, 10, 20],
        ],
        clear,
      ),
    ).toEqual({ min: [0, -40, -10], max: [1000, 60, 50] });
    expect(
      swept(
        [
          [0, 10, 0],
          [0, 10, 900],
        ],
        clear,
      ),
    ).toEqual({ min: [-50, -40, 0], max: [50, 60, 900] });
    expect(
      swept(
        [
          [0, 0, 0],
          [0, 800, 0],
        ],
        clear,
      ),
    ).toEqual({ min: [-50, 0, -30], max: [50, 800, 30] });
    // A millimetre to the side is no way that it runs.
    expect(
      swept(
        [
          [0, 0, 0],
          [1000, 1, 0],
        ],
        clear,
      ),
    ).toEqual({ min: [0, -50, -30], max: [1000, 51, 30] });
    expect(
      swept([
        [0, 10, 20],
        [1000, 10, 20],
      ]),
    ).toEqual({ min: [0, 10, 20], max: [1000, 10, 20] });
  });
});

describe('where a tape ends', () => {
  const phrase = (sign: TapePhrase['sign'], lengthMm = 10, centre = false): TapePhrase => ({
    id: 'A',
    lengthMm,
    word: 'on',
    sign,
    centre,
  });
  const box = (min: Vec3, max: Vec3, meets: TapeSolid['meets'] = () => undefined) => ({ solid: { bounds: { min, max }, meets } });
  const left = box([0, -1002, 0], [100, -998, 10]);
  const right = box([0, 998, 0], [100, 1002, 10]);

  it('is before or behind an axle', () => {
    const axle = { solid: undefined, xMm: 1000 };
    expect(tapeEnd(phrase(1), 0, axle, undefined)).toEqual({ value: 1010, doubtMm: 0 });
    expect(tapeEnd(phrase(-1), 0, axle, undefined)).toEqual({ value: 990, doubtMm: 0 });
    expect(tapeEnd(phrase(0, 0), 0, axle, undefined)).toEqual({ value: 1000, doubtMm: 0 });
  });

  it('goes inboard from the face that looks to the centre line, outboard from the other', () => {
    expect(tapeEnd(phrase('in'), 1, left, undefined)).toEqual({ value: -988, doubtMm: 0 });
    expect(tapeEnd(phrase('out'), 1, left, undefined)).toEqual({ value: -1012, doubtMm: 0 });
    expect(tapeEnd(phrase('in'), 1, right, undefined)).toEqual({ value: 988, doubtMm: 0 });
    expect(tapeEnd(phrase('out'), 1, right, undefined)).toEqual({ value: 1012, doubtMm: 0 });
  });

  it('has no inboard side of what stands within a millimetre of the centre line', () => {
    const said = '`A` is on the center line, which has no inboard side, expected `left of` or `right of`';
    expect(tapeEnd(phrase('in'), 1, box([0, -20, 0], [9, 20, 9]), undefined)).toBe(said);
    expect(tapeEnd(phrase('out'), 1, box([0, -20, 0], [9, 21.9, 9]), undefined)).toBe(said);
    expect(tapeEnd(phrase('in'), 1, box([0, -20, 0], [9, 22, 9]), undefined)).toEqual({ value: -30, doubtMm: 0 });
    expect(tapeEnd(phrase(-1), 1, box([0, -20, 0], [9, 20, 9]), undefined)).toEqual({ value: -30, doubtMm: 0 });
  });

  it('is counted from the middle for `on` and for the center, to either side', () => {
    const wide = box([0, 100, 0], [60, 200, 10], () => [0, 5]);
    expect(tapeEnd(phrase(0, 0), 0, wide, [0, 0, 0])).toEqual({ value: 30, doubtMm: 0 });
    expect(tapeEnd(phrase(1, 10, true), 0, wide, [0, 0, 0])).toEqual({ value: 40, doubtMm: 0 });
    expect(tapeEnd(phrase(-1, 10, true), 0, wide, [0, 0, 0])).toEqual({ value: 20, doubtMm: 0 });
    expect(tapeEnd(phrase('in', 10, true), 1, wide, undefined)).toEqual({ value: 140, doubtMm: 0 });
  });

  it('is counted from the face that its line meets, once it is known where the line runs', () => {
    const met = box([0, 100, 0], [60, 200, 10], (_, at) => (at[1] === 7 ? [20, 40] : undefined));
    expect(tapeEnd(phrase(1), 0, met, [0, 7, 0])).toEqual({ value: 50, doubtMm: 0 });
    expect(tapeEnd(phrase(-1), 0, met, [0, 7, 0])).toEqual({ value: 10, doubtMm: 0 });
    expect(tapeEnd(phrase(1), 0, met, undefined)).toEqual({ value: 70, doubtMm: 0 });
    expect(tapeEnd(phrase(-1), 0, met, undefined)).toEqual({ value: -10, doubtMm: 0 });
  });

  it('is in doubt by half of what the box stands off the face through its middle, where the line misses', () => {
    const through = (face: readonly [number, number] | undefined) =>
      box([0, 100, 4], [60, 200, 10], (_, at) => (at[0] === 30 && at[1] === 150 && at[2] === 7 ? face : undefined));
    const said = 'No line along x meets A there: measured from the face of its box.';
    expect(tapeEnd(phrase(1), 0, through([8, 40]), [0, 0, 0])).toEqual({ value: 70, doubtMm: 10, said });
    expect(tapeEnd(phrase(-1), 0, through([8, 40]), [0, 0, 0])).toEqual({ value: -10, doubtMm: 4, said });
    // Face and box are one: nothing to say.
    expect(tapeEnd(phrase(1), 0, through([0, 60]), [0, 0, 0])).toEqual({ value: 70, doubtMm: 0 });
    expect(tapeEnd(phrase(1), 0, through(undefined), [0, 0, 0])).toEqual({ value: 70, doubtMm: 0 });
    const near = tapeEnd(phrase(1), 0, through([0, 59.875]), [0, 0, 0]);
    expect(near).toEqual({ value: 70, doubtMm: 0.0625 });
  });
});

describe('the typed origin of a shell', () => {
  it('is three lengths, 0 for what is none', () => {
    expect(typedOrigin({ typed: { datum: { origin: ['2 in', '-1 m', 'far'] } } } as never)).toEqual([50.8, -1000, 0]);
    expect(typedOrigin({ typed: { datum: {} } } as never)).toEqual([0, 0, 0]);
    expect(typedOrigin({ typed: {} } as never)).toEqual([0, 0, 0]);
  });
});
