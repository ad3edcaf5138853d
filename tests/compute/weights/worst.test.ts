import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import { loadAt } from '../../../src/compute/weights/load.js';
import type { LoadChoice } from '../../../src/compute/weights/search-states.js';
import { worstLevels } from '../../../src/compute/weights/worst.js';
import { record } from '../../support/build.js';
import { bay, item, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

interface Solver {
  solve(programme: string): { readonly ObjectiveValue: number };
}
let highs: Solver;
beforeAll(async () => {
  highs = await (loadHighs as unknown as () => Promise<Solver>)();
});

describe('the worst levels of tanks, seats and bays', () => {
  const kg = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const drawn = fc.record({
    things: fc.array(fc.record({ massKg: kg(1, 900), adds: kg(-600, 600) }), { minLength: 1, maxLength: 12 }),
    roomKg: kg(0, 4000),
  });
  it('are those of another solver (HiGHS)', () => {
    fc.assert(
      fc.property(drawn, ({ things, roomKg }) => {
        const choices = things.map(
          ({ massKg }, i): LoadChoice => ({ name: `C${i}`, kind: 'bay', full: loadAt(massKg, [0, 0, 0]), already: 0 }),
        );
        const levels = worstLevels(
          choices,
          things.map((one) => one.adds),
          roomKg,
        );
        const sum = (of: (i: number) => number) =>
          things.map((_, i) => `${of(i) < 0 ? '-' : '+'} ${Math.abs(of(i)).toFixed(12)} x${i}`).join(' ');
        const other = highs.solve(
          [
            'Maximize',
            ` obj: ${sum((i) => things[i]?.adds as number)}`,
            'Subject To',
            ` gvwr: ${sum((i) => things[i]?.massKg as number)} <= ${roomKg.toFixed(9)}`,
            'Bounds',
            ...things.map((_, i) => ` 0 <= x${i} <= 1`),
            'End',
          ].join('\n'),
        ).ObjectiveValue;
        const own = things.reduce((total, one, i) => total + one.adds * (levels[i] as number), 0);
        expect(Math.abs(own - other)).toBeLessThan(1e-3);
        expect(things.reduce((total, one, i) => total + one.massKg * (levels[i] as number), 0)).toBeLessThan(roomKg + 1e-3);
      }),
      { numRuns: 200 },
    );
  });
});

describe('every search looks at', () => {
  const shell = {
    tickets: [ticket('T-1', { front: 4000, rear: 6000 })],
    tanks: [
      tank('GREY', 'grey', 200, 2500, { at: [2500, -900, 0], use: 'waste' }),
      tank('FRESH', 'water', 200, 2500, { at: [2500, 900, 0], use: 'fresh' }),
    ],
    bays: [{ ...bay('B', 2500, 300), at: [2500, -900, 0] as const }],
  };
  const found = () => weights(vehicle({ axles: twoAxles(), gvwrKg: 16000 }, shell), takeOffOf());
  it('the mix of tanks that hurts an end most: waste full on its side, fresh empty on the other', () => {
    // 200 kg over the middle: 100 kg on the front; 900 mm to the left, shared 0.4: 72,000 of 180,000 kg·mm over 2000 mm: 36 kg each way.
    const left = found().conditions.find((one) => one.worstFor === 'front' && one.worstEnd === 'left')!;
    expect(left.holds).toBe('GREY full, FRESH full, bays B');
    expect(left.axles[0]?.leftKg).toBeCloseTo(2000 + 50 + 36 + (50 - 36) + 75 + 54, 6);
  });
  it('the ends in what is left for the next trade', () => {
    const [front] = found().budget;
    const left = found().conditions.find((one) => one.worstFor === 'front' && one.worstEnd === 'left')!.axles[0]!;
    expect(front?.leftEndKg).toBeCloseTo(3500 - 350 - (left.leftKg as number) - (left.leftUncertaintyKg as number), 6);
  });
  it('a slide-out, in and out, with what rides on it', () => {
    const opening = {
      ...record('SO-1'),
      openingKind: 'slide-out',
      wall: 'left',
      sill: [],
      widthMm: 3000,
      heightMm: 1700,
      gussets: [],
      travelMm: 800,
    };
    const rider = { ...record('CMP-1'), name: 'bench', at: [2500, -800, 500] as const, ridesOn: 'SO-1' };
    const model = vehicle(
      { axles: twoAxles(), gvwrKg: 16000 },
      { tickets: [ticket('T-1', { front: 4000, rear: 6000 })], openings: [opening], components: [rider] as never },
    );
    const answer = weights(model, takeOffOf([item('CMP-1', 500, 2500, { centroid: [2500, -800, 500] })]));
    const left = answer.conditions.find((one) => one.worstFor === 'front' && one.worstEnd === 'left')!;
    expect(left.holds).toBe('SO-1 out');
    // 500 kg go 800 mm out: 400,000 kg·mm, of which 0.4 on the front axle, over a track of 2000 mm.
    expect(left.axles[0]?.leftKg).toBeCloseTo(2000 + (0.4 * 400_000) / 2000, 6);
    expect(left.axles[0]?.loadKg).toBeCloseTo(4000, 6);
  });
});
