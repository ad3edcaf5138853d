import fc from 'fast-check';
import { determinant, inverse, Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { weights } from '../../../src/compute/weights/index.js';
import { adjustReadings } from '../../../src/compute/weights/least-squares.js';
import type { Model } from '../../../src/model/shell.js';
import type { Instrument, Ticket } from '../../../src/records/index.js';
import { condition, readings, scaleSC1, tagCoach, takeOffOf, ticket, twoAxles, vehicle } from './support.js';

const figure = (model: Model) => weights(model, takeOffOf()).tickets[0]!;

const close = (found: readonly number[] | undefined, expected: readonly number[], digits: number): void => {
  expect(found).toEqual(expected.map((value) => expect.closeTo(value, digits)));
};

describe('several readings of one weighing', () => {
  const axles = twoAxles();
  const weigh = (front: readonly number[], rear: readonly number[], gross: number) => {
    const reading = ([totalKg, leftKg, rightKg]: readonly number[]) => ({
      totalKg: totalKg as number,
      leftKg: leftKg as number,
      rightKg: rightKg as number,
    });
    return figure(
      vehicle(
        { axles },
        {
          tickets: [
            ticket('T-1', {}, { scale: 'SC-1', grossKg: gross, readings: { front: reading(front), rear: reading(rear) } }),
          ],
        },
      ),
    ).reconciled;
  };
  it('agree within what the scale can do', () => {
    const found = weigh([5000, 2505, 2498], [7000, 3490, 3508], 12010);
    expect(found).toMatchObject({ agree: true, redundancy: 3 });
    expect(found?.outlier).toBeUndefined();
  });
  it('name the one that does not fit', () => {
    expect(weigh([5000, 2500, 2500], [7000, 3500, 3410], 12000)).toMatchObject({
      agree: false,
      suspects: ['rear left', 'rear right'],
    });
    expect(weigh([5000, 2500, 2500], [7200, 3500, 3500], 12000)).toMatchObject({ agree: false, outlier: 'rear' });
  });
  it('cannot name it with one reading to spare', () => {
    const found = figure(
      vehicle({ axles }, { tickets: [ticket('T-1', { front: 5000, rear: 7000 }, { scale: 'SC-1', grossKg: 12600 })] }),
    ).reconciled;
    expect(found).toMatchObject({ agree: false, redundancy: 1 });
    expect(found?.outlier).toBeUndefined();
  });
  it('are nothing to compare where each is the only one', () => {
    expect(figure(vehicle({ axles }, { tickets: [ticket('T-1', { front: 5000, rear: 7000 })] })).reconciled).toBeUndefined();
  });
});

describe('two axles and a gross on a scale that is as good at any load', () => {
  // Three readings of equal u beside two unknowns: each takes a third of what they are apart (w), each residual has the standard
  // deviation u/√3, and χ² = w²/(3u²): textbook adjustment of observations by parameters.
  const uKg = 10;
  const even: Instrument = {
    ...scaleSC1,
    resolution: { value: 0, dimension: 'mass', text: '0 kg' },
    tolerance: { value: uKg * Math.sqrt(3), dimension: 'mass', text: '17.3 kg' },
  };
  const apart = (w: number, more: Partial<Ticket> = {}) => {
    const one = ticket('T-1', { front: 5000, rear: 7000 }, { scale: 'SC-1', grossKg: 12000 + w, ...more });
    const model = vehicle({ axles: twoAxles() }, { tickets: [one] });
    return figure({ ...model, library: { ...model.library, instruments: new Map([[even.id, even]]) } }).reconciled;
  };
  it.each([12, -30])('%d kg apart', (w) => {
    const found = apart(w);
    expect(found?.readings.map((one) => [one.name, one.readKg])).toEqual([
      ['front', 5000],
      ['rear', 7000],
      ['gross', 12000 + w],
    ]);
    close(
      found?.readings.map((one) => one.adjustedKg),
      [5000 + w / 3, 7000 + w / 3, 12000 + w - w / 3],
      6,
    );
    const each = w / (uKg * Math.sqrt(3));
    close(
      found?.readings.map((one) => one.normalisedResidual as number),
      [-each, -each, each],
      6,
    );
    expect(found?.chiSquare).toBeCloseTo(w ** 2 / (3 * uKg ** 2), 6);
    expect(found).toMatchObject({ agree: true, redundancy: 1, suspects: [] });
  });
  it('agree up to 3.29 standard deviations, and all three are suspects beyond', () => {
    // Normal distribution: 0.1 % lie beyond 3.29.
    const edge = 3.29 * uKg * Math.sqrt(3);
    expect(apart(edge * 0.999)).toMatchObject({ agree: true, suspects: [] });
    expect(apart(edge * 1.001)).toMatchObject({ agree: false, suspects: ['front', 'rear', 'gross'] });
  });
  it('are compared only where every axle was read or was up', () => {
    expect(apart(0, { readings: readings({ front: 5000 }) })).toBeUndefined();
    const tag = (lifted: 'up' | 'down') =>
      figure(
        vehicle(
          { axles: tagCoach() },
          {
            tickets: [
              ticket(
                'T-1',
                { steer: 4400, drive: 9600 },
                { grossKg: 14000, condition: condition({ levels: { FUEL: 1 }, lifted: { tag: lifted } }) },
              ),
            ],
          },
        ),
      ).reconciled?.redundancy;
    expect([tag('up'), tag('down')]).toEqual([1, undefined]);
  });
  it('count a sum of ends as no reading of its own', () => {
    const ends = (totalKg: number) =>
      apart(0, {
        readings: { front: { totalKg, leftKg: 2480, rightKg: 2520 }, rear: { totalKg: 7000, leftKg: 3500, rightKg: 3500 } },
      });
    expect(ends(5000)?.readings.map((one) => one.name)).toEqual([
      'front left',
      'front right',
      'rear left',
      'rear right',
      'gross',
    ]);
    expect(ends(5010)?.readings.map((one) => one.name)).toEqual([
      'front left',
      'front right',
      'front',
      'rear left',
      'rear right',
      'gross',
    ]);
  });
  it('know nothing of an end that was noted without the other', () => {
    for (const end of [{ leftKg: 2400 }, { rightKg: 2400 }]) {
      const found = apart(0, { readings: { front: { totalKg: 5000, ...end }, rear: { totalKg: 7000 } } });
      expect(found?.readings.map((one) => one.name)).toEqual(['front', 'rear', 'gross']);
      expect(found).toMatchObject({ redundancy: 1, agree: true });
    }
  });
  it('give no residual to a reading that nothing checks', () => {
    // Ends of the front axle are checked by its total; the rear axle stands alone, as no gross is read.
    const found = apart(0, {
      grossKg: undefined,
      readings: { front: { totalKg: 5010, leftKg: 2480, rightKg: 2520 }, rear: { totalKg: 7000 } },
    });
    expect(found?.readings.find((one) => one.name === 'rear')).toEqual({ name: 'rear', readKg: 7000, adjustedKg: 7000 });
    expect(found?.readings.filter((one) => one.normalisedResidual !== undefined)).toHaveLength(3);
    expect(found).toMatchObject({ agree: true, suspects: [] });
  });
});

describe('weighted least squares', () => {
  it('equals ml-matrix on any adjustment', () => {
    const row = fc.array(
      fc.integer({ min: -30, max: 30 }).map((x) => x / 10),
      { minLength: 3, maxLength: 3 },
    );
    const value = fc.double({ min: -1000, max: 1000, noNaN: true });
    const u = fc.double({ min: 0.5, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(row, value, u), { minLength: 6, maxLength: 9 }), (rows) => {
        const [design, observed, spread] = [rows.map((one) => one[0]), rows.map((one) => one[1]), rows.map((one) => one[2])];
        const found = adjustReadings(design, observed, spread);
        const weighted = new Matrix(design.map((one, i) => one.map((x) => x / (spread[i] as number))));
        const normal = weighted.transpose().mmul(weighted);
        fc.pre(Math.abs(determinant(normal)) > 1e-3);
        const other = solve(weighted, Matrix.columnVector(observed.map((x, i) => x / (spread[i] as number))), true).to1DArray();
        close(found?.solution, other, 4);
        const a = new Matrix(design);
        const left = observed.map((x, i) => x - (a.mmul(Matrix.columnVector(other)).to1DArray()[i] as number));
        close(found?.residuals, left, 4);
        expect(found?.chiSquare).toBeCloseTo(
          left.reduce((sum, v, i) => sum + (v / (spread[i] as number)) ** 2, 0),
          3,
        );
        // Covariance of the residuals: textbook adjustment of observations by parameters, Qvv = Qll − A N⁻¹ Aᵀ.
        const taken = a.mmul(inverse(normal)).mmul(a.transpose()).diagonal();
        const variance = spread.map((one, i) => one ** 2 - (taken[i] as number));
        fc.pre(variance.every((one) => one > 1e-4));
        close(found?.residualDeviation, variance.map(Math.sqrt), 4);
      }),
    );
  });
  it('knows nothing of an observation that nothing checks', () => {
    const found = adjustReadings(
      [
        [1, 0],
        [0, 1],
        [0, 1],
      ],
      [10, 20, 22],
      [1, 1, 1],
    );
    expect(found?.solution).toEqual([10, 21]);
    expect(found?.residualDeviation[0]).toBe(0);
    expect(found?.residualDeviation[1]).toBeCloseTo(Math.SQRT1_2, 9);
    expect(found?.chiSquare).toBeCloseTo(2, 9);
  });
  it('refuses unknowns that are not determined', () => {
    expect(
      adjustReadings(
        [
          [1, 1],
          [1, 1],
          [2, 2],
        ],
        [1, 1, 2],
        [1, 1, 1],
      ),
    ).toBeUndefined();
  });
});
