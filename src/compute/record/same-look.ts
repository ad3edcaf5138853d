/**
 * True where two pictures are of one shot, as far as their looks can tell: at most 10 of 256 places differ. A copy sent round and
 * packed again differs in fewer, two shots of like bays in more; measured on the demo's pictures, no source.
 */
export function sameLook(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  let differ = 0;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i] && ++differ > MOST) return false;
  return !isBlank(a);
}

const MOST = 10;
/** A picture without any edge (black, or a wall) looks like every other. */
const isBlank = (look: string): boolean => [...look].filter((place) => place !== '1').length < LEAST_EDGES;
const LEAST_EDGES = 24;
