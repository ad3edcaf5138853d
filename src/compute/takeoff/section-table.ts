import type { Model } from '../../model/shell.js';
import { sectionEnvelope, shapeProperties } from '../../sections/index.js';
import { densityKgMm3 } from './density.js';
import type { SectionProperties } from './types.js';

/** Every section of the library, with its mass per metre in each alloy that this shell uses it in. */
export function sectionTable({ shell, library }: Model): readonly SectionProperties[] {
  const alloys = new Map<string, Set<string>>();
  for (const { alloy, shape } of shell.members) {
    if (shape.kind !== 'line') continue;
    alloys.set(shape.section, (alloys.get(shape.section) ?? new Set()).add(alloy));
  }
  return [...library.sections.values()].map(({ id, dimensions }) => {
    const shape = shapeProperties(dimensions);
    const [depthMm, widthMm] = sectionEnvelope(dimensions);
    const perMetre = [...(alloys.get(id) ?? [])].map(
      (alloy) => [alloy, shape.areaMm2 * densityKgMm3(alloy, library) * 1000] as const,
    );
    return {
      id,
      areaMm2: shape.areaMm2,
      ixMm4: shape.ixMm4,
      iyMm4: shape.iyMm4,
      ixyMm4: shape.ixyMm4,
      jMm4: shape.jMm4,
      centroidDepthMm: shape.depthMm,
      centroidWidthMm: shape.widthMm,
      depthMm,
      widthMm,
      kgPerM: Object.fromEntries(perMetre),
    };
  });
}
