import { type Bounds, boundsOf, boxBounds } from '../../geometry/box.js';
import { type Convex, convexOfBox, convexOfPlate } from '../../geometry/convex.js';
import { convexDistance, separation } from '../../geometry/convex-distance.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Member, Panel, SectionShape } from '../../records/index.js';
import { lineWalls } from '../access/walls.js';
import { memberBox, memberBoxes } from '../solids.js';

/** The outer surface of a member or panel, as convex solids. */
export interface SolidBody {
  readonly id: string;
  readonly parts: readonly Convex[];
  readonly bounds: Bounds;
}

const body = (id: string, parts: readonly Convex[]): SolidBody | undefined =>
  parts.length === 0 ? undefined : { id, parts, bounds: boundsOf(parts.flatMap(({ corners }) => corners)) };

/** A line member fills the box of its section, a bent one a box a chord; a plate the prism of its outline. None without section, length or area. */
export function memberBody(member: Member, { library }: Model): SolidBody | undefined {
  const { shape } = member;
  if (shape.kind === 'plate') return body(member.id, convexOfPlate(shape.outline, shape.thicknessMm));
  const section = library.sections.get(shape.section);
  if (!section) return undefined;
  const boxes = memberBoxes(shape, section.dimensions).filter(({ half }) => half[0] > 0);
  return body(member.id, boxes.map(convexOfBox));
}

/** The metal of a line member: its walls, so that what stands in an open angle or in the hollow of a tube does not touch it. */
export function memberMetal(member: Member, model: Model): SolidBody | undefined {
  const { shape } = member;
  const section = shape.kind === 'line' ? model.library.sections.get(shape.section) : undefined;
  if (!section || !HAS_AIR.has(section.dimensions.shape)) return memberBody(member, model);
  const walls = lineWalls(member, section.dimensions).filter(({ half }) => half.every((one) => one > 0));
  return body(member.id, walls.map(convexOfBox));
}

/** Sections with room in them that is no metal. */
const HAS_AIR: ReadonlySet<SectionShape['shape']> = new Set([
  'rectangular tube',
  'double hollow',
  'I-beam',
  'channel',
  'angle',
  'tee',
  'round tube',
  'corner radius',
]);

/** About what {@link memberBody} gives, before its surfaces are made. */
export function memberBounds(member: Member, model: Model): Bounds | undefined {
  const { shape } = member;
  if (shape.kind === 'plate') return memberBody(member, model)?.bounds;
  const section = model.library.sections.get(shape.section);
  const box = section && memberBox(shape, section.dimensions);
  return box && box.half[0] !== 0 ? boxBounds(box) : undefined;
}

/** A panel as a plate of its thickness, its holes filled. */
export const panelBody = (panel: Panel): SolidBody | undefined =>
  body(panel.id, convexOfPlate(panel.outline, panel.thicknessMm ?? 0));

/** A single place, to be measured from. */
export const pointBody = (id: string, at: Vec3): SolidBody => ({
  id,
  parts: [{ corners: [at], faces: [], edges: [[at, at]] }],
  bounds: boundsOf([at]),
});

/** Distance of two bodies, mm; undefined as soon as it is known to be above `enough`. */
export function bodyDistance(a: SolidBody, b: SolidBody, enough = Infinity): number | undefined {
  let least = Infinity;
  for (const one of a.parts) {
    for (const other of b.parts) {
      if (separation(one, other, enough) > enough) continue;
      least = Math.min(least, convexDistance(one, other));
    }
  }
  return least <= enough ? least : undefined;
}
