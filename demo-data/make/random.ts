/** The same small scatter every time: mulberry32, so that what is written never changes by itself. */
export function scatter(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const pick = <T>(from: readonly T[], random: () => number): T => from[Math.floor(random() * from.length)] as T;
