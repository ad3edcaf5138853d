/** Levels of a picture, row by row: 0 dark to 255 bright. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly levels: Uint8ClampedArray | Uint8Array;
}

/** Half of the square over which a corner is felt, px. */
const HALF = 3;
/** Harris and Stephens’s factor, "A combined corner and edge detector", 1988. */
const K = 0.05;
/** Weaker than this a corner is noise; levels to the fourth power, per pixel of the square. */
const LEAST = 4e3;

/** The strongest corner within `radius` of a pixel by Harris and Stephens, to a fraction of a pixel; undefined where there is none. */
export function cornerNear(picture: GreyPicture, u: number, v: number, radius: number): readonly [number, number] | undefined {
  const [u0, v0] = [Math.round(u), Math.round(v)];
  let best: readonly [number, number, number] | undefined;
  for (let y = v0 - radius; y <= v0 + radius; y++)
    for (let x = u0 - radius; x <= u0 + radius; x++) {
      if (Math.hypot(x - u0, y - v0) > radius) continue;
      const strength = response(picture, x, y);
      if (strength > (best?.[2] ?? LEAST)) best = [x, y, strength];
    }
  return best && finer(picture, best[0], best[1]);
}

/** How much like a corner a pixel is: the product of both gradients’ spread less that of an edge. */
function response({ width, height, levels }: GreyPicture, x: number, y: number): number {
  if (x <= HALF || y <= HALF || x >= width - HALF - 1 || y >= height - HALF - 1) return 0;
  let [xx, yy, xy] = [0, 0, 0];
  for (let j = y - HALF; j <= y + HALF; j++)
    for (let i = x - HALF; i <= x + HALF; i++) {
      const at = j * width + i;
      const dx = ((levels[at + 1] as number) - (levels[at - 1] as number)) / 2;
      const dy = ((levels[at + width] as number) - (levels[at - width] as number)) / 2;
      xx += dx * dx;
      yy += dy * dy;
      xy += dx * dy;
    }
  const count = (2 * HALF + 1) ** 2;
  [xx, yy, xy] = [xx / count, yy / count, xy / count];
  return xx * yy - xy * xy - K * (xx + yy) ** 2;
}

/** Half of the square from whose edges the corner is worked out, px. */
const AROUND = 5;
const ROUNDS = 3;

/**
 * The place at which the edges about a pixel meet: where every gradient is at right angles to the way there, by least squares
 * (Förstner and Gülch, "A fast operator for detection and precise location of distinct points", ISPRS Intercommission, 1987).
 */
function finer({ width, height, levels }: GreyPicture, x: number, y: number): readonly [number, number] {
  let at: readonly [number, number] = [x, y];
  for (let round = 0; round < ROUNDS; round++) {
    const [u0, v0] = [Math.round(at[0]), Math.round(at[1])];
    if (u0 <= AROUND || v0 <= AROUND || u0 >= width - AROUND - 1 || v0 >= height - AROUND - 1) break;
    let [xx, yy, xy, bx, by] = [0, 0, 0, 0, 0];
    for (let j = v0 - AROUND; j <= v0 + AROUND; j++)
      for (let i = u0 - AROUND; i <= u0 + AROUND; i++) {
        const place = j * width + i;
        const dx = ((levels[place + 1] as number) - (levels[place - 1] as number)) / 2;
        const dy = ((levels[place + width] as number) - (levels[place - width] as number)) / 2;
        xx += dx * dx;
        yy += dy * dy;
        xy += dx * dy;
        bx += dx * dx * i + dx * dy * j;
        by += dx * dy * i + dy * dy * j;
      }
    const det = xx * yy - xy * xy;
    if (det <= 0) break;
    const next = [(yy * bx - xy * by) / det, (xx * by - xy * bx) / det] as const;
    // Farther than its own square it is another corner's.
    if (Math.hypot(next[0] - x, next[1] - y) > AROUND) break;
    at = next;
  }
  return at;
}
