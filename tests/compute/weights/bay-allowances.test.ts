import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type BayLimit, bayAllowances } from '../../../src/compute/weights/bay-allowances.js';
import { weights } from '../../../src/compute/weights/index.js';
import type { Axle, Bay } from '../../../src/records/index.js';
import { axle, bay, condition, seat, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

/** HiGHS as used here; its ESM types name the module where the default export is the loader. */
interface Solver {
  solve(programme: string): { readonly ObjectiveValue: number };
}
let highs: Solver;
beforeAll(async () => {
  highs = await (loadHighs as unknown as () => Promise<Solver>)();
});

/** The same programme by another solver, from the limits and the allowances alone. */
function greatestTotal(limits: readonly BayLimit[], alone: readonly number[]): number {
  const sum = (perKg: readonly number[]) =>
    perKg.map((each, b) => `${each < 0 ? '-' : '+'} ${Math.abs(each).toFixed(15)} b${b}`).join(' ');
  const text = [
    'Maximize',
    ` obj: ${sum(alone.map(() => 1))}`,
    'Subject To',
    ...limits.map((limit, i) => ` c${i}: ${sum(limit.perKg)} <= ${limit.slackKg.toFixed(9)}`),
    'Bounds',
    ...alone.map((kg, b) => ` 0 <= b${b} <= ${kg.toFixed(9)}`),
    'End',
  ].join('\n');
  return highs.solve(text).ObjectiveValue;
}

describe('two bays on two axles, by hand', () => {
  // Unladen 4000 and 6000 kg on 5 m; ratings 7000 and 11,000: 3000 and 5000 kg left; GVWR 16,000: 6000 kg left.
  const answer = (bays: readonly Bay[], gvwrKg = 16000) =>
    weights(vehicle({ axles: twoAxles(), gvwrKg }, { bays, tickets: [ticket('T-1', { front: 4000, rear: 6000 })] }), takeOffOf())
      .bays;
  it('a bay over the rear axle takes what the rear axle has left', () => {
    expect(answer([bay('B', 5000)])).toEqual([{ id: 'B', allowanceKg: 5000, limitedBy: 'rear GAWR', togetherKg: 5000 }]);
  });
  it('a bay behind it takes less: 5000 ÷ 1.25, and lightens the front', () => {
    expect(answer([bay('B', 6250)])[0]).toMatchObject({ allowanceKg: 4000, limitedBy: 'rear GAWR' });
    // A bay 30 m aft of the front axle: each kilogram takes 5 kg off the front axle, and 4000 ÷ 5 = 800.
    expect(answer([bay('B', 30000)])[0]).toMatchObject({ allowanceKg: 800, limitedBy: 'front would lift off' });
  });
  it('is held by the GVWR and by its own limit', () => {
    expect(answer([bay('B', 2500)], 15000)[0]).toMatchObject({ allowanceKg: 5000, limitedBy: 'GVWR' });
    expect(answer([bay('B', 2500, 300)])[0]).toEqual({
      id: 'B',
      statedKg: 300,
      allowanceKg: 300,
      limitedBy: 'its stated limit',
      togetherKg: 300,
    });
  });
  it('starts from occupants and full fresh water', () => {
    const model = vehicle(
      { axles: twoAxles(), gvwrKg: 11000 },
      {
        bays: [bay('B', 2500)],
        seats: [seat('driver', 0)],
        tanks: [tank('FRESH', 'water', 300, 5000)],
        tickets: [ticket('T-1', { front: 4000, rear: 6000 })],
      },
    );
    expect(weights(model, takeOffOf()).bays[0]?.allowanceKg).toBeCloseTo(11000 - 10000 - 68 - 300, 6);
  });
  it('gives nothing over a limit that is passed, and nothing without any rating', () => {
    expect(answer([bay('B', 2500, 300)], 9000)[0]).toMatchObject({
      allowanceKg: 0,
      limitedBy: 'GVWR, already over',
      togetherKg: 0,
    });
    const bare = [axle('a', 0), axle('b', 5000)];
    const model = vehicle({ axles: bare }, { bays: [bay('B', 2500)], tickets: [ticket('T-1', { a: 4000, b: 6000 })] });
    expect(weights(model, takeOffOf()).bays[0]).toMatchObject({ allowanceKg: 0, limitedBy: 'no rating on record' });
  });
});

describe('bays together, by hand', () => {
  const together = (bays: readonly Bay[], front: Partial<Axle> = {}, more: Parameters<typeof ticket>[2] = {}) => {
    const [first, second] = twoAxles();
    const axles = [{ ...first!, ...front }, second!];
    return weights(
      vehicle({ axles, gvwrKg: 30000 }, { bays, tickets: [ticket('T-1', { front: 4000, rear: 6000 }, more)] }),
      takeOffOf(),
    ).bays;
  };
  it('none counts on another to balance it', () => {
    // A kilogram at −1 m puts 1.2 kg on the front axle, which has 1000 left; one at 6 m puts 1.2 on the rear, which has 5000, and
    // takes 0.2 off the front. Together they could be 1571 and 4429 kg: but then the front is over once the rear bay is emptied.
    const found = together([bay('nose', -1000), bay('tail', 6000)], { gawrKg: 5000 });
    expect(found.map((one) => one.allowanceKg)).toEqual([expect.closeTo(1000 / 1.2, 6), expect.closeTo(5000 / 1.2, 6)]);
    expect(found.map((one) => one.togetherKg)).toEqual([expect.closeTo(1000 / 1.2, 6), expect.closeTo(5000 / 1.2, 6)]);
  });
  it('one that may take nothing leaves the others what they may', () => {
    const found = together([bay('shut', 2500, 0), bay('open', 5000)]);
    expect(found.map((one) => [one.allowanceKg, one.togetherKg])).toEqual([
      [0, 0],
      [5000, 5000],
    ]);
  });
  it('take nothing where an end is already over its half, and say which', () => {
    const ends = { front: { totalKg: 4000, leftKg: 3501, rightKg: 499 }, rear: { totalKg: 6000 } };
    expect(together([bay('B', 5000), bay('C', 2500)], {}, { readings: ends })).toEqual(
      ['B', 'C'].map((id) => ({ id, allowanceKg: 0, limitedBy: 'left end of front, already over', togetherKg: 0 })),
    );
    // The rear axle, whose ends were not weighed, leans as the front one does.
    const just = { ...ends, front: { totalKg: 4000, leftKg: 3500, rightKg: 500 } };
    expect(together([bay('B', 5000)], {}, { readings: just })[0]).toMatchObject({ limitedBy: 'left end of rear' });
    const both = { ...just, rear: { totalKg: 6000, leftKg: 3000, rightKg: 3000 } };
    expect(together([bay('B', 5000)], {}, { readings: both })[0]).toMatchObject({
      allowanceKg: expect.closeTo(5000, 6),
      limitedBy: 'rear GAWR',
    });
  });
  it('may not lift an axle off, rated or not', () => {
    // 6000 kg on the rear; a bay at −1 m takes 0.2 off it for each kilogram.
    const { gawrKg: _, ...first } = twoAxles()[0]!;
    const { gawrKg: __, ...second } = twoAxles()[1]!;
    const model = vehicle(
      { axles: [first, second] },
      { bays: [bay('B', -1000)], tickets: [ticket('T-1', { front: 4000, rear: 6000 })] },
    );
    expect(weights(model, takeOffOf()).bays[0]).toMatchObject({
      allowanceKg: expect.closeTo(30000, 6),
      limitedBy: 'rear would lift off',
    });
  });
});

describe('the least of several limits', () => {
  it.each([
    [[100, 0.5], [150, 1], 150, 'b'],
    [[100, 0.5], [300, 2], 150, 'b'],
    [[100, 1], [300, 2], 100, 'a'],
    [[100, 1], [1, -3], 100, 'a'],
    [[100, 1], [1, 0], 100, 'a'],
    [[0, 1], [100, 1], 0, 'a'],
  ] as const)('%j and %j of slack and per kilogram: %d', (a, b, allowanceKg, limitedBy) => {
    const limits = [a, b].map(([slackKg, each], i) => ({ name: 'ab'[i] as string, slackKg, perKg: [each] }));
    expect(bayAllowances([bay('B', 0)], limits)[0]).toMatchObject({ allowanceKg, limitedBy, togetherKg: allowanceKg });
  });
});

describe('the textbook programme', () => {
  it('max 3x + 5y has no place here, but its limits do: both solvers give the greatest total', () => {
    // LIB-01 limits: x ≤ 4; 2y ≤ 12; 3x + 2y ≤ 18. Greatest x + y: x 2, y 6.
    const limits: BayLimit[] = [
      { name: 'x', slackKg: 4, perKg: [1, 0] },
      { name: 'y', slackKg: 12, perKg: [0, 2] },
      { name: 'both', slackKg: 18, perKg: [3, 2] },
    ];
    const found = bayAllowances([bay('x', 0), bay('y', 0)], limits);
    expect(found.map((one) => one.togetherKg)).toEqual([2, 6]);
    expect(
      greatestTotal(
        limits,
        found.map((one) => one.allowanceKg),
      ),
    ).toBeCloseTo(8, 9);
  });
});

describe('ends of axles', () => {
  it('hold a bay to one side before the axle does, by hand', () => {
    // Unladen 4000 and 6000 kg, level; a bay between the axles, 1 m to the right of the middle, track 2 m. A side load is shared 0.4 to 0.6.
    // Front end, right: 2000 + m/4 + 0.4·m·1000/2000 = 3500, so m = 1500 / 0.45.
    const side = { ...bay('B', 2500), at: [2500, 1000, 0] as const };
    const model = vehicle(
      { axles: twoAxles(), gvwrKg: 16000 },
      { bays: [side], tickets: [ticket('T-1', { front: 4000, rear: 6000 })] },
    );
    const [only] = weights(model, takeOffOf()).bays;
    expect(only?.allowanceKg).toBeCloseTo(1500 / 0.45, 6);
    expect(only?.togetherKg).toBeCloseTo(1500 / 0.45, 6);
    expect(only?.limitedBy).toBe('right end of front');
  });
  it('count a waste tank that fills on the way', () => {
    // The same, with 400 kg of waste beside the bay: it takes 400·0.45 of the 1500 kg.
    const model = vehicle(
      { axles: twoAxles(), gvwrKg: 16000 },
      {
        bays: [{ ...bay('B', 2500), at: [2500, 1000, 0] as const }],
        tanks: [tank('GREY', 'grey', 400, 2500, { at: [2500, 1000, 0], use: 'waste' })],
        tickets: [ticket('T-1', { front: 4000, rear: 6000 })],
      },
    );
    expect(weights(model, takeOffOf()).bays[0]?.allowanceKg).toBeCloseTo((1500 - 400 * 0.45) / 0.45, 6);
  });
});

/** One shell at random, with what stands on it by an arithmetic of its own. */
const kg = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const side = () => fc.integer({ min: -1100, max: 1100 });
const randomShell = fc.record({
  tag: fc.boolean(),
  wheelbase: fc.integer({ min: 4000, max: 7500 }),
  fraction: kg(0.2, 0.6),
  frontKg: kg(3000, 6000),
  rearKg: kg(5000, 10000),
  leanKg: fc.tuple(kg(-400, 400), kg(-400, 400), kg(-400, 400)),
  spare: fc.tuple(kg(0, 3000), kg(0, 4000), kg(0, 4000)),
  gross: kg(0, 8000),
  tanks: fc.array(fc.record({ x: fc.integer({ min: -500, max: 9000 }), y: side(), litres: fc.integer({ min: 20, max: 500 }) }), {
    maxLength: 4,
  }),
  seats: fc.array(fc.record({ x: fc.integer({ min: -500, max: 6000 }), y: side() }), { maxLength: 4 }),
  bays: fc.array(
    fc.record({
      x: fc.integer({ min: -1500, max: 11000 }),
      y: side(),
      limit: fc.option(kg(50, 1500), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 6 },
  ),
});
type Drawn = typeof randomShell extends fc.Arbitrary<infer T> ? T : never;

/** A coach of a front axle and a rear one, or a rear pair of which the tag may be lifted; every end weighed. */
function coach(one: Drawn) {
  const rear = one.tag ? [one.rearKg * (1 - one.fraction), one.rearKg * one.fraction] : [one.rearKg];
  const unladenKg = [one.frontKg, ...rear];
  const axles: readonly Axle[] = unladenKg.map((each, i) =>
    axle('abc'[i] as string, i === 0 ? 0 : one.wheelbase + (i - 1) * 1300, {
      gawrKg: each + (one.spare[i] as number),
      trackMm: 2000,
      ...(i === 2 ? { lift: true, share: { with: 'b', fraction: one.fraction } } : {}),
    }),
  );
  const readings = Object.fromEntries(
    unladenKg.map((each, i) => {
      const lean = one.leanKg[i] as number;
      return [axles[i]?.id, { totalKg: each, leftKg: each / 2 - lean, rightKg: each / 2 + lean }];
    }),
  );
  const bays: readonly Bay[] = one.bays.map(({ x, y, limit }, i) => ({ ...bay(`B${i}`, x, limit), at: [x, y, 0] as const }));
  const tanks = one.tanks.map(({ x, y, litres }, i) =>
    tank(`W${i}`, 'water', litres, x, { at: [x, y, 0], use: i % 2 ? 'waste' : 'fresh' }),
  );
  const seats = one.seats.map(({ x, y }, i) => seat(`S${i}`, x, y));
  const gvwrKg = one.frontKg + one.rearKg + one.gross;
  const model = vehicle(
    { axles, gvwrKg },
    { bays, tanks, seats, tickets: [ticket('T-1', {}, { readings, condition: condition({ levels: { FUEL: 1 } }) })] },
  );
  return { axles, unladenKg, lean: one.leanKg, bays, tanks, seats, gvwrKg, found: weights(model, takeOffOf()), one };
}

interface Point {
  readonly massKg: number;
  readonly x: number;
  readonly y: number;
}

/** How far the worst limit is passed with these things on it, kg: the lever rule about the front axle and the middle of the rear pair. */
function passedBy({ axles, unladenKg, lean, gvwrKg, one }: ReturnType<typeof coach>, on: readonly Point[], up: boolean): number {
  const rear = one.tag ? (up ? [1, 0] : [1 - one.fraction, one.fraction]) : [1];
  const rearAt = rear.reduce((sum, share, i) => sum + share * (axles[i + 1]?.xMm as number), 0);
  const own = unladenKg.reduce((a, b) => a + b, 0);
  const all = on.reduce((sum, { massKg }) => sum + massKg, 0);
  const lever = (massKg: number, moment: number): number[] => {
    const back = moment / rearAt;
    return [massKg - back, ...rear.map((share) => share * back)];
  };
  const ownMoment = unladenKg.reduce((sum, each, i) => sum + each * (axles[i]?.xMm as number), 0);
  const base = up ? lever(own, ownMoment) : unladenKg;
  const added = lever(
    all,
    on.reduce((sum, { massKg, x }) => sum + massKg * x, 0),
  );
  const sideways = on.reduce((sum, { massKg, y }) => sum + massKg * y, 0);
  const ownSideways = lean.slice(0, axles.length).reduce((sum, each) => sum + each * 2000, 0);
  return Math.max(
    own + all - gvwrKg,
    ...axles.flatMap((each, i) => {
      if (up && i === 2) return [];
      const load = (base[i] as number) + (added[i] as number);
      const share = (base[i] as number) / own;
      const turn = up ? (ownSideways + sideways) * share : (lean[i] as number) * 2000 + sideways * share;
      const limit = each.gawrKg as number;
      return [load - limit, -load, load / 2 + Math.abs(turn) / 2000 - limit / 2];
    }),
  );
}

/** `npm run fuzz` tries 1,000 shells with 1,000 loadings each. */
const MANY = Math.min(1000, Number(process.env.SHELLBOOK_FUZZ ?? 0));
const SHELLS = MANY || 60;
const LOADINGS = MANY || 60;

describe('bays of random shells', () => {
  const inIt = (stood: ReturnType<typeof coach>, levels: readonly number[], most: readonly number[]): readonly Point[] => {
    const { tanks, seats, bays } = stood;
    const level = (i: number): number => levels[i % levels.length] as number;
    return [
      ...tanks.map(({ at, capacityM3 }, i) => ({ massKg: capacityM3 * 1000 * level(i), x: at[0], y: at[1] })),
      ...seats.map(({ at }, i) => ({ massKg: level(i + 5) > 0.5 ? 68 : 0, x: at[0], y: at[1] })),
      ...bays.map(({ at }, i) => ({ massKg: (most[i] as number) * level(i + 11), x: at[0], y: at[1] })),
    ];
  };
  // Levels are full or empty as often as between: the worst lies at a corner.
  const levels = fc.array(fc.oneof(fc.constantFrom(0, 1), kg(0, 1)), { minLength: 19, maxLength: 19 });
  const ways = (stood: ReturnType<typeof coach>): readonly boolean[] =>
    stood.one.tag && stood.found.notLoadedWith.length === 0 ? [false, true] : [false];

  it('loaded to any part of what all together may take, nothing is over: any subset, any tank, any seat, tag up or down', () => {
    fc.assert(
      fc.property(randomShell, fc.array(levels, { minLength: LOADINGS, maxLength: LOADINGS }), (one, loadings) => {
        const stood = coach(one);
        const most = stood.found.bays.map((each) => each.togetherKg);
        if (most.every((each) => each === 0)) return;
        for (const up of ways(stood)) {
          for (const loading of loadings) expect(passedBy(stood, inIt(stood, loading, most), up)).toBeLessThan(1e-4);
        }
      }),
      { numRuns: SHELLS },
    );
  });

  it('alone, a bay takes its figure with anything in the tanks, and a kilogram more is over with the worst in them', () => {
    fc.assert(
      fc.property(randomShell, fc.array(levels, { minLength: 10, maxLength: 10 }), (one, loadings) => {
        const stood = coach(one);
        stood.found.bays.forEach(({ allowanceKg, limitedBy }, b) => {
          const only = (each: number) => stood.bays.map((_, i) => (i === b ? each : 0));
          if (allowanceKg > 0) {
            for (const up of ways(stood)) {
              for (const loading of loadings) {
                const on = inIt(stood, loading, only(allowanceKg));
                expect(passedBy(stood, on, up)).toBeLessThan(1e-4);
              }
            }
          }
          if (limitedBy === 'its stated limit') return;
          // Every corner of tanks and seats: the search says that one of them is passed.
          const others = stood.tanks.length + stood.seats.length;
          const worst = Math.max(
            ...ways(stood).flatMap((up) =>
              Array.from({ length: 2 ** others }, (_, bits) => {
                const at = (i: number) => ((bits >> i) & 1 ? 1 : 0);
                const on: readonly Point[] = [
                  ...stood.tanks.map((each, i) => ({ massKg: each.capacityM3 * 1000 * at(i), x: each.at[0], y: each.at[1] })),
                  ...stood.seats.map((each, i) => ({ massKg: 68 * at(stood.tanks.length + i), x: each.at[0], y: each.at[1] })),
                  { massKg: allowanceKg + 1, x: (stood.bays[b] as Bay).at[0], y: (stood.bays[b] as Bay).at[1] },
                ];
                return passedBy(stood, on, up);
              }),
            ),
          );
          expect(worst).toBeGreaterThan(0);
        });
      }),
      { numRuns: SHELLS },
    );
  });

  it('another solver finds no greater total under the same limits', () => {
    // A kilogram that adds less than a milligram adds nothing: below that the two solvers’ own tolerances are what differs.
    const real = (value: number): number => (value < 1e-6 ? 0 : value);
    const slackKg = kg(0, 3000).map(real);
    const limit = fc.record({ slackKg, perKg: fc.array(kg(0, 1.5).map(real), { minLength: 4, maxLength: 4 }) });
    fc.assert(
      fc.property(fc.array(limit, { minLength: 1, maxLength: 12 }), (drawn) => {
        const limits: readonly BayLimit[] = [
          ...drawn.map((each, i) => ({ name: `limit ${i}`, ...each })),
          { name: 'GVWR', slackKg: 4000, perKg: [1, 1, 1, 1] },
        ];
        const found = bayAllowances(
          [0, 1, 2, 3].map((i) => bay(`B${i}`, 0)),
          limits,
        );
        const total = found.reduce((sum, each) => sum + each.togetherKg, 0);
        const other = greatestTotal(
          limits,
          found.map((each) => each.allowanceKg),
        );
        expect(Math.abs(total - other)).toBeLessThan(1e-3);
      }),
      { numRuns: MANY || 200 },
    );
  });
});

describe('bays and conditions tell the same story', () => {
  it('an allowance taken as the stated limit loads an axle to its limit', () => {
    const model = (limitKg?: number) =>
      vehicle(
        { axles: twoAxles(), gvwrKg: 30000 },
        {
          bays: [bay('B', 6000, limitKg)],
          tickets: [ticket('T-1', { front: 4000, rear: 6000 }, { condition: condition({ levels: { FUEL: 1 } }) })],
        },
      );
    const allowed = weights(model(), takeOffOf()).bays[0]?.allowanceKg as number;
    const loaded = weights(model(allowed), takeOffOf()).conditions.find((one) => one.name === 'loaded');
    expect(loaded?.axles[1]?.marginKg).toBeCloseTo(0, 6);
  });
});
