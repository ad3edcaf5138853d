import type { Assessment } from '../../assess.js';
import { type Overall, overall } from '../../compute/access/overall.js';
import type { MassSum, SectionProperties, TakeOff } from '../../compute/takeoff/types.js';
import { envelope, type Json, mapValues, place3 } from './json.js';

const sum = ({ massKg, centroid, count }: MassSum): Json => ({ mass_kg: massKg, centroid_mm: place3(centroid), count });

export function takeoffJson({ model, figures }: Assessment, revision: string | null): string {
  const { takeOff } = figures;
  return envelope('takeoff', model.shell.id, revision, {
    members: takeOff.members.map((one) => ({
      id: one.id,
      length_mm: one.lengthMm,
      mass_kg: one.massKg,
      centroid_mm: place3(one.centroid),
      alloy: one.alloy,
      section: one.section,
      stage: one.stage,
    })),
    panels: takeOff.panels.map((one) => ({
      id: one.id,
      area_mm2: one.areaMm2,
      mass_kg: one.massKg,
      centroid_mm: place3(one.centroid),
      alloy: one.alloy,
      stage: one.stage,
    })),
    runs: takeOff.runs.map((one) => ({
      id: one.id,
      length_mm: one.lengthMm,
      mass_kg: one.massKg,
      centroid_mm: place3(one.centroid),
    })),
    sections: takeOff.sections.map((one) => sectionJson(one, takeOff)),
    total: sum(takeOff.total),
    by_stage: mapValues(takeOff.byStage, sum),
    by_alloy: mapValues(takeOff.byAlloy, sum),
    by_section: mapValues(takeOff.bySection, (one) => ({ ...(sum(one) as object), length_mm: one.lengthMm })),
    by_side: mapValues(takeOff.bySide, sum),
    overall: overallJson(overall(model)),
    assumptions: takeOff.assumptions,
  });
}

const overallJson = (one: Overall | undefined): Json =>
  one
    ? {
        length_mm: one.lengthMm,
        width_mm: one.widthMm,
        height_above_ground_mm: one.heightAboveGroundMm ?? null,
        set_by: { length: one.setBy.length.join(', '), width: one.setBy.width.join(', '), height: one.setBy.height },
        notes: one.notes,
      }
    : null;

function sectionJson(section: SectionProperties, takeOff: TakeOff): Json {
  return {
    id: section.id,
    area_mm2: section.areaMm2,
    ix_mm4: section.ixMm4,
    iy_mm4: section.iyMm4,
    j_mm4: section.jMm4,
    kg_per_m: section.kgPerM[mainAlloy(section, takeOff) ?? ''],
    kg_per_m_by_alloy: section.kgPerM,
  };
}

/** The alloy that most of this section's length is made of. */
function mainAlloy(section: SectionProperties, takeOff: TakeOff): string | undefined {
  const lengths = new Map<string, number>();
  for (const member of takeOff.members) {
    if (member.section === section.id) lengths.set(member.alloy, (lengths.get(member.alloy) ?? 0) + member.lengthMm);
  }
  return [...lengths].sort((a, b) => b[1] - a[1])[0]?.[0] ?? Object.keys(section.kgPerM)[0];
}
