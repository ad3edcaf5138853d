import { circle, type Mark, type Point, rectArea, textMark } from './scene.js';
import type { PenName } from './styles.js';

/** A number in a shape that is known across a room, in colour or in a black-and-white copy. */
export type Badge = 'gas' | 'fuel' | 'mains' | 'battery';

/** Half width and height of what a label must keep free, mm. */
export const BADGE_HALF_MM: Readonly<Record<Badge, number>> = { gas: 4.7, fuel: 4.4, mains: 3.4, battery: 3.7 };

/** A diamond, a triangle, a square and a disc. */
const SHAPES: Readonly<Record<Badge, (at: Point, half: number, pen: PenName) => Mark>> = {
  gas: ([x, y], half, pen) =>
    rectArea('labels', pen, [
      [x, y - half],
      [x + half, y],
      [x, y + half],
      [x - half, y],
    ]),
  fuel: ([x, y], half, pen) =>
    rectArea('labels', pen, [
      [x, y - half],
      [x + half, y + half * 0.8],
      [x - half, y + half * 0.8],
    ]),
  mains: ([x, y], half, pen) =>
    rectArea('labels', pen, [
      [x - half, y - half],
      [x + half, y - half],
      [x + half, y + half],
      [x - half, y + half],
    ]),
  battery: (at, half, pen) => circle('labels', pen, at, half),
};

/** The shape about a place with its number in it. */
export function badgeMarks(badge: Badge, label: string, at: Point): readonly Mark[] {
  // A triangle is widest near its foot.
  const middle: Point = badge === 'fuel' ? [at[0], at[1] + 1.2] : at;
  return [
    SHAPES[badge](at, BADGE_HALF_MM[badge], `badge-${badge}`),
    textMark('labels', 'badge', middle, label, { anchor: 'middle' }),
  ];
}
