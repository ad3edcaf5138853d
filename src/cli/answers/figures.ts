/** Answers of the commands that compute from records. */
import { counts, state } from './common.js';
import {
  byName,
  flag,
  type JsonShape,
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
      gussets: {},
    }),
  ),
  access: shape({ nodes: whole, nodes_in_reach: whole, run_length_mm: jsonNumber, run_length_in_reach_mm: jsonNumber }),
  joints: shape({ found: whole, recorded: whole, missing: jsonList(pair(jsonText)), without_joint: jsonTexts }),
};

const mass = shape({ mass_kg: jsonNumber, centroid_mm: orNull(jsonPlace), count: whole });
const byAxle = byName(orNull({ ...jsonNumber, description: 'kilograms' }));
const axleKg = (...keys: readonly string[]): JsonShape =>
  shape({ axle: jsonText, ...Object.fromEntries(keys.map((key) => [key, orNull(jsonNumber)])) });
const verdict = jsonOneOf('within', 'within uncertainty', 'over', 'not verified');

const inReach = jsonOneOf('hand', 'forearm', 'arm', 'beyond');
const panelReach = shape({ id: jsonText, distance_mm: orNull(jsonNumber), reach: inReach, blocked_by: jsonTexts });

const weights = shape({
  ratings: jsonList(
    shape({
      axle: jsonText,
      gawr_kg: orNull(jsonNumber),
      tyres_kg: orNull(jsonNumber),
      wheels_kg: orNull(jsonNumber),
      wheels_by: orNull(jsonOneOf('wheel', 'axle')),
      suspension_kg: orNull(jsonNumber),
      limit_kg: orNull(jsonNumber),
      limited_by: orNull(jsonText),
    }),
  ),
  conditions: jsonList(
    shape({
      name: jsonText,
      total_kg: jsonNumber,
      gvwr_margin_kg: orNull(jsonNumber),
      axles: jsonList(
        shape({
          axle: jsonText,
          load_kg: orNull(jsonNumber),
          limit_kg: orNull(jsonNumber),
          margin_kg: orNull(jsonNumber),
          uncertainty_kg: orNull(jsonNumber),
          verdict,
        }),
      ),
    }),
  ),
  tickets: jsonList(shape({ id: jsonText, as_weighed: byAxle, normalised: byAxle, predicted: byAxle, residual: byAxle })),
  uvw_kg: orNull(jsonNumber),
  occc_kg: orNull(jsonNumber),
  ccc_kg: orNull(jsonNumber),
  full_water_kg: orNull(jsonNumber),
  bays: jsonList(shape({ id: jsonText, allowance_kg: orNull(jsonNumber), limited_by: orNull(jsonText) })),
});

const surface = shape({
  side: jsonOneOf('left', 'right', 'front', 'rear', 'roof', 'ceiling', 'floor', 'underside', 'partition'),
  seen_from: jsonOneOf('inside', 'outside'),
});

/** What something carries now, with a load added, and at most. */
const carried = { id: jsonText, load_a: jsonNumber, with_a: jsonNumber, limit_a: orNull(jsonNumber), over: flag };
/** Column and row in the picture. */
const pixel: JsonShape = pair({ ...jsonNumber, description: 'pixels, from the left upper corner' });

export const FIGURE_ANSWERS: Readonly<Record<string, JsonShape>> = {
  check: {
    anyOf: [
      shape({ findings: jsonList(finding), counts, ...ofOneShell }),
      shape({
        findings: jsonList(finding),
        counts,
        shells: jsonList(
          shape({ shell: jsonText, revision: orNull(jsonText), findings: jsonList(finding), counts, ...ofOneShell }),
        ),
      }),
    ],
  },
  takeoff: shape({
    members: jsonList(
      shape({ id: jsonText, length_mm: jsonNumber, mass_kg: orNull(jsonNumber), centroid_mm: orNull(jsonPlace) }),
    ),
    panels: jsonList(shape({ id: jsonText, area_mm2: orNull(jsonNumber), mass_kg: orNull(jsonNumber) })),
    sections: jsonList(
      shape({
        id: jsonText,
        area_mm2: jsonNumber,
        ix_mm4: orNull(jsonNumber),
        iy_mm4: orNull(jsonNumber),
        kg_per_m: orNull(jsonNumber),
      }),
    ),
    total: mass,
    by_stage: byName(mass),
    by_alloy: byName(mass),
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
          name: orNull(jsonText),
          service: orNull(jsonText),
          position_mm: orNull(jsonPlace),
          place: orNull(jsonText),
          panels: jsonList(panelReach),
          protection: orNull(shape({ kind: jsonText, rating_a: orNull(jsonNumber), at: orNull(jsonText) })),
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
    topics: jsonList(shape({ topic: jsonText, question: jsonText, rows: jsonList(shape({ id: jsonText })), notes: jsonTexts })),
  }),
  behind: shape({
    panel: jsonText,
    surface,
    contents: jsonList(shape({ id: jsonText, kind: jsonText, distance_mm: orNull(jsonNumber), reach: inReach })),
    not_placed: jsonTexts,
  }),
  near: shape({
    place_mm: jsonPlace,
    within_mm: jsonNumber,
    hits: jsonList(shape({ id: jsonText, kind: jsonText, distance_mm: jsonNumber, nearest_mm: jsonPlace })),
    not_placed: jsonTexts,
  }),
  isolate: shape({
    id: jsonText,
    actions: jsonList(
      shape({
        id: jsonText,
        kind: jsonText,
        action: jsonOneOf('open', 'shut', 'disconnect', 'drain'),
        panels: { type: 'array' },
      }),
    ),
    sources: jsonTexts,
    sources_left: jsonTexts,
    verified: flag,
    notes: jsonTexts,
  }),
  release: shape({
    state,
    gvwr_left_kg: orNull(jsonNumber),
    budget: jsonList(axleKg('reserve_kg', 'uncertainty_kg', 'left_kg', 'left_end_kg', 'right_end_kg')),
    stations: jsonList(shape({ x_mm: jsonNumber, adds_kg: byAxle, most_kg: orNull(jsonNumber), limited_by: orNull(jsonText) })),
    faces: jsonList(
      shape({
        face: jsonText,
        panels: jsonTexts,
        runs: jsonList(shape({ id: jsonText, depth_mm: jsonNumber, at_mm: jsonPlace })),
      }),
    ),
    open: jsonList(shape({ zone: orNull(jsonText), findings: jsonList(finding) })),
    cautions: jsonTexts,
  }),
  verify: shape({
    sealed: flag,
    matches_itself: flag,
    signed_by: orNull(shape({ name: jsonText, fingerprint: jsonText, day: orNull(jsonText), known: flag, said: jsonText })),
    proved: flag,
    matches_store: orNull(flag),
    pages_compared: flag,
    not_covered: jsonTexts,
    fingerprint: orNull(jsonText),
    differences: jsonList(shape({ with: jsonOneOf('itself', 'store') })),
  }),
  recover: shape(
    { edition: orNull(jsonText), fingerprint: orNull(jsonText), folder: jsonText, files: {}, damaged: { type: 'array' } },
    { shells: jsonList(shape({ shell: jsonText, fingerprint: jsonText })) },
  ),
  book: shape(
    { books: jsonList(shape({ edition: jsonOneOf('owner', 'service', 'shop'), file: orNull(jsonText), pages: orNull(whole) })) },
    { since: jsonText },
  ),
  labels: shape({
    file: jsonText,
    pages: whole,
    labels: jsonList(shape({ panel: jsonText, page: orNull(whole), hazards: jsonTexts })),
  }),
  pocket: shape({
    file: jsonText,
    edition: jsonOneOf('owner', 'service'),
    size_bytes: whole,
    cards: whole,
    pictures: whole,
    pictures_left: whole,
  }),
  demo: shape({
    store: jsonText,
    shells: jsonTexts,
    books: jsonList(shape({ edition: jsonText, file: jsonText, pages: whole })),
  }),
};
