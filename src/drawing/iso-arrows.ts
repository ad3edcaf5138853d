import type { Vec3 } from '../geometry/vector.js';
import { arrowHead } from './dimensions.js';
import { project, type View } from './projection.js';
import { line, type Mark, type Point, textMark } from './scene.js';

const LONG_MM = 9;
const WORD_MM = 2.6;

/** The ways of the vehicle that an isometric shows none of by itself. */
const WAYS: readonly (readonly [words: string, way: Vec3])[] = [
  ['FRONT', [-1, 0, 0]],
  ['LEFT', [0, -1, 0]],
  ['UP', [0, 0, 1]],
];

/** Room that the three arrows take about their foot, mm: to the left and right, above, and below. */
export const ISO_ARROWS_MM = { sideMm: 18, aboveMm: 14, belowMm: 9 } as const;

/** Three arrows from one place, as they lie in a pictorial view: which way is front, left and up. */
export function isoArrows(view: View, [x, y]: Point): readonly Mark[] {
  return WAYS.flatMap(([words, way]): readonly Mark[] => {
    const [across, up] = project(view, way);
    const long = Math.hypot(across, up);
    const [dx, dy] = [across / long, -up / long];
    const tip: Point = [x + dx * LONG_MM, y + dy * LONG_MM];
    const anchor = Math.abs(dx) < 0.1 ? 'middle' : dx < 0 ? 'end' : 'start';
    const beyond: Point = [tip[0] + dx, tip[1] + dy * WORD_MM];
    return [
      line('furniture', 'axis', [[x, y], tip]),
      { ...arrowHead(tip, Math.atan2(dy, dx)), layer: 'furniture' },
      textMark('furniture', 'name-strong', beyond, words, { anchor }),
    ];
  });
}
