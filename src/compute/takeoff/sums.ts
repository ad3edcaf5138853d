import { add, scale, type Vec3 } from '../../geometry/vector.js';
import type { MassItem, MassSum } from './types.js';

/** First moments are summed, the centroid is divided out once at the end: sums of parts then equal the sum of the whole. */
interface Running {
  massKg: number;
  moment: Vec3;
  count: number;
}

const start = (): Running => ({ massKg: 0, moment: [0, 0, 0], count: 0 });

function put(sum: Running, massKg: number, at: Vec3): void {
  sum.massKg += massKg;
  sum.moment = add(sum.moment, scale(at, massKg));
  sum.count += 1;
}

const done = (sum: Running): MassSum => ({
  massKg: sum.massKg,
  centroid: sum.massKg === 0 ? [0, 0, 0] : scale(sum.moment, 1 / sum.massKg),
  count: sum.count,
});

export function massSumOf(items: readonly MassItem[]): MassSum {
  const sum = start();
  for (const item of items) put(sum, item.massKg, item.centroid);
  return done(sum);
}

/** Sums by a word of each item, in the order in which the words first come; items without one come under ''. */
export function sumBy(
  items: readonly MassItem[],
  word: (item: MassItem) => string | undefined,
): Readonly<Record<string, MassSum>> {
  const sums = new Map<string, Running>();
  for (const item of items) {
    const key = word(item) ?? '';
    const sum = sums.get(key) ?? start();
    sums.set(key, sum);
    put(sum, item.massKg, item.centroid);
  }
  return Object.fromEntries([...sums].map(([key, sum]) => [key, done(sum)]));
}

/** An item centred this near the centre line counts half to each side, mm. */
const ON_CENTRE_MM = 0.5;

/** Left (y < 0) and right, by where each item's centre of gravity lies; both together are the whole. */
export function sumBySide(items: readonly MassItem[]): Readonly<Record<'left' | 'right', MassSum>> {
  const sides = { left: start(), right: start() };
  for (const { massKg, centroid } of items) {
    if (Math.abs(centroid[1]) <= ON_CENTRE_MM) {
      put(sides.left, massKg / 2, centroid);
      put(sides.right, massKg / 2, centroid);
    } else put(centroid[1] < 0 ? sides.left : sides.right, massKg, centroid);
  }
  return { left: done(sides.left), right: done(sides.right) };
}
