import { describe, expect, it } from 'vitest';
import { withinRows } from '../../src/drawing/node-rows.js';
import { layerOf, layerPieces, layerPlanes } from '../../src/drawing/service-layers.js';
import type { PlacedNode } from '../../src/model/placed.js';
import { node, sampleModel } from './sample.js';

const planes = {
  ...{ floorMm: 300, ceilingMm: 2300, leftMm: -1200, rightMm: 1200, frontMm: 900, rearMm: 9300 },
  floorTaken: false,
} as const;

describe('layers of a service', () => {
  it('cut a path where it passes from one into the next, and say where it goes on', () => {
    // From the belly up the left wall to the ceiling, and across to a lamp.
    const pieces = layerPieces(
      [
        [2000, 0, 100],
        [2000, -1250, 100],
        [2000, -1250, 2400],
        [2000, 0, 2400],
      ],
      planes,
    );
    expect(pieces.map(({ layer, from, to }) => [from, layer, to])).toEqual([
      [undefined, 'belly', 'left'],
      ['belly', 'left', 'ceiling'],
      ['left', 'ceiling', undefined],
    ]);
    expect(pieces[1]?.points).toEqual([
      [2000, -1250, 300],
      [2000, -1250, 2300],
    ]);
  });

  it('lose no length of a path', () => {
    const path = [
      [500, -1300, 0],
      [9500, 1300, 2500],
    ] as const;
    const long = layerPieces(path, planes).reduce((sum, { points }) => sum + Math.hypot(...subtract(points)), 0);
    expect(long).toBeCloseTo(Math.hypot(9000, 2600, 2500), 6);
  });

  it('put the belly and the ceiling before the walls', () => {
    expect(layerOf([2000, -1260, 100], planes)).toBe('belly');
    expect(layerOf([2000, -1260, 2400], planes)).toBe('ceiling');
    expect(layerOf([2000, -1260, 1000], planes)).toBe('left');
    expect(layerOf([500, 0, 1000], planes)).toBe('front');
    expect(layerOf([5000, 0, 1000], planes)).toBe('floor');
  });

  it('say that the height of the floor is taken where neither floor nor sill is recorded', () => {
    const model = sampleModel();
    const bare = { ...model, shell: { ...model.shell, openings: [] } };
    expect([layerPlanes(model).floorTaken, layerPlanes(bare).floorTaken]).toEqual([false, true]);
  });
});

const subtract = (points: readonly (readonly number[])[]): readonly number[] => {
  const [a, b] = [points[0] as readonly number[], points.at(-1) as readonly number[]];
  return b.map((one, k) => one - (a[k] as number));
};

describe('a row of nodes', () => {
  const lamp = (id: string, x: number, y: number): PlacedNode => node(id, 'dc', 'load', [x, y, 90]) as PlacedNode;
  const place = ({ at }: PlacedNode): readonly [number, number] => [at[0] / 50, at[1] / 50];

  it('has its ids at its ends where they count up from place to place', () => {
    const row = [1, 2, 3, 4, 5].map((k) => lamp(`DC-05/L${k}`, 100, 10 * k));
    expect([...withinRows(row, place)]).toEqual(['DC-05/L2', 'DC-05/L3', 'DC-05/L4']);
  });

  it('has every id where one is missing, stands aside, or out of order', () => {
    const at = (numbers: readonly number[], ys: readonly number[], asideAt = -1) =>
      withinRows(
        numbers.map((k, i) => lamp(`DC-05/L${k}`, i === asideAt ? 110 : 100, ys[i] as number)),
        place,
      ).size;
    expect(at([1, 2, 4, 5], [10, 20, 30, 40])).toBe(0);
    expect(at([1, 2, 3, 4], [10, 20, 30, 40], 2)).toBe(0);
    expect(at([1, 2, 3, 4], [10, 30, 20, 40])).toBe(0);
    expect(at([1, 2, 3], [10, 20, 30])).toBe(0);
  });
});
