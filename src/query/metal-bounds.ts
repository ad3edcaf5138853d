import { lineWalls } from '../compute/access/walls.js';
import { ofModel } from '../compute/lazy.js';
import { type Bounds, boundsOf, boxBounds, grow } from '../geometry/box.js';
import type { Model } from '../model/shell.js';

/** Bounds of each member's metal along the axes of the datum, mm; of a member without a section on record there are none. */
export const metalBounds = ofModel('metal bounds', ({ shell, library }: Model): ReadonlyMap<string, Bounds> => {
  return new Map(
    shell.members.flatMap((member): readonly (readonly [string, Bounds])[] => {
      const { shape } = member;
      if (shape.kind === 'plate') return [[member.id, grow(boundsOf(shape.outline), shape.thicknessMm)]];
      const section = library.sections.get(shape.section);
      const corners = section ? lineWalls(member, section.dimensions).map(boxBounds) : [];
      return corners.length > 0 ? [[member.id, boundsOf(corners.flatMap(({ min, max }) => [min, max]))]] : [];
    }),
  );
});
