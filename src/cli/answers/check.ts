import { counts } from './common.js';
import {
  type AnswerForms,
  byName,
  jsonList,
  jsonNumber,
  jsonOneOf,
  jsonPlace,
  jsonText,
  jsonTexts,
  orNull,
  pair,
  shape,
  whole,
} from './shape.js';

/** One finding, as every answer has it. */
export const finding = shape(
  {
    rule: jsonText,
    severity: jsonOneOf('error', 'warning', 'note'),
    message: jsonText,
    ids: jsonTexts,
    file: jsonText,
    line: whole,
    column: whole,
  },
  { decided_by: jsonText },
);

const ofOneShell = {
  openings: jsonList(
    shape({
      id: jsonText,
      racking_deg: orNull(jsonNumber),
      diagonal_difference_mm: orNull(jsonNumber),
      sag_mm: orNull(jsonNumber),
      gussets: jsonTexts,
    }),
  ),
  headers: jsonList(
    shape({
      opening: jsonText,
      own_mm: jsonNumber,
      panel_kg: orNull(jsonNumber),
      with_panel_mm: orNull(jsonNumber),
      built_in_mm: orNull(jsonNumber),
    }),
  ),
  photos: shape({
    run_length_mm: jsonNumber,
    run_length_shown_mm: jsonNumber,
    joints: whole,
    joints_in_two: whole,
    without_extent: jsonTexts,
    gaps: jsonList(
      shape({
        run: jsonText,
        from_mm: jsonNumber,
        to_mm: jsonNumber,
        at_mm: pair(orNull(jsonPlace)),
        zones: jsonTexts,
        panels: jsonTexts,
        closed: orNull(jsonText),
      }),
    ),
  }),
  materials: shape({
    primary_kg: jsonNumber,
    traced_kg: jsonNumber,
    share: orNull(jsonNumber),
    untraced: jsonTexts,
    heats: jsonList(shape({ heat: jsonText, alloys: jsonTexts, mass_kg: jsonNumber, certificates: jsonTexts })),
  }),
  welds: shape({
    count: whole,
    joints: whole,
    length_mm: jsonNumber,
    deposited_kg: jsonNumber,
    by_process: byName(
      shape({ count: whole, length_mm: jsonNumber, inspected: whole, rejected: whole, repair_rate: orNull(jsonNumber) }),
    ),
    schedule: jsonList(
      shape({
        id: jsonText,
        class: orNull(jsonText),
        throat_mm: orNull(jsonNumber),
        length_mm: orNull(jsonNumber),
        deposited_kg: orNull(jsonNumber),
      }),
    ),
    inspection: jsonList(
      shape({
        class: jsonText,
        method: jsonText,
        joints: whole,
        accepted: whole,
        share: orNull(jsonNumber),
        required: orNull(jsonNumber),
      }),
    ),
  }),
  clamps: shape({
    count: whole,
    torqued: whole,
    isolated: whole,
    dampers: jsonTexts,
    spacing: jsonList(shape({ member: jsonText, clamps: whole, widest_mm: orNull(jsonNumber), between: jsonTexts })),
    due: jsonList(shape({ id: jsonText, check: orNull(jsonText) })),
  }),
  bonds: jsonList(
    shape({
      panel: jsonText,
      dew_point_k: orNull(jsonNumber),
      dew_margin_k: orNull(jsonNumber),
      coupon: orNull(jsonOneOf('passed', 'failed', 'not verified')),
      missing: jsonTexts,
    }),
  ),
  weld_bands: jsonList(shape({ member: jsonText, bands_mm: jsonList(pair(jsonNumber)), share: jsonNumber })),
  spacings: jsonList(
    shape({
      row: jsonText,
      stations: whole,
      widest_mm: orNull(jsonNumber),
      wide: jsonList(shape({ between: jsonTexts, gap_mm: jsonNumber, at_mm: orNull(jsonPlace) })),
    }),
  ),
  access: shape({ nodes: whole, nodes_in_reach: whole, run_length_mm: jsonNumber, run_length_in_reach_mm: jsonNumber }),
  joints: shape({ found: whole, recorded: whole, missing: jsonList(pair(jsonText)), without_joint: jsonTexts }),
  joint_coverage: shape({
    by_stage: byName(shape({ found: whole, recorded: whole })),
    by_zone: byName(shape({ found: whole, recorded: whole })),
    off_joint: jsonList(shape({ weld: jsonText, distance_mm: jsonNumber })),
  }),
};

/** What a check finds. */
export const CHECK_ANSWERS: Readonly<Record<string, AnswerForms>> = {
  check: [
    shape({ findings: jsonList(finding), counts, ...ofOneShell }),
    shape({
      findings: jsonList(finding),
      counts,
      shells: jsonList(
        shape({ shell: jsonText, revision: orNull(jsonText), findings: jsonList(finding), counts, ...ofOneShell }),
      ),
    }),
  ],
};
