import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import { whatIf } from '../../../src/compute/weights/what-if.js';
import { bay, seat, takeOffOf, tank, ticket, twoAxles, vehicle } from './support.js';

describe('what if this is loaded', () => {
  // Unladen 4000 and 6000 kg on 5 m, track 2 m, ends 3500 and 5500 kg; 200 kg of water over the front axle; a seat over the rear.
  const axles = twoAxles(5000, { tyres: { count: 2, loadIndex: [160] } });
  const model = vehicle(
    { axles, gvwrKg: 12000 },
    {
      bays: [{ ...bay('B', 2500, 300), at: [2500, 1000, 0] as const }],
      tanks: [tank('FRESH', 'water', 200, 0, { use: 'fresh' })],
      seats: [seat('driver', 5000)],
      tickets: [ticket('T-1', { front: 4000, rear: 6000 })],
    },
  );
  const ask = (massKg: number) => whatIf(model, weights(model, takeOffOf()), [{ massKg, at: [2500, 1000, 0], bay: 'B' }]);
  const of = (rows: ReturnType<typeof ask>, name: string) => rows.find((one) => one.name === name);
  it('adds to axle and end by statics, on the worst state of tanks and seats', () => {
    const rows = ask(200);
    expect(of(rows, 'front')?.loadKg).toBeCloseTo(4000 + 200 + 100, 6);
    expect(of(rows, 'rear')?.loadKg).toBeCloseTo(6000 + 68 + 100, 6);
    // 200 kg a metre to the right: 0.4 of the moment is the front axle's, over 2 m: 40 kg from one end to the other.
    expect(of(rows, 'right end of front')?.loadKg).toBeCloseTo(2150 + 40, 6);
    expect(of(rows, 'left end of front')?.loadKg).toBeCloseTo(2150 - 40, 6);
    expect(of(rows, 'each tire, right end of front')?.loadKg).toBeCloseTo(2190, 6);
    expect(of(rows, 'whole vehicle')?.loadKg).toBeCloseTo(10000 + 200 + 68 + 200, 6);
    expect(of(rows, 'B')).toMatchObject({ kind: 'bay', verdict: 'within', marginKg: 100 });
  });
  it('says which is over', () => {
    expect(
      ask(301)
        .filter((one) => one.verdict === 'over')
        .map((one) => one.name),
    ).toEqual(['B']);
    expect(
      ask(4000)
        .filter((one) => one.verdict === 'over')
        .map((one) => one.kind),
    ).toEqual(expect.arrayContaining(['gross', 'bay', 'end']));
  });
  it('is one straight line a gauge, which a page can add up by itself', () => {
    const line = weights(model, takeOffOf()).loadLines.find((one) => one.name === 'right end of front')!;
    const byHand = line.baseKg + 200 * (line.perKg + line.perKgMmX * 2500 + line.perKgMmY * 1000);
    expect(byHand).toBeCloseTo(of(ask(200), 'right end of front')?.loadKg as number, 9);
  });
});
