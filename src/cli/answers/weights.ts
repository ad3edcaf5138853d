import { finding } from './check.js';
import { state } from './common.js';
import {
  type AnswerForms,
  byName,
  flag,
  jsonAny,
  jsonList,
  jsonNumber,
  jsonOneOf,
  jsonPlace,
  jsonText,
  jsonTexts,
  orNull,
  shape,
  whole,
} from './shape.js';

const byAxle = byName(orNull(jsonNumber.describe('kilograms')));

const end = jsonOneOf('left', 'right');

const contribution = jsonList(shape({ name: jsonText, kg: jsonNumber }));

const budget = shape({
  axle: jsonText,
  condition: jsonText,
  reserve_kg: orNull(jsonNumber),
  uncertainty_kg: orNull(jsonNumber),
  left_kg: orNull(jsonNumber),
  left_end_kg: orNull(jsonNumber),
  right_end_kg: orNull(jsonNumber),
  left_end_uncertainty_kg: orNull(jsonNumber),
  right_end_uncertainty_kg: orNull(jsonNumber),
});

const verdict = jsonOneOf('within', 'within uncertainty', 'over', 'not verified');

const weights = shape({
  ratings: jsonList(
    shape({
      axle: jsonText,
      gawr_kg: orNull(jsonNumber),
      tyres_kg: orNull(jsonNumber),
      wheels_kg: orNull(jsonNumber),
      suspension_kg: orNull(jsonNumber),
      limit_kg: orNull(jsonNumber),
      limited_by: orNull(jsonText),
    }),
  ),
  /** What a wheel rating was given for. */
  wheels_by: jsonList(shape({ axle: jsonText, by: orNull(jsonOneOf('wheel', 'axle')) })),
  conditions: jsonList(
    shape({
      name: jsonText,
      kind: jsonText,
      certified: flag,
      holds: jsonText,
      worst_for: orNull(jsonText),
      worst_end: orNull(end),
      total_kg: jsonNumber,
      centroid_mm: orNull(jsonPlace),
      centroid_uncertainty_mm: orNull(jsonNumber),
      gvwr_margin_kg: orNull(jsonNumber),
      uncertainty_kg: orNull(jsonNumber),
      verdict: orNull(verdict),
      steer_share: orNull(jsonNumber),
      contributions: contribution,
      end_contributions: orNull(shape({ axle: jsonText, end, contributions: contribution })),
      axles: jsonList(
        shape({
          axle: jsonText,
          load_kg: orNull(jsonNumber),
          limit_kg: orNull(jsonNumber),
          margin_kg: orNull(jsonNumber),
          uncertainty_kg: orNull(jsonNumber),
          verdict,
          left_kg: orNull(jsonNumber),
          right_kg: orNull(jsonNumber),
          left_uncertainty_kg: orNull(jsonNumber),
          right_uncertainty_kg: orNull(jsonNumber),
          lifted: orNull(flag),
        }),
      ),
    }),
  ),
  tickets: jsonList(
    shape({
      id: jsonText,
      date: orNull(jsonText),
      stage: orNull(jsonText),
      verified: flag,
      reason: orNull(jsonText),
      calibration_lapse: orNull(jsonText),
      as_weighed: byAxle,
      normalised: byAxle,
      predicted: byAxle,
      residual: byAxle,
      total_kg: orNull(jsonNumber),
      normalised_kg: orNull(jsonNumber),
      residual_kg: orNull(jsonNumber),
      residual_x_mm: orNull(jsonNumber),
      uncertainty_kg: orNull(jsonNumber),
      residual_uncertainty_kg: orNull(jsonNumber),
      added_since_kg: orNull(jsonNumber),
      reconciled: orNull(
        shape({
          agree: flag,
          outlier: orNull(jsonText),
          redundancy: whole,
          chi_square: jsonNumber,
          readings: jsonList(
            shape({ name: jsonText, read_kg: jsonNumber, adjusted_kg: jsonNumber, normalised_residual: orNull(jsonNumber) }),
          ),
        }),
      ),
    }),
  ),
  uvw_kg: orNull(jsonNumber),
  occc_kg: orNull(jsonNumber),
  ccc_kg: orNull(jsonNumber),
  full_water_kg: orNull(jsonNumber),
  trailer_kg: orNull(jsonNumber),
  label: orNull(
    shape({
      uvw_kg: jsonNumber,
      uvw_lb: jsonNumber,
      occc_kg: orNull(jsonNumber),
      occc_lb: orNull(jsonNumber),
      seats: whole,
      seats_kg: jsonNumber,
      seats_lb: jsonNumber,
      water_kg: orNull(jsonNumber),
      water_lb: orNull(jsonNumber),
      ccc_kg: orNull(jsonNumber),
      ccc_lb: orNull(jsonNumber),
    }),
  ),
  bays: jsonList(
    shape({
      id: jsonText,
      stated_kg: orNull(jsonNumber),
      allowance_kg: orNull(jsonNumber),
      limited_by: orNull(jsonText),
      together_kg: orNull(jsonNumber),
    }),
  ),
  growth: jsonList(
    shape({
      stage: jsonText,
      predicted_kg: orNull(jsonNumber),
      measured_kg: orNull(jsonNumber),
      uncertainty_kg: orNull(jsonNumber),
    }),
  ),
  forecast: orNull(
    shape({
      allowance_kg: jsonNumber,
      total_kg: jsonNumber,
      low_kg: jsonNumber,
      high_kg: jsonNumber,
      axles: jsonList(shape({ axle: jsonText, load_kg: jsonNumber, low_kg: jsonNumber, high_kg: jsonNumber })),
    }),
  ),
  planned_kg: orNull(jsonNumber),
  influence: jsonList(shape({ x_mm: jsonNumber, adds_kg: byAxle })),
  budget: jsonList(budget),
  reserve: jsonNumber,
  road_limits: jsonList(
    shape({
      kind: jsonOneOf('single', 'tandem', 'bridge', 'gross'),
      axles: jsonTexts,
      spread_mm: orNull(jsonNumber),
      load_kg: orNull(jsonNumber),
      limit_kg: orNull(jsonNumber),
      margin_kg: orNull(jsonNumber),
    }),
  ),
  road_limits_condition: orNull(jsonText),
  cg_height: jsonList(
    shape({
      ticket: jsonText,
      level: jsonText,
      height_mm: orNull(jsonNumber),
      uncertainty_mm: orNull(jsonNumber),
      refused: orNull(jsonText),
    }),
  ),
  basis: orNull(jsonText),
  basis_ticket: orNull(jsonText),
  basis_tickets: jsonTexts,
  end_tickets: jsonTexts,
  full_kg: orNull(jsonNumber),
  least: jsonList(shape({ axle: jsonText, load_kg: orNull(jsonNumber) })),
  not_loaded_with: jsonTexts,
  load_lines: jsonList(
    shape({
      axle: jsonText,
      end: orNull(jsonText),
      name: jsonText,
      standing: jsonText,
      base_kg: jsonNumber,
      uncertainty_kg: jsonNumber,
      adds_kg: jsonNumber,
      adds_aft_kg: jsonNumber,
      adds_right_kg: jsonNumber,
      limit_kg: orNull(jsonNumber),
      count: orNull(jsonNumber),
      tyre_kg: orNull(jsonNumber),
    }),
  ),
  point_loads: jsonList(
    shape({
      id: jsonText,
      kind: jsonText,
      of_kg: orNull(jsonNumber),
      load_kg: orNull(jsonNumber),
      rating_kg: orNull(jsonNumber),
      lifts: jsonAny,
      unbolt_first: jsonAny,
    }),
  ),
  full_without_bays_kg: orNull(jsonNumber),
  with: orNull(
    shape({
      loads: jsonList(shape({ typed: jsonText, mass_kg: jsonNumber, at_mm: orNull(jsonPlace), bay: orNull(jsonText) })),
      rows: jsonList(
        shape({
          kind: jsonText,
          name: jsonText,
          standing: jsonText,
          load_kg: jsonNumber,
          uncertainty_kg: jsonNumber,
          limit_kg: jsonNumber,
          margin_kg: jsonNumber,
          verdict,
        }),
      ),
      over: flag,
    }),
  ),
  assumptions: jsonTexts,
  problems: jsonTexts,
});

/** Loads on axles, and what they leave. */
export const WEIGHT_ANSWERS: Readonly<Record<string, AnswerForms>> = {
  weights,
  release: shape(
    {
      state,
      closed: orNull(shape({ tag: jsonText, revision_letter: jsonText })),
      basis: orNull(jsonText),
      basis_ticket: orNull(jsonText),
      reserve: jsonNumber,
      gvwr_left_kg: orNull(jsonNumber),
      budget: jsonList(budget),
      stations: jsonList(shape({ x_mm: jsonNumber, adds_kg: byAxle, most_kg: orNull(jsonNumber), limited_by: orNull(jsonText) })),
      faces: jsonList(
        shape({
          face: jsonText,
          panels: jsonTexts,
          runs: jsonList(
            shape({
              id: jsonText,
              medium: jsonText,
              panel: jsonText,
              depth_mm: jsonNumber,
              at_mm: jsonPlace,
              tolerance_mm: orNull(jsonNumber),
            }),
          ),
        }),
      ),
      do_not_paint: jsonList(
        shape({
          what: jsonText,
          why: jsonText,
          items: jsonList(shape({ id: jsonText, name: orNull(jsonText), position_mm: orNull(jsonPlace) })),
        }),
      ),
      open: jsonList(shape({ zone: orNull(jsonText), zone_name: orNull(jsonText), findings: jsonList(finding) })),
      problems: jsonTexts,
      assumptions: jsonTexts,
      cautions: jsonTexts,
    },
    { file: jsonText, pages: whole },
  ),
};
