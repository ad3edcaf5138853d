import fc from 'fast-check';
import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import { adjustCorrelated } from '../../../src/compute/weights/least-squares.js';
import type { Model } from '../../../src/model/shell.js';
import { bareOf, condition, item, scaleSC1, tagCoach, takeOffOf, ticket, twoAxles, vehicle } from './support.js';

type Readings = Model['shell']['tickets'][number]['readings'];
const ends = (leftKg: number, rightKg: number) => ({ totalKg: leftKg + rightKg, leftKg, rightKg });
const unladen = (found: ReturnType<typeof weights>) => found.conditions.find((one) => one.name === 'unladen')!;

describe('least squares of readings whose errors go together', () => {
  const row = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 3, maxLength: 3 });
  const drawn = fc.record({
    design: fc.array(row, { minLength: 5, maxLength: 8 }),
    common: fc.array(fc.double({ min: -4, max: 4, noNaN: true }), { minLength: 8, maxLength: 8 }),
    own: fc.array(fc.double({ min: 0.5, max: 5, noNaN: true }), { minLength: 8, maxLength: 8 }),
    seen: fc.array(fc.double({ min: -1000, max: 1000, noNaN: true }), { minLength: 8, maxLength: 8 }),
  });
  it('are what a matrix library makes of (Aᵀ V⁻¹ A)⁻¹ Aᵀ V⁻¹ l', () => {
    fc.assert(
      fc.property(drawn, ({ design, common, own, seen }) => {
        const rows = design.length;
        const covariance = Array.from({ length: rows }, (_, i) =>
          Array.from({ length: rows }, (_unused, j) => common[i]! * common[j]! + (i === j ? own[i]! ** 2 : 0)),
        );
        const a = new Matrix(design);
        const normal = a
          .transpose()
          .mmul(inverse(new Matrix(covariance)))
          .mmul(a);
        // A drawn design may be all but singular: then neither has an answer worth comparing.
        const spread = Math.max(...normal.diag());
        fc.pre(Math.min(...inverseDiagonal(normal)) > 0 && Math.max(...inverseDiagonal(normal)) < 1e6 / spread);
        const gain = inverse(normal)
          .mmul(a.transpose())
          .mmul(inverse(new Matrix(covariance)));
        const expected = gain.mmul(Matrix.columnVector(seen.slice(0, rows))).to1DArray();
        const found = adjustCorrelated(design, seen.slice(0, rows), covariance)!;
        found.solution.forEach((value, i) => {
          expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-6 * (1 + Math.abs(expected[i]!)));
        });
        // JCGM 100:2008 5.2.2: the uncertainty through the gain, u² = G V Gᵀ, is the inverse of the normal matrix.
        const through = gain.mmul(new Matrix(covariance)).mmul(gain.transpose());
        expect(through.sub(inverse(normal)).norm()).toBeLessThan(1e-6 * (1 + inverse(normal).norm()));
      }),
    );
  });
  const inverseDiagonal = (matrix: Matrix): readonly number[] => {
    try {
      return inverse(matrix).diag();
    } catch {
      return [Number.POSITIVE_INFINITY];
    }
  };
  it('two readings of one scale: its tolerance is not halved, its steps are', () => {
    // u² = t² + s²/2 by hand, for readings 100 with a common t = 3 and own steps s = 4.
    const covariance = [
      [9 + 16, 9],
      [9, 9 + 16],
    ];
    const found = adjustCorrelated([[1], [1]], [100, 102], covariance)!;
    expect(found.solution[0]).toBeCloseTo(101, 9);
    const [g] = found.gain;
    expect(g).toEqual([expect.closeTo(0.5, 9), expect.closeTo(0.5, 9)]);
  });
  it('have no answer where the unknowns are not determined', () => {
    const unit = [
      [1, 0],
      [0, 1],
    ];
    expect(
      adjustCorrelated(
        [
          [1, 1],
          [1, 1],
        ],
        [1, 2],
        unit,
      ),
    ).toBeUndefined();
    expect(adjustCorrelated([], [], [])).toBeUndefined();
  });
});

describe('tickets of one state', () => {
  const axles = twoAxles();
  const sc1 = { scale: 'SC-1', stage: 'finished' };
  const withEnds = ticket('T-1', {}, { ...sc1, readings: { front: ends(3200, 2800), rear: { totalKg: 8000 } } as Readings });
  const later = ticket('T-2', { front: 6010, rear: 8000 }, { ...sc1, date: '2026-07-01' });
  const both = () => weights(vehicle({ axles, gvwrKg: 18000 }, { tickets: [withEnds, later] }), takeOffOf());

  it('a later ticket without ends corrects the total of an axle and leaves its sides as weighed', () => {
    const [front] = unladen(both()).axles;
    // Equal scales: the mean of 6000 and 6010 but for the smaller step error of two pads; the right end keeps 400 kg less than the left.
    expect(front?.loadKg).toBeGreaterThan(6000);
    expect(front?.loadKg).toBeLessThan(6010);
    expect((front?.leftKg as number) - (front?.rightKg as number)).toBeCloseTo(400, 1);
    expect(both()).toMatchObject({ basisTicket: 'T-2', basisTickets: ['T-1', 'T-2'], endTickets: ['T-1'] });
  });
  it('say what they differ by, and what makes the uncertainty of an end', () => {
    const found = unladen(both());
    expect(found.contributions.map((one) => one.name)).toEqual(
      expect.arrayContaining(['tolerance of scale SC-1', 'steps of scale SC-1', 'tickets that differ']),
    );
    expect(found.endContributions).toMatchObject({ axle: 'front', end: 'left' });
    expect(found.axles[0]?.leftUncertaintyKg).toBeGreaterThan(0);
  });
  it('an end that was never weighed is known less well than one that was', () => {
    const [front, rear] = unladen(both()).axles;
    expect(rear?.leftUncertaintyKg).toBeGreaterThan(3 * (front?.leftUncertaintyKg as number));
  });
  it('that contradict each other: the newest counts, and all that they differ by is uncertain', () => {
    const heavy = ticket('T-3', { front: 6300, rear: 8300 }, { ...sc1, date: '2026-07-02' });
    const found = weights(vehicle({ axles, gvwrKg: 18000 }, { tickets: [withEnds, heavy] }), takeOffOf());
    const [front] = unladen(found).axles;
    expect(front?.loadKg).toBeCloseTo(6300, 6);
    expect((front?.leftKg as number) - (front?.rightKg as number)).toBeCloseTo(400, 1);
    // 300 kg apart as a rectangle, k = 2: 346 kg.
    expect(front?.uncertaintyKg).toBeGreaterThan((2 * 300) / Math.sqrt(3));
    expect(found.basisTickets).toEqual(['T-3']);
    expect(found.assumptions.join(' ')).toContain('T-1 of the same stage contradicts it');
  });
  it('of an earlier stage give their ends, with what was added since by its place', () => {
    const early = { ...withEnds, stage: 'walls', date: '2026-03-01' };
    const added = { ...item('CMP-1', 500, 0, { centroid: [0, 600, 0] as const, stage: 'finished' }) };
    const late = ticket('T-2', { front: 6500, rear: 8000 }, { ...sc1, date: '2026-07-01' });
    const found = weights(vehicle({ axles, gvwrKg: 18000 }, { tickets: [early, late] }), takeOffOf([added]));
    const [front] = unladen(found).axles;
    expect(front?.loadKg).toBeCloseTo(6500, 6);
    // −400 kg across as weighed; 500 kg at 600 mm right of the middle, shared by load (6500 of 14,500), over a track of 2000 mm.
    const turn = 500 * 600 * (6500 / 14500);
    expect((front?.rightKg as number) - (front?.leftKg as number)).toBeCloseTo(-400 + (2 * turn) / 2000, 6);
    expect(found).toMatchObject({ basisTickets: ['T-2'], endTickets: ['T-1'] });
  });
});

describe('what the records do not explain', () => {
  it('is part of the uncertainty in full: 568 kg off the prediction', () => {
    const axles = twoAxles();
    const bare = bareOf({ front: 4000, rear: 6000 });
    const off = ticket('T-1', { front: 4284, rear: 6284 }, { scale: 'SC-1' });
    const found = unladen(weights(vehicle({ axles, bare, gvwrKg: 18000 }, { tickets: [off] }), takeOffOf()));
    // 284 kg an axle as a rectangle, k = 2: 328 kg; the two go together: 656 kg of the whole.
    expect(found.axles[0]?.uncertaintyKg).toBeGreaterThan((2 * 284) / Math.sqrt(3));
    expect(found.uncertaintyKg).toBeGreaterThan((2 * 568) / Math.sqrt(3));
    expect(found.contributions[0]?.name).toBe('weighed but not explained by the records');
  });
});

describe('a bare chassis weighed with its tag up', () => {
  // STA-10 and STA-11: 5233.96, 5259.62 and 3506.41 kg with the tag down are 4433.33 and 9566.67 kg with it up.
  const up = {
    ...bareOf({ steer: 4433.3333333, drive: 9566.6666667 }),
    condition: condition({ levels: { FUEL: 1 }, lifted: { tag: 'up' } }),
  };
  it('is brought down as a ticket is', () => {
    const found = unladen(weights(vehicle({ axles: tagCoach(), bare: up, gvwrKg: 24000 }), takeOffOf()));
    expect(found.axles.map((one) => one.loadKg)).toEqual([5233.96, 5259.62, 3506.41].map((kg) => expect.closeTo(kg, 1)));
    // ± 2 % of the group's 8766 kg as a rectangle, k = 2: 202 kg that the tag has more or less.
    expect(found.axles[2]?.uncertaintyKg).toBeGreaterThan(200);
  });
  it('counts what is not known of its sides, unless its ends were weighed', () => {
    const names = (bare: Model['shell']['chassis']['bare']) =>
      unladen(
        weights(vehicle({ axles: tagCoach(), ...(bare ? { bare } : {}), gvwrKg: 24000 }), takeOffOf()),
      ).endContributions?.contributions.map((one) => one.name);
    expect(names(up)).toContain('bare chassis: left to right, not weighed');
    const weighed = { ...up, readings: { steer: ends(2200, 2233.3333333), drive: ends(4800, 4766.6666667) } };
    expect(names(weighed)).not.toContain('bare chassis: left to right, not weighed');
  });
});

describe('a ticket with the tag up', () => {
  it('keeps the stated share uncertain, and one with it down does not', () => {
    const tickets = (lifted: boolean) => [
      lifted
        ? ticket(
            'T-1',
            { steer: 4433.3, drive: 9566.7 },
            { scale: 'SC-1', condition: condition({ levels: { FUEL: 1 }, lifted: { tag: 'up' } }) },
          )
        : ticket('T-1', { steer: 5234, drive: 5260, tag: 3506 }, { scale: 'SC-1' }),
    ];
    const tag = (lifted: boolean) =>
      unladen(weights(vehicle({ axles: tagCoach(), gvwrKg: 24000 }, { tickets: tickets(lifted) }), takeOffOf())).axles[2];
    expect(scaleSC1.id).toBe('SC-1');
    // ± 2 % of the group's 8766 kg as a rectangle, k = 2: 202 kg.
    expect(tag(true)?.uncertaintyKg).toBeGreaterThan(200);
    expect(tag(false)?.uncertaintyKg).toBeLessThan(20);
  });
});
