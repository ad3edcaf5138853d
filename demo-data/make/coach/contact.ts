import { memberBox } from '../../../src/compute/solids.js';
import { type Bounds, type Box, boundsOf, boxBounds, grow, nearestInBox, overlap } from '../../../src/geometry/box.js';
import { facet, nearestOnFacet } from '../../../src/geometry/facet.js';
import { distance, scale, type Vec3 } from '../../../src/geometry/vector.js';
import type { SectionShape } from '../../../src/model/library.js';
import { isLine, type Part } from './types.js';

const MM = 25.4;
/** Joined where they come this near, mm: the tool’s own tolerance. */
const TOUCH_MM = 3;

interface Solid {
  readonly part: Part;
  readonly bounds: Bounds;
  readonly start: Vec3;
  nearest(point: Vec3): Vec3;
  /** Half a plate’s thickness, taken off distances to its middle plane. */
  readonly skinMm: number;
}

/** Pairs of parts that touch, found from their boxes as the tool does, in the parts’ own order. */
export function contacts(
  parts: readonly Part[],
  sections: ReadonlyMap<string, SectionShape>,
): readonly (readonly [Part, Part])[] {
  const solids = parts.map((part) => solid(part, sections));
  const pairs: (readonly [Part, Part])[] = [];
  for (let i = 0; i < solids.length; i++) {
    for (let j = i + 1; j < solids.length; j++) {
      const [a, b] = [solids[i] as Solid, solids[j] as Solid];
      if (overlap(grow(a.bounds, TOUCH_MM), b.bounds) && gap(a, b) <= TOUCH_MM) pairs.push([a.part, b.part]);
    }
  }
  return pairs;
}

/** Distance between two convex solids by stepping to and fro. */
function gap(a: Solid, b: Solid): number {
  let p = a.start;
  let q = b.nearest(p);
  for (let i = 0; i < 200; i++) {
    p = a.nearest(q);
    q = b.nearest(p);
  }
  return distance(p, q) - a.skinMm - b.skinMm;
}

function solid(part: Part, sections: ReadonlyMap<string, SectionShape>): Solid {
  const mm = (p: readonly number[]): Vec3 => scale(p as unknown as Vec3, MM);
  if (isLine(part)) {
    const shape = sections.get(part.section);
    if (!shape) throw new Error(`no section ${part.section}`);
    const box: Box = memberBox(
      { kind: 'line', section: part.section, from: mm(part.from), to: mm(part.to), rollDeg: part.roll ?? 0 },
      shape,
    );
    return { part, bounds: boxBounds(box), start: box.center, nearest: (point) => nearestInBox(point, box), skinMm: 0 };
  }
  const corners = part.outline.map(mm);
  const flat = facet(corners);
  if (!flat) throw new Error(`${part.id} is no plate`);
  const skinMm = (part.thickness * MM) / 2;
  return {
    part,
    bounds: grow(boundsOf(corners), skinMm),
    start: flat.center,
    nearest: (point) => nearestOnFacet(point, flat),
    skinMm,
  };
}
