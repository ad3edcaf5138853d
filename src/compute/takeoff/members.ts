import { planarPolygon } from '../../geometry/polygon.js';
import { add, distance, lerp, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { LineMember, Member, PlateMember } from '../../records/index.js';
import type { ShapeProperties } from '../../sections/index.js';
import { shapeProperties } from '../../sections/index.js';
import { memberFrame } from '../solids.js';
import { densityKgMm3 } from './density.js';
import type { MemberFigure } from './types.js';

/** Length, mass and centroid of each member: line members by section × length, plates by area × thickness. */
export function memberFigures({ shell, library }: Model): readonly MemberFigure[] {
  const shapes = new Map<string, ShapeProperties>();
  for (const section of library.sections.values()) shapes.set(section.id, shapeProperties(section.dimensions));
  return shell.members.map((member) => {
    const density = densityKgMm3(member.alloy, library);
    return member.shape.kind === 'line'
      ? onLine(member, member.shape, shapes.get(member.shape.section), density)
      : plate(member, member.shape, density);
  });
}

/** A section that the library lacks has no mass: the reader has told it already. */
function onLine(member: Member, line: LineMember, shape: ShapeProperties | undefined, density: number): MemberFigure {
  const lineLengthMm = distance(line.from, line.to);
  const lengthMm = line.cutLengthMm ?? lineLengthMm;
  return {
    id: member.id,
    lengthMm,
    lineLengthMm,
    massKg: (shape?.areaMm2 ?? 0) * lengthMm * density,
    centroid: shape ? centroidOnLine(line, shape) : lerp(line.from, line.to, 0.5),
    alloy: member.alloy,
    section: line.section,
    stage: member.stage,
  };
}

/** The middle of the line, moved by the section's own centroid in the member's rolled axes. */
function centroidOnLine(line: LineMember, shape: ShapeProperties): Vec3 {
  const frame = memberFrame(line);
  const aside = add(scale(frame.depth, shape.depthMm), scale(frame.width, shape.widthMm));
  return add(lerp(line.from, line.to, 0.5), aside);
}

/** Area by Newell's method; the length told is that of the longest side. */
function plate(member: Member, shape: PlateMember, density: number): MemberFigure {
  const { area, centroid } = planarPolygon(shape.outline);
  const sides = shape.outline.map((corner, i) => distance(corner, shape.outline[(i + 1) % shape.outline.length] as Vec3));
  const lengthMm = Math.max(0, ...sides);
  return {
    id: member.id,
    lengthMm,
    lineLengthMm: lengthMm,
    massKg: area * shape.thicknessMm * density,
    centroid,
    alloy: member.alloy,
    stage: member.stage,
  };
}
