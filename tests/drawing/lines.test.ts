import { describe, expect, it } from 'vitest';
import { spreadLines } from '../../src/drawing/lanes.js';
import { clipLine, clipRing, convexHull } from '../../src/drawing/outline.js';
import { VIEWS } from '../../src/drawing/projection.js';
import type { Point } from '../../src/drawing/scene.js';
import { textWidthMm } from '../../src/drawing/text-width.js';
import { farthestFirst, type Silhouette, silhouette } from '../../src/drawing/visibility.js';
import type { SectionShape } from '../../src/records/index.js';
import { sectionRings } from '../../src/sections/index.js';
import { member, sampleModel } from './sample.js';

const ringArea = (ring: readonly Point[]): number => {
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length] as Point;
    twice += x * ny - nx * y;
  });
  return Math.abs(twice) / 2;
};

const IN = 25.4;

describe('cross-sections', () => {
  // Closed forms: tube 2t(h+b−2t); I-beam 2bf + w(h−2f) + (4−π)r²; angle t(h+b−t) + (1−π/4)(r² − 2 toe²). Geometry.
  const fillets = (r: number, count: number): number => count * (1 - Math.PI / 4) * r * r;
  it.each([
    [
      'tube',
      { shape: 'rectangular tube', depthMm: 6 * IN, widthMm: 2.5 * IN, wallMm: 0.375 * IN, cornerRadiusMm: 0 },
      2 * 0.375 * (8.5 - 0.75) * IN * IN,
    ],
    [
      'I-beam',
      { shape: 'I-beam', depthMm: 127, widthMm: 88.9, webMm: 4.83, flangeMm: 8.13, filletMm: 7.62 },
      2 * 88.9 * 8.13 + 4.83 * (127 - 2 * 8.13) + fillets(7.62, 4),
    ],
    [
      'angle',
      { shape: 'angle', depthMm: 50, widthMm: 50, wallMm: 5, filletMm: 6, toeRadiusMm: 3 },
      5 * (100 - 5) + fillets(6, 1) - fillets(3, 2),
    ],
    ['round tube', { shape: 'round tube', diameterMm: 50, wallMm: 3 }, Math.PI * (25 ** 2 - 22 ** 2)],
  ] as readonly (readonly [string, SectionShape, number])[])('%s is drawn with its true area', (_name, shape, areaMm2) => {
    const [outer, ...holes] = sectionRings(shape);
    const drawn = ringArea(outer as readonly Point[]) - holes.reduce((sum, hole) => sum + ringArea(hole), 0);
    expect(drawn / areaMm2).toBeCloseTo(1, 2);
  });
});

describe('lines over each other', () => {
  it('are drawn apart, and keep their ends', () => {
    const line: readonly Point[] = [
      [0, 0],
      [50, 0],
      [50, 30],
    ];
    const [a, b] = spreadLines([line, line]) as [readonly Point[], readonly Point[]];
    expect([a[0], a.at(-1), b[0], b.at(-1)]).toEqual([line[0], line[2], line[0], line[2]]);
    const middle = (points: readonly Point[]): number => (points[1] as Point)[1];
    expect(Math.abs(middle(a) - middle(b))).toBeCloseTo(0.8, 6);
  });

  it('stay where they are when they are alone', () => {
    const apart: readonly (readonly Point[])[] = [
      [
        [0, 0],
        [50, 0],
      ],
      [
        [0, 10],
        [50, 10],
      ],
    ];
    expect(spreadLines(apart)).toEqual(apart);
  });
});

describe('plane shapes', () => {
  const window = { x0: 0, y0: 0, x1: 10, y1: 10 };
  it('are clipped to a window', () => {
    expect(
      clipLine(
        [
          [-5, 5],
          [15, 5],
        ],
        window,
      ),
    ).toEqual([
      [
        [0, 5],
        [10, 5],
      ],
    ]);
    expect(
      clipLine(
        [
          [-5, 5],
          [5, 5],
          [5, 20],
          [8, 20],
          [8, 5],
        ],
        window,
      ),
    ).toHaveLength(2);
    expect(
      ringArea(
        clipRing(
          [
            [-5, -5],
            [5, -5],
            [5, 5],
            [-5, 5],
          ],
          window,
        ),
      ),
    ).toBeCloseTo(25, 9);
    expect(
      clipRing(
        [
          [20, 20],
          [30, 20],
          [30, 30],
        ],
        window,
      ),
    ).toEqual([]);
  });

  it('have a hull without the points inside', () => {
    expect(
      convexHull([
        [0, 0],
        [4, 0],
        [2, 1],
        [4, 4],
        [0, 4],
        [2, 0],
      ]),
    ).toHaveLength(4);
  });
});

describe('what hides what', () => {
  it('paints a crossmember that lies on a rail after the rail, seen from above, and before it from below', () => {
    const { library } = sampleModel();
    const rail = member('RAIL', 's', 'RT6', [0, 0, 3], [400, 0, 3]);
    const cross = member('CROSS', 's', 'RT4', [390, -50, 8], [390, 50, 8]);
    const order = (view: typeof VIEWS.plan | typeof VIEWS.underside): readonly string[] =>
      farthestFirst(
        [cross, rail].map((one) => silhouette(one, library, view) as Silhouette),
        view,
      ).map((solid) => solid.member.id);
    expect(order(VIEWS.plan)).toEqual(['RAIL', 'CROSS']);
    expect(order(VIEWS.underside)).toEqual(['CROSS', 'RAIL']);
  });
});

describe('text widths', () => {
  it('add up from the font’s own advances', () => {
    // hmtx of Atkinson Hyperlegible Next, regular: A 626, B 613; size 2.7 mm.
    expect(textWidthMm('AB', 'note')).toBeCloseTo(((626 + 613) * 2.7) / 1000, 9);
  });
});
