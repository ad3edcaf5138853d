import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { axleModelOf, reactions } from '../../../src/compute/weights/axle-reactions.js';
import { type BayLimit, bayAllowances, bayLimits } from '../../../src/compute/weights/bay-allowances.js';
import { fillUntilEnd } from '../../../src/compute/weights/bay-ends.js';
import { weights } from '../../../src/compute/weights/index.js';
import { axleRating } from '../../../src/compute/weights/ratings.js';
import type { Axle, Bay } from '../../../src/model/shell.js';
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
    const just = { ...ends, front: { totalKg: 4000, leftKg: 3500, rightKg: 500 } };
    expect(together([bay('B', 5000)], {}, { readings: just })[0]).toMatchObject({ allowanceKg: 5000, limitedBy: 'rear GAWR' });
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

describe('1,000 random shells', () => {
  const kg = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const shell = fc.record({
    kind: fc.constantFrom('two axles', 'tag', 'tandem', 'twin steer'),
    wheelbase: kg(4000, 7500),
    fraction: kg(0.2, 0.8),
    massKg: kg(6000, 14000),
    centre: kg(0.45, 0.75),
    spare: fc.array(kg(0, 4000), { minLength: 4, maxLength: 4 }),
    gross: kg(0, 6000),
    bays: fc.array(fc.tuple(fc.integer({ min: -1500, max: 11000 }), fc.option(kg(50, 1500), { nil: undefined })), {
      minLength: 1,
      maxLength: 6,
    }),
  });
  type Drawn = typeof shell extends fc.Arbitrary<infer T> ? T : never;

  function stand(one: Drawn) {
    const { wheelbase, fraction, kind } = one;
    const shared = (id: string, part: number) => ({ share: { with: id, fraction: part } });
    const axles: readonly Axle[] =
      kind === 'two axles'
        ? [axle('a', 0), axle('b', wheelbase)]
        : kind === 'twin steer'
          ? [axle('a', 0), axle('b', 1800, shared('a', 0.5)), axle('c', wheelbase + 1800)]
          : [axle('a', 0), axle('b', wheelbase), axle('c', wheelbase + 1300, shared('b', kind === 'tandem' ? 0.5 : fraction))];
    const found = axleModelOf(axles);
    if ('problem' in found) throw new Error(found.problem);
    const { carriage } = found;
    const loads = reactions(carriage, { massKg: one.massKg, xKgMm: one.massKg * one.centre * wheelbase });
    const ratings = axles.map((each, i) => axleRating({ ...each, gawrKg: (loads[i] as number) + (one.spare[i] as number) }));
    const bays = one.bays.map(([xMm, limitKg], i) => bay(`B${i}`, xMm, limitKg));
    const gvwrKg = one.massKg + one.gross;
    const limits = bayLimits(bays, carriage, loads, one.massKg, ratings, gvwrKg);
    return { carriage, loads, ratings, bays, gvwrKg, limits, allowances: bayAllowances(bays, limits) };
  }
  type Stood = ReturnType<typeof stand>;

  /** How far the worst limit is passed with these loads in the bays, kg; by statics afresh, not from the limits. */
  function passedBy({ carriage, loads, ratings, bays, gvwrKg }: Stood, inBays: readonly number[], massKg: number): number {
    const moment = inBays.reduce((sum, each, b) => sum + each * (bays[b] as Bay).at[0], 0);
    const added = inBays.reduce((a, b) => a + b, 0);
    const axles = reactions(carriage, { massKg: added, xKgMm: moment }).map((each, i) => each + (loads[i] as number));
    return Math.max(
      ...axles.map((each, i) => each - (ratings[i]?.limitKg as number)),
      ...axles.map((each) => -each),
      massKg + added - gvwrKg,
      ...inBays.map((each, b) => each - ((bays[b] as Bay).limitKg ?? Number.POSITIVE_INFINITY)),
    );
  }

  it('no limit is passed when an allowance is loaded, and one more kilogram always passes one', () => {
    fc.assert(
      fc.property(shell, (one) => {
        const stood = stand(one);
        stood.bays.forEach((_, b) => {
          const only = (kgIn: number) => stood.bays.map((__, i) => (i === b ? kgIn : 0));
          const allowed = stood.allowances[b]?.allowanceKg as number;
          expect(passedBy(stood, only(allowed), one.massKg)).toBeLessThan(1e-5);
          expect(passedBy(stood, only(allowed + 1), one.massKg)).toBeGreaterThan(1e-6);
        });
      }),
      { numRuns: 1000 },
    );
  });
  it('together, no limit is passed, and another solver finds no greater total', () => {
    fc.assert(
      fc.property(shell, (one) => {
        const stood = stand(one);
        const together = stood.allowances.map((each) => each.togetherKg);
        expect(passedBy(stood, together, one.massKg)).toBeLessThan(1e-5);
        const total = together.reduce((a, b) => a + b, 0);
        const other = greatestTotal(
          stood.limits,
          stood.allowances.map((each) => each.allowanceKg),
        );
        expect(Math.abs(total - other)).toBeLessThan(1e-3);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('bays filled along one line until an end is over', () => {
  /** An end whose room is this quadratic of how far the bays are filled; the vehicle weighs 2 kg all along. */
  const end = (name: string, room: (part: number) => number) => ({
    name,
    roomKg: (inBays: readonly number[]) => room((inBays[0] as number) / 10),
    near: () => ({ name, slackKg: 0, perKg: [] }),
  });
  const fill = (...rooms: readonly ((part: number) => number)[]) =>
    fillUntilEnd({ limits: rooms.map((room, i) => end(`end ${i}`, room)), totalKg: () => 2 }, [10]);
  // Zeros of a quadratic by its factors (algebra).
  it.each<[string, (t: number) => number, number]>([
    ['falls straight', (t) => 0.4 - t, 0.4],
    ['falls, and would rise again', (t) => (t - 0.25) * (t - 0.75), 0.25],
    ['rises first, then falls', (t) => (t + 0.1) * (0.6 - t), 0.6],
    ['falls ever faster', (t) => 0.5 - 2 * t * t, 0.5],
    ['falls ever slower', (t) => (1 - 2 * t) * (3 - t), 0.5],
    ['starts with no room and gains some before it falls', (t) => t * (0.5 - t), 0.5],
    ['starts with no room and loses', (t) => -t, 0],
    ['starts over', (t) => t - 0.2, 0],
    ['starts over, and falls at the end', (t) => (t - 0.2) * (0.9 - t), 0],
    ['gains', (t) => 0.2 + t, 1],
    ['is touched, and not passed', (t) => (t - 0.5) ** 2, 1],
    ['is never touched', (t) => (t - 0.5) ** 2 + 0.04, 1],
    ['is touched only beyond', (t) => 1.2 - t, 1],
    ['is touched at the end', (t) => 1 - t, 1],
    ['was touched before', (t) => (t + 0.3) * (t + 0.6), 1],
    ['stays as it is', () => 0.3, 1],
  ])('%s', (_name, room, part) => {
    const found = fill(room);
    expect(found.part).toBeCloseTo(part, 9);
    expect(found.by).toBe(part < 1 ? 'end 0' : undefined);
  });
  it('stops at the first of them, by name', () => {
    const [late, soon] = [(t: number) => 0.8 - t, (t: number) => 0.3 - t];
    expect(fill(late, soon)).toEqual({ part: expect.closeTo(0.3, 9), by: 'end 1' });
    expect(fill(soon, late)).toEqual({ part: expect.closeTo(0.3, 9), by: 'end 0' });
  });
});

describe('ends of axles', () => {
  it('hold a bay to one side before the axle does, by hand', () => {
    // Unladen 4000 and 6000 kg, level; a bay between the axles, 1 m to the right of the middle, track 2 m. Front end, right:
    // (2000 + m/4)(1 + m/(10,000 + m)) = 3500, so m²/2 + 3000 m − 1.5·10⁷ = 0 and m = −3000 + √(3.9·10⁷) = 3245.0 kg.
    const side = { ...bay('B', 2500), at: [2500, 1000, 0] as const };
    const model = vehicle(
      { axles: twoAxles(), gvwrKg: 16000 },
      { bays: [side], tickets: [ticket('T-1', { front: 4000, rear: 6000 })] },
    );
    const [only] = weights(model, takeOffOf()).bays;
    expect(only?.allowanceKg).toBeCloseTo(-3000 + Math.sqrt(3.9e7), 6);
    expect(only?.togetherKg).toBeCloseTo(-3000 + Math.sqrt(3.9e7), 6);
    expect(only?.limitedBy).toBe('right end of front');
  });

  const drawn = fc.record({
    leftKg: fc.tuple(fc.integer({ min: 1500, max: 2400 }), fc.integer({ min: 2500, max: 3600 })),
    bays: fc.array(
      fc.record({
        xMm: fc.integer({ min: 800, max: 6500 }),
        yMm: fc.integer({ min: -1100, max: 1100 }),
        most: fc.integer({ min: 50, max: 2500 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
  });
  const shell = (
    { leftKg: [front, rear], bays }: typeof drawn extends fc.Arbitrary<infer T> ? T : never,
    inBays?: readonly number[],
  ) =>
    weights(
      vehicle(
        { axles: twoAxles(), gvwrKg: 17000 },
        {
          bays: bays.map(({ xMm, yMm, most }, i) => ({ ...bay(`B${i}`, xMm, inBays?.[i] ?? most), at: [xMm, yMm, 0] as const })),
          tickets: [
            {
              ...ticket('T-1', { front: 4000, rear: 6000 }),
              readings: {
                front: { totalKg: 4000, leftKg: front, rightKg: 4000 - front },
                rear: { totalKg: 6000, leftKg: rear, rightKg: 6000 - rear },
              },
            },
          ],
        },
      ),
      takeOffOf(),
    );
  /** By how much the bays as loaded pass any rating or half of one, by the condition `loaded` itself. */
  const passedBy = (found: ReturnType<typeof weights>): number => {
    const loaded = found.conditions.find((one) => one.name === 'loaded');
    return Math.max(
      -(loaded?.gvwrMarginKg as number),
      ...(loaded?.axles ?? []).flatMap((each) => {
        const end = (each.limitKg as number) / 2;
        return [-(each.marginKg as number), -each.loadKg, (each.leftKg as number) - end, (each.rightKg as number) - end];
      }),
    );
  };
  it('are never over when an allowance is loaded, and one more kilogram passes a limit', () => {
    fc.assert(
      fc.property(drawn, (one) => {
        const { bays } = shell(one);
        bays.forEach((_, b) => {
          const only = (kg: number) => bays.map((__, i) => (i === b ? kg : 0));
          const allowed = bays[b]?.allowanceKg as number;
          expect(passedBy(shell(one, only(allowed)))).toBeLessThan(1e-5);
          const more = passedBy(shell(one, only(allowed + 1)));
          expect(more > 0 || bays[b]?.limitedBy === 'its stated limit').toBe(true);
        });
      }),
      { numRuns: 100 },
    );
  });
  it('are never over with all bays loaded together, and no bay could take a kilogram more', () => {
    fc.assert(
      fc.property(drawn, (one) => {
        const { bays } = shell(one);
        const together = bays.map((each) => each.togetherKg);
        expect(passedBy(shell(one, together))).toBeLessThan(1e-5);
        bays.forEach((each, b) => {
          const more = together.map((kg, i) => (i === b ? kg + 1 : kg));
          expect(passedBy(shell(one, more)) > 0 || each.togetherKg + 1 > each.allowanceKg).toBe(true);
        });
      }),
      { numRuns: 100 },
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
