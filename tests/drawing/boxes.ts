/** What the labels of a printed drawing cover, for tests. */

export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** White rectangles behind label texts, in the labels group. */
export function labelBoxes(svg: string): readonly Box[] {
  const group = /<g class="sb-labels">(.*?)<\/g>\n?(?:<g class="sb-furniture"|<\/svg>)/su.exec(svg)?.[1] ?? '';
  return [...group.matchAll(/<rect x="([-\d.]+)" y="([-\d.]+)" width="([\d.]+)" height="([\d.]+)"/gu)].map((m) => {
    const [x, y, w, h] = m.slice(1).map(Number) as [number, number, number, number];
    return { x0: x, y0: y, x1: x + w, y1: y + h };
  });
}
