import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { type Resistor, solveNodal } from '../../../src/compute/services/nodal.js';

describe('nodal analysis', () => {
  it('WIR-38: 10 A over 100 ft of 12 AWG, 1.93 ohm/kft, there and back: 3.86 V (NEC Chapter 9 Table 8)', () => {
    const { dropV } = solveNodal([{ from: 'P', to: 'L', ohm: 2 * 0.193 }], 'P', [{ node: 'L', a: 10 }]);
    expect(dropV.get('L')).toBeCloseTo(3.86, 6);
  });

  it('a ring feeds a load from both sides: the current divides by the resistance of each way', () => {
    const ring: readonly Resistor[] = [
      { from: 'P', to: 'L', ohm: 1 },
      { from: 'P', to: 'M', ohm: 2 },
      { from: 'M', to: 'L', ohm: 1 },
    ];
    // 1 ohm beside 3 ohm is 0.75 ohm.
    expect(solveNodal(ring, 'P', [{ node: 'L', a: 4 }]).dropV.get('L')).toBeCloseTo(3, 9);
  });

  it('a load in watts draws what its own voltage makes it: 100 W at the end of 0.1 ohm from 12 V', () => {
    const { dropV, drawnA } = solveNodal([{ from: 'P', to: 'L', ohm: 0.1 }], 'P', [{ node: 'L', w: 100 }], 12);
    // V² − 12 V + 10 = 0.
    const volts = 6 + Math.sqrt(36 - 10);
    expect(12 - (dropV.get('L') as number)).toBeCloseTo(volts, 6);
    expect(drawnA.get('L')).toBeCloseTo(100 / volts, 6);
  });

  it('is the solution of the same equations by a matrix library (ml-matrix), on any network', () => {
    const drawn = fc.tuple(
      fc.integer({ min: 2, max: 9 }),
      fc.array(fc.tuple(fc.nat(8), fc.nat(8), fc.integer({ min: 1, max: 500 })), { minLength: 1, maxLength: 20 }),
      fc.array(fc.tuple(fc.nat(8), fc.integer({ min: 0, max: 40 })), { minLength: 1, maxLength: 6 }),
    );
    fc.assert(
      fc.property(drawn, ([size, wires, loads]) => {
        const id = (i: number): string => `N${i % size}`;
        // A chain keeps all joined.
        const resistors = [
          ...Array.from({ length: size - 1 }, (_, i) => ({ from: id(i), to: id(i + 1), ohm: 0.2 })),
          ...wires.filter(([a, b]) => id(a) !== id(b)).map(([a, b, milli]) => ({ from: id(a), to: id(b), ohm: milli / 1000 })),
        ];
        const draws = loads.map(([node, a]) => ({ node: id(node), a }));
        const laplacian = Matrix.zeros(size, size);
        for (const { from, to, ohm } of resistors) {
          const [i, j] = [Number(from.slice(1)), Number(to.slice(1))];
          for (const [r, c, sign] of [
            [i, i, 1],
            [j, j, 1],
            [i, j, -1],
            [j, i, -1],
          ] as const)
            laplacian.set(r, c, laplacian.get(r, c) + sign / ohm);
        }
        const rest = Array.from({ length: size - 1 }, (_, i) => i + 1);
        const currents = rest.map((i) => draws.reduce((sum, one) => sum + (one.node === id(i) ? one.a : 0), 0));
        const volts = solve(laplacian.selection(rest, rest), Matrix.columnVector(currents));
        const { dropV } = solveNodal(resistors, 'N0', draws);
        rest.forEach((i, row) => {
          expect(dropV.get(id(i))).toBeCloseTo(volts.get(row, 0), 6);
        });
      }),
      { numRuns: 100 },
    );
  });
});
