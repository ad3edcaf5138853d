import { describe, expect, it } from 'vitest';
import { type PlaceAt, placeAt } from '../../src/model/place-at.js';
import type { Panel } from '../../src/records/index.js';
import { buildModel, limits, record } from '../support/build.js';
import { component, lineMember, node } from '../support/services.js';

/** A cabinet of 200 × 100 × 60 mm about (1000, −500, 300), an axle, and a sheet that leans by 45° from (0, 0) to (1000, 1000). */
const cabinet = component('CAB', [1000, -500, 300], [200, 100, 60]);
const leaning: Panel = {
  ...record('LEAN'),
  panelKind: 'interior',
  outline: [
    [0, 100, 0],
    [1000, 100, 1000],
    [1000, 600, 1000],
    [0, 600, 0],
  ],
  holes: [],
};
const shell = {
  components: [cabinet],
  panels: [leaning],
  members: [lineMember('M', 'NOBODY', [0, 0, 0], [1, 0, 0])],
  chassis: { frame: {}, axles: [{ ...record('drive'), xMm: 5000, toleranceMm: 12 } as never] },
};
const asked = (typed: string, more: Parameters<typeof buildModel>[0] = {}, shop: Parameters<typeof buildModel>[2] = {}) =>
  placeAt(typed, buildModel({ ...shell, ...more }, {}, shop));
const found = (...given: Parameters<typeof asked>): PlaceAt => {
  const place = asked(...given);
  if (typeof place === 'string') throw new Error(place);
  return place;
};
const TAPE_MM = 25.4 / 8;

describe('a place asked for by a tape', () => {
  it('is counted from the faces of what is named, axis by axis', () => {
    expect(found('100 mm aft of CAB, 10 mm left of CAB, 20 mm above CAB').at).toEqual([1200, -560, 350]);
    expect(found('100 mm forward of CAB, 10 mm inboard of CAB, 20 mm below CAB').at).toEqual([800, -440, 250]);
    expect(found('3 mm forward of drive, 7 mm, 8 mm').at).toEqual([4997, 7, 8]);
  });

  it('is known as well as the tape on its worst axis, and exactly where no tape was held', () => {
    const typed = '100 mm aft of CAB, 10 mm left of CAB, 20 mm above CAB';
    expect(found(typed).uncertaintyMm).toBeCloseTo(TAPE_MM, 9);
    expect(found(typed, {}, { limits: { ...limits, tapeMm: 2 } }).uncertaintyMm).toBeCloseTo(2, 9);
    expect(found('1 mm, 2 mm, 3 mm')).toEqual({ at: [1, 2, 3], uncertaintyMm: 0, said: [] });
  });

  it('is known no better than what the tape is held to: its tolerance, or how it was itself put in place', () => {
    const typed = '100 mm aft of CAB, 0 mm, 0 mm';
    const rough = { components: [{ ...cabinet, toleranceMm: 15 }] };
    const taped = new Map([['CAB', { uncertaintyMm: 20, on: [], said: [] }]]);
    expect(found(typed, rough).uncertaintyMm).toBeCloseTo(Math.hypot(TAPE_MM, 15), 9);
    expect(found(typed, { ...rough, taped }).uncertaintyMm).toBeCloseTo(Math.hypot(TAPE_MM, 20), 9);
    expect(found('3 mm aft of drive, 0 mm, 0 mm').uncertaintyMm).toBeCloseTo(Math.hypot(TAPE_MM, 12), 9);
    // The worst axis alone, not the sum of all.
    expect(found('3 mm aft of drive, 1 mm left of CAB, 1 mm above CAB').uncertaintyMm).toBeCloseTo(Math.hypot(TAPE_MM, 12), 9);
  });

  it('is counted along the line that the other two axes settle, wherever in the phrase they stand', () => {
    // The line along x at z 400 meets the sheet at x 400; `on LEAN` puts it at y 350, the middle of the sheet.
    const { at, uncertaintyMm, said } = found('10 mm aft of LEAN, on LEAN, 400 mm');
    expect(at[0]).toBeCloseTo(410, 6);
    expect(at.slice(1)).toEqual([350, 400]);
    expect(said).toEqual([]);
    expect(uncertaintyMm).toBeCloseTo(TAPE_MM, 9);
  });

  it('is in doubt where its line misses, and says so once', () => {
    // The box ends at x 1000, the sheet stands at x 500 at half its height: half of the difference.
    const { at, uncertaintyMm, said } = found('10 mm aft of LEAN, 5000 mm, 400 mm');
    expect(at).toEqual([1010, 5000, 400]);
    expect(uncertaintyMm).toBeCloseTo(Math.hypot(TAPE_MM, 250), 6);
    expect(said).toEqual(['No line along x meets LEAN there: measured from the face of its box.']);
  });

  it('of a compartment of a tank is counted from the body that it shares', () => {
    const tank = { ...record('FRESH'), at: [0, 0, 0], body: { sizeMm: [400, 200, 100] }, toleranceMm: 5 };
    const part = { ...record('GREY'), of: 'FRESH', at: [9, 9, 9], toleranceMm: 8 };
    const tanks = [tank, part] as never;
    expect(found('1 mm aft of GREY, 0 mm, 0 mm', { tanks }).at).toEqual([201, 0, 0]);
    expect(found('1 mm aft of GREY, 0 mm, 0 mm', { tanks }).uncertaintyMm).toBeCloseTo(Math.hypot(TAPE_MM, 8), 9);
    const lost = [{ ...record('GREY'), of: 'NOBODY', at: [9, 9, 9] }] as never;
    expect(found('1 mm aft of GREY, 0 mm, 0 mm', { tanks: lost }).at).toEqual([10, 0, 0]);
  });
});

describe('a place that cannot be answered', () => {
  it('says what is wrong: the first fault alone', () => {
    expect(asked('here')).toMatch(/^Found `here`, expected x, y and z with a comma between/u);
    expect(asked('one, two, 3 mm')).toMatch(/^Found `one`/u);
    expect(asked('one, two, 3 mm')).not.toContain('`two`');
  });

  it('names what no tape can be held to, and what is like it', () => {
    expect(asked('1 mm aft of CABB, 0 mm, 0 mm')).toBe(
      'Found `CABB`, expected the id of something that a tape can be held to. Did you mean `CAB`?',
    );
    expect(asked('1 mm aft of M, 0 mm, 0 mm')).toBe(
      '`M` has no place that a tape could be held to, expected a length or another id',
    );
    // A circuit is known by its id, and stands nowhere.
    const circuits = [{ ...record('DC-1') }] as never;
    expect(asked('1 mm aft of DC-1, 0 mm, 0 mm', { circuits })).toMatch(/^Found `DC-1`/u);
    expect(asked('1 mm aft of DC-2, 0 mm, 0 mm', { circuits, nodes: [node('DC-22', [0, 0, 0])] })).not.toContain('`DC-1`');
    expect(asked('0 mm, 0 mm, 3 mm above drive')).toBe(
      'Axle `drive` has a place on x only, expected a length or something else for z',
    );
    expect(asked('0 mm, 1 mm inboard of LONG, 0 mm', { components: [component('LONG', [0, 0, 0], [9, 9, 9])] })).toBe(
      '`LONG` is on the center line, which has no inboard side, expected `left of` or `right of`',
    );
  });
});
