import { describe, expect, it } from 'vitest';
import { hiddenLines } from '../../src/drawing/hidden-lines.js';
import { VIEWS } from '../../src/drawing/projection.js';
import type { Mark, Point } from '../../src/drawing/scene.js';
import { layOut, type Port } from '../../src/drawing/sheet.js';
import { mergedStretches } from '../../src/drawing/stretches.js';
import type { Silhouette } from '../../src/drawing/visibility.js';
import { member } from './sample.js';

/** At 1:1: mm of the vehicle are mm of the sheet, up to a shift. */
const layout = layOut(
  [{ view: VIEWS.left, bounds: { x0: 0, y0: 0, x1: 100, y1: 100 } }],
  { widthMm: 140, heightMm: 140 },
  { sideMm: 5, aboveMm: 5, belowMm: 5, mostMm: 5 },
);
const port = layout.ports[0] as Port;

const block = (x0: number, y0: number, x1: number, y1: number): Silhouette => ({
  member: member('M', 'walls', 'RT2', [0, 0, 0], [1, 0, 0]),
  corners: [],
  ring: [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ],
  bounds: { x0, y0, x1, y1 },
});

const flat = (marks: readonly Mark[]): readonly (readonly Point[])[] =>
  marks.flatMap((mark) => (mark.kind === 'shape' ? mark.rings : []));
const lengths = (marks: readonly Mark[]): readonly number[] =>
  flat(marks)
    .map(([a, b]) => Math.hypot((b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0)))
    .map((one) => Math.round(one * 10) / 10)
    .sort((a, b) => a - b);

describe('hidden lines', () => {
  it('are drawn at 1:1 here', () => expect(layout.reduction).toBe(1));

  it('dash the edges of a bar where another stands in front of it, and nothing else', () => {
    // A bar 10 high runs behind a post 20 wide: both its long edges are covered over 20 mm. Worked by hand.
    expect(lengths(hiddenLines([block(0, 40, 100, 50), block(40, 0, 60, 100)], port))).toEqual([20, 20]);
  });

  it('dash the whole outline of what is wholly behind', () => {
    expect(lengths(hiddenLines([block(20, 20, 50, 40), block(0, 0, 100, 100)], port))).toEqual([20, 20, 30, 30]);
  });

  it('draw nothing where the bar is the nearer, where edges lie on each other, or at a mere crossing', () => {
    expect(hiddenLines([block(40, 0, 60, 100)], port)).toEqual([]);
    expect(hiddenLines([block(0, 0, 10, 50), block(10, 0, 20, 50)], port)).toEqual([]);
    expect(hiddenLines([block(0, 40, 100, 50), block(40, 0, 42, 100)], port)).toEqual([]);
  });

  it('are all dashed', () => {
    for (const mark of hiddenLines([block(20, 20, 50, 40), block(0, 0, 100, 100)], port))
      expect(mark).toMatchObject({ layer: 'hidden', pen: 'hidden' });
  });
});

describe('stretches along a line', () => {
  it('are made one where they overlap or touch', () => {
    expect(
      mergedStretches([
        [5, 7],
        [0, 2],
        [2, 3],
        [6, 9],
      ]),
    ).toEqual([
      [0, 3],
      [5, 9],
    ]);
    expect(
      mergedStretches(
        [
          [0, 1],
          [1.5, 2],
        ],
        0.6,
      ),
    ).toEqual([[0, 2]]);
  });
});
