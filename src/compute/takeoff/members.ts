import { planarPolygon } from '../../geometry/polygon.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { LineMember, Member, PlateMember } from '../../records/index.js';
import type { ShapeProperties } from '../../sections/index.js';
import { shapeProperties } from '../../sections/index.js';
import { developedLengthMm, lineCentroid } from '../solids.js';
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
  const along = developedLengthMm(line);
  const lengthMm = line.cutLengthMm ?? along;
  return {
    id: member.id,
    lengthMm,
    lineLengthMm: along,
    massKg: (shape?.areaMm2 ?? 0) * lengthMm * density,
    centroid: lineCentroid(line, [shape?.depthMm ?? 0, shape?.widthMm ?? 0]),
    alloy: member.alloy,
    section: line.section,
    stage: member.stage,
  };
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
