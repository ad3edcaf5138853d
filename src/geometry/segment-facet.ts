import { type Facet, nearestOnFacet, onFacet, throughFacet } from './facet.js';
import { nearestOfSegments } from './segment.js';
import { distance, type Vec3 } from './vector.js';

/** Distance of a segment from a flat polygon with holes: 0 where it goes through. Exact: at an end of it, or at a side of the polygon. */
export function segmentToFacet(from: Vec3, to: Vec3, of: Facet): number {
  if (throughFacet(from, to, of) !== undefined) return 0;
  let least = Math.min(distance(from, nearestOnFacet(from, of)), distance(to, nearestOnFacet(to, of)));
  for (const ring of [of.outline, ...of.holes]) {
    ring.forEach(([x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % ring.length] as readonly [number, number];
      least = Math.min(least, nearestOfSegments(from, to, onFacet(of, x, y), onFacet(of, nextX, nextY)).distance);
    });
  }
  return least;
}
