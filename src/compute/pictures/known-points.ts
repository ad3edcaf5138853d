import { planarPolygon } from '../../geometry/polygon.js';
import { add, cross, dot, norm, scale, unit, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { type Member, type Opening, OUTWARD, type Panel, type SeenPoint } from '../../records/index.js';
import { sectionEnvelope } from '../../sections/index.js';
import { stationAt } from '../solids.js';

/** A point that a picture may be tied to. */
export interface KnownPoint {
  readonly at: Vec3;
  /** Standard deviation of the place, mm, seen along a unit vector; the largest where nobody knows yet from where it is seen. */
  sigmaMm(along?: Vec3): number;
}

/** Why a record is no point to tie a picture to, in words for who typed it. */
export interface NoPoint {
  readonly found: string;
  readonly expected: string;
}

export const isPoint = (one: KnownPoint | NoPoint): one is KnownPoint => 'at' in one;

/** How closely a tape measures a place where the shop does not say, mm: 1/8 in, common practice, no source. */
const PICTURE_TAPE_MM = 25.4 / 8;
/** What a typed tolerance stands for: the width of a rectangular spread (GUM 4.3.7). */
const RECTANGULAR = Math.sqrt(3);

/** The place of a point that a picture shows, by the record that it names. */
export function knownPoint({ shell, library, shop }: Model, seen: SeenPoint): KnownPoint | NoPoint {
  const tapeMm = shop.limits.tapeMm ?? PICTURE_TAPE_MM;
  if (seen.at) return fixed(seen.at, tapeMm);
  if (seen.is === undefined) return { found: 'neither `is` nor `at`', expected: '`is: P-L-06` or `at: [180 in, -50 in, 40 in]`' };
  const entry = shell.byId.get(seen.is);
  if (!entry) return { found: `\`${seen.is}\``, expected: 'the id of a node, member, panel or opening of this shell' };
  switch (entry.kind) {
    case 'node': {
      const node = shell.nodes.find(({ id }) => id === seen.is);
      if (!node?.at) return { found: `node ${seen.is} without a place`, expected: 'a node with `at`' };
      return fixed(node.at, node.toleranceMm ?? tapeMm);
    }
    case 'member':
      return memberEnd(entry.record as Member, seen, (id) => library.sections.get(id)?.dimensions, tapeMm);
    case 'panel':
      return corner(panelCorners(entry.record as Panel), seen, tapeMm);
    case 'opening':
      return corner(openingCornerPoints(entry.record as Opening), seen, tapeMm);
    default:
      return {
        found: `${entry.kind} ${seen.is}`,
        expected: 'a node, a member’s end, or a corner of a panel or opening: they alone are points',
      };
  }
}

const fixed = (at: Vec3, toleranceMm: number): KnownPoint => ({ at, sigmaMm: () => toleranceMm / RECTANGULAR });

type Dimensions = Parameters<typeof sectionEnvelope>[0];

/** The middle of the face at a member's end, known to half of the width that the picture shows of it. */
function memberEnd(
  { id, shape }: Member,
  { end }: SeenPoint,
  sectionOf: (id: string) => Dimensions | undefined,
  tapeMm: number,
): KnownPoint | NoPoint {
  if (shape.kind === 'plate') return { found: `plate ${id}`, expected: 'a tube or beam with an `end`: a plate has none' };
  if (end === undefined) return { found: `member ${id} without \`end\``, expected: '`end: low`, `high`, `from` or `to`' };
  const rising = shape.to[2] - shape.from[2];
  if ((end === 'low' || end === 'high') && Math.abs(rising) < 1)
    return { found: `\`end: ${end}\` of ${id}, which lies level`, expected: '`end: from` or `end: to`' };
  const at = end === 'from' || (end === 'low' && rising > 0) || (end === 'high' && rising < 0) ? shape.from : shape.to;
  const section = sectionOf(shape.section);
  const half = section ? sectionEnvelope(section).map((size) => size / 2) : undefined;
  const { frame } = stationAt(shape, at === shape.from ? 0 : 1);
  const visibleHalf = (along?: Vec3): number => {
    if (!half) return tapeMm;
    const [depth = 0, width = 0] = half;
    const across = along ? cross(frame.along, along) : undefined;
    if (!across || norm(across) < 0.1) return Math.max(depth, width);
    const side = unit(across);
    return Math.abs(dot(frame.depth, side)) * depth + Math.abs(dot(frame.width, side)) * width;
  };
  return { at, sigmaMm: (along) => Math.hypot(visibleHalf(along), tapeMm) / RECTANGULAR };
}

function corner(corners: readonly Vec3[], seen: SeenPoint, tapeMm: number): KnownPoint | NoPoint {
  if (corners.length === 0)
    return { found: `${seen.is} without corners`, expected: 'an outline, or a sill with width and height' };
  if (seen.corner === undefined)
    return { found: `${seen.is} without \`corner\``, expected: `\`corner: 1\` to \`${corners.length}\`` };
  const at = corners[seen.corner - 1];
  if (!at) return { found: `\`corner: ${seen.corner}\` of ${seen.is}`, expected: `1 to ${corners.length}` };
  return fixed(at, tapeMm);
}

/** Corners of a panel, clockwise from the lower front one, seen from outside; of one that lies flat, from its front left one. */
function panelCorners({ outline, facing }: Panel): readonly Vec3[] {
  if (outline.length < 3) return [];
  const normal = normalOf(outline);
  return ordered(outline, outwardOf(normal, outline, facing));
}

/** Corners of an opening in a wall in the same order. */
export function openingCornerPoints({ sill, heightMm }: Opening): readonly Vec3[] {
  const [a, b] = sill;
  if (!a || !b) return [];
  const up: Vec3 = [0, 0, heightMm];
  const around = [a, b, add(b, up), add(a, up)];
  return ordered(around, outwardOf(normalOf(around), around));
}

const normalOf = (outline: readonly Vec3[]): Vec3 => planarPolygon(outline).normal;

/** The way out of the coach: away from its middle plane for side walls, up for a roof, down for a belly, by the greatest part of the normal. */
function outwardOf(normal: Vec3, outline: readonly Vec3[], facing?: Panel['facing']): Vec3 {
  const greatest = [0, 1, 2].reduce((a, b) => (Math.abs(normal[b] as number) > Math.abs(normal[a] as number) ? b : a));
  const middle = outline.reduce((sum, at) => sum + (at[greatest] as number), 0) / outline.length;
  const wanted = (facing && OUTWARD[facing].reduce((sum, part) => sum + part)) ?? (greatest === 1 ? Math.sign(middle) || 1 : 1);
  return Math.sign(normal[greatest] as number) === wanted ? normal : scale(normal, -1);
}

function ordered(outline: readonly Vec3[], outward: Vec3): readonly Vec3[] {
  // Newell’s normal points to who sees the corners run anticlockwise.
  const clockwise = dot(normalOf(outline), outward) > 0 ? [...outline].reverse() : [...outline];
  const flat = Math.abs(outward[2]) > 0.7;
  const rank = ([x, y, z]: Vec3): readonly number[] => (flat ? [x, y] : [z, x, y]);
  const near = 1;
  const start = clockwise.reduce((best, at, i) => {
    const [a, b] = [rank(at), rank(clockwise[best] as Vec3)];
    const differs = a.findIndex((value, k) => Math.abs(value - (b[k] as number)) > near);
    return differs >= 0 && (a[differs] as number) < (b[differs] as number) ? i : best;
  }, 0);
  return [...clockwise.slice(start), ...clockwise.slice(0, start)];
}
