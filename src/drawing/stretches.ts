/** A stretch along a line: where it begins and ends. */
export type Stretch = readonly [from: number, to: number];

/** Stretches that overlap, or come within `gap` of each other, made one; in order along the line. */
export function mergedStretches(stretches: readonly Stretch[], gap = 1e-9): readonly Stretch[] {
  const found: [number, number][] = [];
  for (const [from, to] of [...stretches].sort((a, b) => a[0] - b[0])) {
    const last = found.at(-1);
    if (last && from <= last[1] + gap) last[1] = Math.max(last[1], to);
    else found.push([from, to]);
  }
  return found;
}
