/** Answers of the commands that compute from records. */
import { counts, state } from './common.js';
import {
  type AnswerForms,
  byName,
  flag,
  type JsonShape,
  jsonAny,
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

const finding = shape(
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
      gussets: jsonAny,
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
    without_extent: jsonAny,
    gaps: jsonList(
      shape({
        run: jsonText,
        from_mm: jsonNumber,
        to_mm: jsonNumber,
        at_mm: pair(orNull(jsonPlace)),
        zones: jsonTexts,
        panels: jsonTexts,
        closed: jsonAny,
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
    due: jsonList(shape({ id: jsonText, check: jsonAny })),
  }),
  bonds: jsonList(
    shape({
      panel: jsonText,
      dew_point_k: orNull(jsonNumber),
      dew_margin_k: orNull(jsonNumber),
      coupon: jsonAny,
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

const mass = shape({ mass_kg: jsonNumber, centroid_mm: orNull(jsonPlace), count: whole });
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

const inReach = jsonOneOf('hand', 'forearm', 'arm', 'beyond');
const approach = shape({
  clear: flag,
  blocked_by: jsonTexts,
  remove_first: jsonTexts,
  move_first: jsonTexts,
  from: orNull(jsonText),
});
const reachedKeys = {
  id: jsonText,
  distance_mm: orNull(jsonNumber),
  reach: inReach,
  blocked_by: jsonTexts,
  tolerance_mm: orNull(jsonNumber),
  with_tool: flag,
  both_hands: flag,
};
const panelReach = shape(reachedKeys, { approach });
/** What is told of a record under words that depend on what it is. */
const facts = byName(jsonAny);

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

const surface = shape({
  side: jsonOneOf('left', 'right', 'front', 'rear', 'roof', 'ceiling', 'floor', 'underside', 'partition'),
  seen_from: jsonOneOf('inside', 'outside'),
});

/** What something carries now, with a load added, and at most. */
const carried = { id: jsonText, load_a: jsonNumber, with_a: jsonNumber, limit_a: orNull(jsonNumber), over: flag };
/** Column and row in the picture. */
const pixel: JsonShape = pair(jsonNumber.describe('pixels, from the left upper corner'));

export const FIGURE_ANSWERS: Readonly<Record<string, AnswerForms>> = {
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
  weights,
  load: shape({
    outlet: jsonText,
    added_a: jsonNumber,
    added_w: jsonNumber,
    voltage_v: jsonNumber,
    circuit: shape({
      ...carried,
      protection_at: orNull(jsonText),
      ampacity_a: orNull(jsonNumber),
      start_a: orNull(jsonNumber),
      others: jsonList(shape({ id: jsonText, load_a: jsonNumber })),
    }),
    feeders: jsonList(shape(carried)),
    links: jsonList(shape(carried)),
    panels: jsonList(shape({ ...carried, spare_spaces: jsonTexts })),
    supplies: jsonList(shape(carried)),
    over: flag,
    unknown: jsonList(shape({ id: jsonText, what: jsonText })),
    notes: jsonTexts,
  }),
  overlay: shape({
    photo: jsonText,
    method: jsonText,
    points: jsonList(
      shape({
        px: pixel,
        at_mm: orNull(jsonPlace),
        residual_px: orNull(jsonNumber),
        residual_mm: orNull(jsonNumber),
        left_out: flag,
      }),
    ),
    residual_mm: orNull(jsonNumber),
    left_out_mm: orNull(jsonNumber),
    usable: flag,
    notes: jsonTexts,
    drawn: jsonList(
      shape({
        id: jsonText,
        kind: jsonText,
        px: jsonList(pixel),
        stretches: jsonList(shape({ hidden: flag, px: jsonList(pixel) })),
      }),
    ),
  }),
  locate: shape({ photo: jsonText, px: pixel, on: jsonText, at_mm: orNull(jsonPlace), uncertainty_mm: orNull(jsonNumber) }),
  where: shape({
    matches: jsonList(
      shape(
        {
          id: jsonText,
          kind: jsonText,
          match: jsonText,
          name: orNull(jsonText),
          marking: orNull(jsonText),
          service: orNull(jsonText),
          position_mm: orNull(jsonPlace),
          place: orNull(jsonText),
          panels: jsonList(panelReach),
          open: flag,
          follow: jsonTexts,
          facts,
          protection: orNull(
            shape({
              circuit: jsonText,
              kind: jsonText,
              rating_a: orNull(jsonNumber),
              at: orNull(jsonText),
              open: flag,
              panels: jsonList(panelReach),
            }),
          ),
          path_mm: jsonList(jsonPlace),
          length_mm: orNull(jsonNumber),
          pages: jsonList(whole),
        },
        {
          surface,
          circuit: shape({
            length_mm: orNull(jsonNumber),
            drop_v: orNull(jsonNumber),
            drop_percent: orNull(jsonNumber),
            ampacity_a: orNull(jsonNumber),
            protection_a: orNull(jsonNumber),
            worst_load: orNull(jsonText),
          }),
        },
      ),
    ),
    topics: jsonList(
      shape({
        topic: jsonText,
        question: jsonText,
        rows: jsonList(shape({ id: orNull(jsonText), what: jsonText, facts })),
        notes: jsonTexts,
      }),
    ),
  }),
  behind: shape({
    panel: jsonText,
    surface,
    hazards: jsonList(shape({ kind: jsonText, word: jsonText, ids: jsonTexts })),
    contents: jsonList(shape({ ...reachedKeys, kind: jsonText, nearest_mm: orNull(jsonPlace) }, { approach })),
    not_placed: jsonTexts,
  }),
  near: shape({
    place_mm: jsonPlace,
    within_mm: jsonNumber,
    uncertainty_mm: jsonNumber,
    face: orNull(jsonText),
    hits: jsonList(
      shape({
        id: jsonText,
        kind: jsonText,
        distance_mm: jsonNumber,
        nearest_mm: jsonPlace,
        tolerance_mm: orNull(jsonNumber),
      }),
    ),
    screw: orNull(
      shape({
        panel: jsonText,
        at_mm: jsonPlace,
        depth_mm: jsonNumber,
        limited_by: orNull(jsonText),
        limited_by_kind: orNull(jsonText),
        metal: jsonList(shape({ id: jsonText, from_mm: jsonNumber, to_mm: jsonNumber })),
      }),
    ),
    not_placed: jsonTexts,
  }),
  isolate: shape({
    id: jsonText,
    kind: jsonText,
    media: jsonTexts,
    unknown: jsonList(shape({ id: jsonText, what: jsonText })),
    actions: jsonList(
      shape({
        id: jsonText,
        kind: jsonText,
        action: jsonOneOf('open', 'shut', 'disconnect', 'drain'),
        say: jsonText,
        how: jsonText,
        step: jsonText,
        circuit: orNull(jsonText),
        place: orNull(jsonText),
        panels: jsonTexts,
        lines: jsonTexts,
      }),
    ),
    sources: jsonTexts,
    sources_left: jsonTexts,
    verified: flag,
    notes: jsonTexts,
  }),
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
  verify: shape({
    edition: orNull(jsonText),
    tag: orNull(shape({ name: jsonText, signature: jsonText })),
    matches_revision: orNull(flag),
    pages_not_compared_because: orNull(jsonText),
    withheld: jsonTexts,
    sealed: flag,
    matches_itself: flag,
    signed_by: orNull(shape({ name: jsonText, fingerprint: jsonText, day: orNull(jsonText), known: flag, said: jsonText })),
    proved: flag,
    matches_store: orNull(flag),
    pages_compared: flag,
    not_covered: jsonTexts,
    fingerprint: orNull(jsonText),
    differences: jsonList(shape({ with: jsonOneOf('itself', 'store'), part: jsonText, name: jsonText, message: jsonText })),
  }),
  recover: shape(
    {
      edition: orNull(jsonText),
      fingerprint: orNull(jsonText),
      folder: jsonText,
      files: jsonAny,
      withheld: jsonTexts,
      damaged: jsonTexts,
    },
    { shells: jsonList(shape({ shell: jsonText, fingerprint: jsonText })) },
  ),
  book: shape(
    {
      books: jsonList(
        shape({
          edition: jsonOneOf('owner', 'service', 'shop'),
          file: orNull(jsonText),
          pages: orNull(whole),
          warnings: jsonTexts,
        }),
      ),
    },
    { since: jsonText },
  ),
  labels: shape({
    file: jsonText,
    pages: whole,
    edition: jsonText,
    labels: jsonList(
      shape({ panel: jsonText, name: orNull(jsonText), page: orNull(whole), code: orNull(jsonText), hazards: jsonTexts }),
    ),
    markers: whole,
    warnings: jsonTexts,
  }),
  pocket: shape({
    file: jsonText,
    edition: jsonOneOf('owner', 'service'),
    size_bytes: whole,
    cards: whole,
    pictures: whole,
    pictures_left: whole,
  }),
  floor: shape({ file: jsonText, sheet: flag, size_bytes: whole, language: jsonOneOf('en', 'es') }),
  demo: shape({
    store: jsonText,
    shells: jsonTexts,
    books: jsonList(shape({ edition: jsonText, file: jsonText, pages: whole })),
  }),
};
