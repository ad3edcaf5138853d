import { lineWalls } from '../../compute/access/walls.js';
import { memberBox } from '../../compute/solids.js';
import { type Bounds, boundsOf, boxBounds, clipToBox, grow } from '../../geometry/box.js';
import { facet, height, throughFacet } from '../../geometry/facet.js';
import { alongRay } from '../../geometry/ray.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { PlateMember } from '../../records/index.js';
import { SCREW_LOOK_MM } from './screw-obstacles.js';

/** Metal that begins within this behind the face is something to screw into. Project default. */
const BACKING_MM = 60;

export interface ScrewMetal {
  readonly id: string;
  readonly bounds: Bounds;
  /** Shares of a way (0–1) where it enters and leaves the metal. */
  through(from: Vec3, to: Vec3): readonly [number, number] | undefined;
}

/** Walls of line members, and plates; those of `which` where it is given. */
export const screwMetalOf = ({ shell, library }: Model, which: (id: string) => boolean = () => true): readonly ScrewMetal[] =>
  shell.members.flatMap((member): readonly ScrewMetal[] => {
    if (!which(member.id)) return [];
    if (member.shape.kind === 'plate') return plateMetal(member.id, member.shape);
    const section = library.sections.get(member.shape.section);
    if (!section || memberBox(member.shape, section.dimensions).half[0] === 0) return [];
    return lineWalls(member, section.dimensions).map((box) => ({
      id: member.id,
      bounds: boxBounds(box),
      through: (from, to) => clipToBox(from, to, box),
    }));
  });

function plateMetal(id: string, { outline, thicknessMm }: PlateMember): readonly ScrewMetal[] {
  const sheet = facet(outline);
  if (!sheet) return [];
  const through: ScrewMetal['through'] = (from, to) => {
    const share = throughFacet(from, to, sheet);
    if (share === undefined) return undefined;
    const half = thicknessMm / 2 / Math.abs(height(to, sheet) - height(from, sheet));
    return [Math.max(0, share - half), share + half];
  };
  return [{ id, bounds: grow(boundsOf(outline), thicknessMm), through }];
}

/** Where a member's metal begins and ends under a face. */
export interface MetalBehind {
  readonly id: string;
  readonly fromMm: number;
  readonly toMm: number;
}

/** The first metal of each member along a ray, nearest first. */
export function metalAlong(metal: readonly ScrewMetal[], start: Vec3, along: Vec3): readonly MetalBehind[] {
  const end = alongRay(start, along, SCREW_LOOK_MM);
  const first = new Map<string, MetalBehind>();
  for (const { id, through } of metal) {
    const part = through(start, end);
    if (!part || part[0] * SCREW_LOOK_MM > BACKING_MM) continue;
    const [fromMm, toMm] = [part[0] * SCREW_LOOK_MM, part[1] * SCREW_LOOK_MM];
    const before = first.get(id);
    if (!before || fromMm < before.fromMm) first.set(id, { id, fromMm, toMm });
  }
  return [...first.values()].sort((a, b) => a.fromMm - b.fromMm || (a.id < b.id ? -1 : 1));
}
