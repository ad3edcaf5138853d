import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { axleGroups } from '../../../src/compute/weights/axle-groups.js';
import { type AxleModel, axleModelOf, reactions } from '../../../src/compute/weights/axle-reactions.js';
import type { Axle } from '../../../src/records/index.js';
import { axle, tagCoach, twoAxles } from './support.js';

const axleModel = (axles: readonly Axle[], lifted: readonly string[] = []): AxleModel => {
  const found = axleModelOf(axles, new Set(lifted));
  if ('problem' in found) throw new Error(found.problem);
  return found.axleModel;
};
const under = (axles: readonly Axle[], massKg: number, xMm: number, lifted: readonly string[] = []): readonly number[] =>
  reactions(axleModel(axles, lifted), { massKg, xKgMm: massKg * xMm });

const close = (found: readonly number[], expected: readonly number[], digits = 2): void => {
  expect(found).toHaveLength(expected.length);
  found.forEach((kg, i) => {
    expect(kg).toBeCloseTo(expected[i] as number, digits);
  });
};

describe('two axles: sum of moments', () => {
  // STA-01 to STA-05: statics, computed in the table of check values.
  it.each([
    [3000, 4000, 6000],
    [0, 10000, 0],
    [5000, 0, 10000],
    [5500, -1000, 11000],
    [-600, 11200, -1200],
  ])('10,000 kg at %d mm', (xMm, front, rear) => close(under(twoAxles(), 10000, xMm), [front, rear], 6));

  it('adds loads: 9,000 kg at 3.0 m and 1,000 kg at 6.2 m', () => {
    // STA-06: superposition.
    const a = under(twoAxles(), 9000, 3000);
    const b = under(twoAxles(), 1000, 6200);
    close(
      a.map((kg, i) => kg + (b[i] as number)),
      [3360, 6640],
      6,
    );
  });
});

describe('axles that share', () => {
  it('stand as one at the share-weighted position', () => {
    // STA-09: group at 6.5480 m.
    const grouped = axleGroups(tagCoach());
    expect('groups' in grouped && grouped.groups.map((group) => group.xMm)).toEqual([0, 6548]);
  });
  it('split the load of the group by their shares', () => {
    // STA-10
    close(under(tagCoach(), 14000, 4100), [5233.96, 5259.62, 3506.41]);
  });
  it('agree with the same equations solved as a linear system', () => {
    // ml-matrix as second opinion: sum of forces, sum of moments, and the tag's share of the group.
    const equations = new Matrix([
      [1, 1, 1],
      [0, 6000, 7370],
      [0, -0.4, 0.6],
    ]);
    for (const xMm of [-800, 0, 2500, 4100, 6548, 9000]) {
      close(under(tagCoach(), 14000, xMm), solve(equations, Matrix.columnVector([14000, 14000 * xMm, 0])).to1DArray(), 6);
    }
  });
  it('leave all of it to the partner when one is lifted, whose mass stays aboard', () => {
    // STA-11
    close(under(tagCoach(), 14000, 4100, ['tag']), [4433.33, 9566.67, 0]);
  });
  it('hold for twin steered axles in front of a tandem', () => {
    // Two groups at 0.9 m and 7.0 m, by hand: rear = 16000·(4.2 − 0.9)/6.1 = 8655.74.
    const axles = [
      axle('steer 1', 0),
      axle('steer 2', 1800, { share: { with: 'steer 1', fraction: 0.5 } }),
      axle('drive 1', 6300),
      axle('drive 2', 7700, { share: { with: 'drive 1', fraction: 0.5 } }),
    ];
    close(under(axles, 16000, 4200), [3672.13, 3672.13, 4327.87, 4327.87]);
  });
  it('take the rest between those that state none', () => {
    const grouped = axleGroups([axle('a', 0), axle('b', 5000), axle('c', 6000, { share: { with: 'b', fraction: 0.3 } })]);
    expect('groups' in grouped && grouped.groups[1]?.axles.map((one) => one.share)).toEqual([0.7, 0.3]);
  });
  it('refuse shares that do not add to one', () => {
    const both = [
      axle('a', 0),
      axle('b', 5000, { share: { with: 'c', fraction: 0.5 } }),
      axle('c', 6000, { share: { with: 'b', fraction: 0.4 } }),
    ];
    expect(axleModelOf(both)).toEqual({
      problem: expect.stringContaining('The shares of axles c, b add to 0.90, expected 1: state'),
    });
    const rear = (fraction: number) => [axle('a', 0), axle('b', 5000), axle('c', 6000, { share: { with: 'b', fraction } })];
    expect(axleModelOf(rear(1.2))).toEqual({
      problem: 'The shares of axles b, c add to 1.20, expected at most 1',
    });
  });
  it('may be typed by both with a rounding of half a percent, and share the whole all the same', () => {
    const pair = (b: number, c: number) => [
      axle('a', 0),
      axle('b', 5000, { share: { with: 'c', fraction: b } }),
      axle('c', 6000, { share: { with: 'b', fraction: c } }),
    ];
    // Group at 5000 + 1000·0.334/1.004 mm: the whole load over it stands on it.
    const xMm = 5000 + (1000 * 0.334) / 1.004;
    close(under(pair(0.67, 0.334), 1004, xMm), [0, 670, 334], 6);
    expect(axleModelOf(pair(0.67, 0.336))).toHaveProperty('problem');
    expect(axleModelOf(pair(0.67, 0.324))).toHaveProperty('problem');
    // Two of three: nothing is left for the third, and nothing is lifted off it.
    const three = [
      axle('a', 0),
      axle('b', 5000),
      axle('c', 6000, { share: { with: 'b', fraction: 0.5 } }),
      axle('d', 7000, { share: { with: 'c', fraction: 0.504 } }),
    ];
    close(under(three, 1004, 5000 + (500 * 1000 + 504 * 2000) / 1004), [0, 0, 500, 504], 6);
  });
  it('may be three, each with the one before it', () => {
    // By hand: 0.4, 0.35 and 0.25 at 5.0, 6.3 and 7.6 m stand at 6.105 m; 6,105 kg·m about the front axle.
    const tridem = [
      axle('a', 0),
      axle('b', 5000),
      axle('c', 6300, { share: { with: 'b', fraction: 0.35 } }),
      axle('d', 7600, { share: { with: 'c', fraction: 0.25 } }),
    ];
    close(under(tridem, 2000, 3052.5), [1000, 400, 350, 250], 6);
  });
  it('that name themselves or nobody on record stand alone', () => {
    for (const other of ['c', 'z']) {
      const axles = [axle('a', 0), axle('c', 6000, { share: { with: other, fraction: 0.5 } })];
      close(under(axles, 1000, 3000), [500, 500], 6);
    }
  });
});

describe('three supports on springs', () => {
  const spring = (id: string, xMm: number, springRateNM: number) => axle(id, xMm, { springRateNM });
  // STA-12 to STA-16: rigid body on springs (5/6, 2/6, −1/6 is the textbook answer for STA-13).
  it.each([
    [[0, 1000, 2000], [1, 1, 1], 1000, 1000, [333.333, 333.333, 333.333]],
    [[0, 1000, 2000], [1, 1, 1], 1000, 0, [833.333, 333.333, -166.667]],
    [[0, 1000, 2000], [1, 1, 1], 1000, 500, [583.333, 333.333, 83.333]],
    [[0, 4200, 5600], [300, 500, 500], 15000, 3600, [3937.5, 5678.571, 5383.929]],
    [[0, 4200, 5600], [300, 500, 250], 15000, 3600, [3484.646, 7489.987, 4025.367]],
  ])('at %j, rates %j: %d kg at %d mm', (at, rates, kg, xMm, expected) => {
    const axles = at.map((x, i) => spring(`axle ${i}`, x, rates[i] as number));
    close(under(axles, kg, xMm), expected, 3);
    // ml-matrix as second opinion: equilibrium of force and moment solved as a linear system in settlement and pitch.
    const k = rates as number[];
    const sum = (power: number) => k.reduce((total, rate, i) => total + rate * (at[i] as number) ** power, 0);
    const body = solve(
      new Matrix([
        [sum(0), sum(1)],
        [sum(1), sum(2)],
      ]),
      Matrix.columnVector([kg, kg * xMm]),
    ).to1DArray();
    close(
      under(axles, kg, xMm),
      at.map((x, i) => (k[i] as number) * ((body[0] as number) + (body[1] as number) * x)),
      6,
    );
  });
  it('are refused without every spring rate, with what to add', () => {
    const found = axleModelOf([spring('a', 0, 1), axle('b', 4000), spring('c', 6000, 1)]);
    expect(found).toEqual({ problem: expect.stringContaining('`spring_rate:` to each (missing on b)') });
  });
});

describe('groups on springs', () => {
  it('are as stiff as their axles together, and only where each has its rate', () => {
    // Steer, tandem and tag: the pair of 150 each is one spring of 300 at its middle, so STA-15 turned round holds for the groups.
    const spring = (id: string, xMm: number, springRateNM?: number, more: Partial<Axle> = {}) =>
      axle(id, xMm, { ...(springRateNM === undefined ? {} : { springRateNM }), ...more });
    const coach = (second?: number) => [
      spring('a', 0, 500),
      spring('b', 1400, 500),
      spring('c', 5000, 150),
      spring('d', 6200, second, { share: { with: 'c', fraction: 0.5 } }),
    ];
    // STA-15: [0, 4.2, 5.6], rates [300, 500, 500], 15,000 at 3.6, seen from behind.
    close(under(coach(150), 15000, 2000), [5383.929, 5678.571, 3937.5 / 2, 3937.5 / 2], 3);
    expect(axleModelOf(coach())).toEqual({ problem: expect.stringContaining('missing on c, d') });
  });
});

describe('layouts that statics cannot answer', () => {
  it('one axle, and two at the same place', () => {
    expect(axleModelOf([axle('a', 0)])).toEqual({ problem: expect.stringContaining('Only one support') });
    expect(axleModelOf([axle('a', 3000), axle('b', 3000)])).toEqual({ problem: expect.stringContaining('same place') });
    expect(axleModelOf([])).toEqual({ problem: expect.stringContaining('No axle') });
  });
  it('two groups that stand at the same place, by the names of their axles; 100 mm apart they can be told', () => {
    const at = (xMm: number) => [...tagCoach().slice(1), axle('front', xMm)];
    expect(axleModelOf(at(6548 - 99))).toEqual({ problem: 'Axles front and drive+tag are at the same place: give their `x`' });
    expect(axleModelOf(at(6548 - 100))).toHaveProperty('axleModel');
  });
});

describe('laws of statics on any coach', () => {
  const mass = fc.double({ min: 1, max: 30000, noNaN: true });
  const station = fc.double({ min: -2000, max: 12000, noNaN: true });
  const layout = fc
    .record({
      wheelbase: fc.integer({ min: 2500, max: 8000 }),
      spacing: fc.integer({ min: 1000, max: 1800 }),
      fraction: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      kind: fc.constantFrom('two axles', 'tag', 'tandem', 'twin steer', 'springs'),
    })
    .map(({ wheelbase, spacing, fraction, kind }): readonly Axle[] => {
      const share = (id: string) => ({ share: { with: id, fraction: kind === 'tandem' ? 0.5 : fraction } });
      if (kind === 'two axles') return twoAxles(wheelbase);
      if (kind === 'twin steer') return [axle('a', 0), axle('b', spacing, share('a')), axle('c', wheelbase + spacing)];
      const rate = { springRateNM: 4e5 };
      if (kind === 'springs')
        return [axle('a', 0, rate), axle('b', wheelbase, rate), axle('c', wheelbase + spacing, { springRateNM: 4e5 * fraction })];
      return [axle('a', 0), axle('b', wheelbase), axle('c', wheelbase + spacing, share('b'))];
    });

  it('the axle loads add to the weight, and their moments to its moment', () => {
    fc.assert(
      fc.property(layout, mass, station, (axles, kg, xMm) => {
        const found = under(axles, kg, xMm);
        expect(found.reduce((a, b) => a + b, 0)).toBeCloseTo(kg, 5);
        expect(found.reduce((sum, each, i) => sum + each * (axles[i] as Axle).xMm, 0) / 1000).toBeCloseTo((kg * xMm) / 1000, 4);
      }),
    );
  });
  it('moving a mass aft never loads the front axle', () => {
    fc.assert(
      fc.property(layout, mass, station, fc.double({ min: 0, max: 5000, noNaN: true }), (axles, kg, xMm, aft) => {
        expect(under(axles, kg, xMm + aft)[0] as number).toBeLessThanOrEqual((under(axles, kg, xMm)[0] as number) + 1e-6);
      }),
    );
  });
  it('a coach and its mirror image carry the same', () => {
    fc.assert(
      fc.property(layout, mass, station, (axles, kg, xMm) => {
        const mirrored = axles.map((one) => ({ ...one, xMm: -one.xMm }));
        close(under(mirrored, kg, -xMm), under(axles, kg, xMm), 4);
      }),
    );
  });
  it('the order in which axles are listed changes nothing', () => {
    fc.assert(
      fc.property(layout, mass, station, (axles, kg, xMm) => {
        close([...under([...axles].reverse(), kg, xMm)].reverse(), under(axles, kg, xMm), 5);
      }),
    );
  });
  it('splitting a mass in two changes nothing', () => {
    fc.assert(
      fc.property(layout, mass, station, fc.double({ min: 0, max: 1, noNaN: true }), (axles, kg, xMm, part) => {
        const halves = [under(axles, kg * part, xMm), under(axles, kg * (1 - part), xMm)] as const;
        close(
          halves[0].map((each, i) => each + (halves[1][i] as number)),
          under(axles, kg, xMm),
          5,
        );
      }),
    );
  });
});
