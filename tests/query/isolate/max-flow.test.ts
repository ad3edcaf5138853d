import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { FlowNetwork } from '../../../src/query/isolate/graph/max-flow.js';

/** What is used of the solver; its own types do not fit this module form. */
interface Solver {
  solve(model: string): { readonly ObjectiveValue: number };
}

type Edge = readonly [from: number, to: number, capacity: number];

describe('maximum flow', () => {
  const flow = (size: number, edges: readonly Edge[], source: number, sink: number): number => {
    const network = new FlowNetwork(size);
    for (const [from, to, capacity] of edges) network.join(from, to, capacity);
    return network.maxFlow(source, sink);
  };

  it('Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, figure 26.1: 23 (from memory)', () => {
    const edges: readonly Edge[] = [
      [0, 1, 16],
      [0, 2, 13],
      [1, 3, 12],
      [2, 1, 4],
      [3, 2, 9],
      [2, 4, 14],
      [4, 3, 7],
      [3, 5, 20],
      [4, 5, 4],
    ];
    expect(flow(6, edges, 0, 5)).toBe(23);
  });

  let solve: (model: string) => number;
  beforeAll(async () => {
    const highs = await (loadHighs as unknown as () => Promise<Solver>)();
    solve = (model) => highs.solve(model).ObjectiveValue;
  });

  it('is that of the same network as a linear programme, by another solver (highs)', () => {
    const edges = fc.array(fc.tuple(fc.nat(5), fc.nat(5), fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 14 });
    fc.assert(
      fc.property(edges, (drawn) => {
        const plain = drawn.filter(([from, to]) => from !== to);
        fc.pre(plain.some(([from]) => from === 0) && plain.some(([, to]) => to === 5));
        const sum = (sign: string, pick: (edge: Edge) => boolean): string =>
          plain.flatMap((edge, i) => (pick(edge) ? [`${sign} f${i}`] : [])).join(' ');
        const kept = [1, 2, 3, 4]
          .map((v) => `${sum('+', ([from]) => from === v)} ${sum('-', ([, to]) => to === v)}`.trim())
          .flatMap((row, i) => (row ? [` c${i}: ${row} = 0`] : []));
        const goal = `${sum('+', ([from]) => from === 0)} ${sum('-', ([, to]) => to === 0)}`;
        const bounds = plain.map(([, , capacity], i) => ` 0 <= f${i} <= ${capacity}`);
        const model = ['Maximize', ` obj: ${goal}`, 'Subject To', ...kept, ' free: f0 >= 0', 'Bounds', ...bounds, 'End'].join(
          '\n',
        );
        expect(flow(6, plain, 0, 5)).toBeCloseTo(solve(model), 6);
      }),
      { numRuns: 60 },
    );
  });
});
