import type { Point } from './scene.js';
import { mergedStretches } from './stretches.js';

/** Lines nearer than this to each other print as one, mm on the sheet. */
const SAME_MM = 0.6;

/** Straight pieces of many lines, each place once: where lines lie over each other their dashes would smear into a full one. */
export function singleLines(lines: readonly (readonly Point[])[]): readonly (readonly [Point, Point])[] {
  const across = new Map<number, [number, number][]>();
  const upright = new Map<number, [number, number][]>();
  const slanted = new Map<string, readonly [Point, Point]>();
  const keep = (rows: Map<number, [number, number][]>, at: number, a: number, b: number): void => {
    const row = Math.round(at / SAME_MM);
    rows.set(row, [...(rows.get(row) ?? []), [Math.min(a, b), Math.max(a, b)]]);
  };
  for (const points of lines) {
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1] as Point, points[i] as Point];
      if (Math.abs(a[1] - b[1]) < SAME_MM / 2) keep(across, (a[1] + b[1]) / 2, a[0], b[0]);
      else if (Math.abs(a[0] - b[0]) < SAME_MM / 2) keep(upright, (a[0] + b[0]) / 2, a[1], b[1]);
      else {
        const ends = [a, b].map((p) => p.map((one) => Math.round(one / SAME_MM)).join()).sort();
        slanted.set(ends.join(), [a, b]);
      }
    }
  }
  const flat = joined(across).map(([at, from, to]): readonly [Point, Point] => [
    [from, at],
    [to, at],
  ]);
  const tall = joined(upright).map(([at, from, to]): readonly [Point, Point] => [
    [at, from],
    [at, to],
  ]);
  return [...flat, ...tall, ...slanted.values()];
}

/** Stretches of each row, those that touch made one. */
const joined = (rows: ReadonlyMap<number, readonly [number, number][]>): readonly (readonly [number, number, number])[] =>
  [...rows].flatMap(([row, stretches]) =>
    mergedStretches(stretches, SAME_MM)
      .filter(([from, to]) => to - from > SAME_MM / 2)
      .map(([from, to]) => [row * SAME_MM, from, to] as const),
  );
