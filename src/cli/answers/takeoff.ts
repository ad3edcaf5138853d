import { type AnswerForms, byName, jsonList, jsonNumber, jsonPlace, jsonText, jsonTexts, orNull, shape, whole } from './shape.js';

const mass = shape({ mass_kg: jsonNumber, centroid_mm: orNull(jsonPlace), count: whole });

/** Lengths, areas and masses. */
export const TAKEOFF_ANSWERS: Readonly<Record<string, AnswerForms>> = {
  takeoff: shape({
    members: jsonList(
      shape({
        id: jsonText,
        length_mm: jsonNumber,
        mass_kg: orNull(jsonNumber),
        centroid_mm: orNull(jsonPlace),
        alloy: orNull(jsonText),
        section: orNull(jsonText),
        stage: orNull(jsonText),
      }),
    ),
    panels: jsonList(
      shape({
        id: jsonText,
        area_mm2: orNull(jsonNumber),
        mass_kg: orNull(jsonNumber),
        centroid_mm: orNull(jsonPlace),
        alloy: orNull(jsonText),
        stage: orNull(jsonText),
      }),
    ),
    runs: jsonList(
      shape({
        id: jsonText,
        length_mm: orNull(jsonNumber),
        mass_kg: orNull(jsonNumber),
        centroid_mm: orNull(jsonPlace),
      }),
    ),
    sections: jsonList(
      shape({
        id: jsonText,
        area_mm2: jsonNumber,
        ix_mm4: orNull(jsonNumber),
        iy_mm4: orNull(jsonNumber),
        j_mm4: orNull(jsonNumber),
        kg_per_m_by_alloy: byName(orNull(jsonNumber)),
        kg_per_m: orNull(jsonNumber),
      }),
    ),
    total: mass,
    by_stage: byName(mass),
    by_alloy: byName(mass),
    by_section: byName(shape({ mass_kg: jsonNumber, centroid_mm: orNull(jsonPlace), count: whole, length_mm: jsonNumber })),
    by_side: byName(mass),
    assumptions: jsonTexts,
    overall: orNull(
      shape({
        length_mm: jsonNumber,
        width_mm: jsonNumber,
        height_above_ground_mm: orNull(jsonNumber),
        set_by: shape({ length: jsonText, width: jsonText, height: jsonText }),
        notes: jsonTexts,
      }),
    ),
  }),
};
