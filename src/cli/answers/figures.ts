/** Answers of the commands that compute from records. */
import { counts, state } from './common.js';
import { byName, flag, list, number, oneOf, orNull, pair, place, type Shape, shape, text, texts, whole } from './shape.js';

const finding = shape(
  {
    rule: text,
    severity: oneOf('error', 'warning', 'note'),
    message: text,
    ids: texts,
    file: text,
    line: whole,
    column: whole,
  },
  { decided_by: text },
);

const ofOneShell = {
  openings: list(
    shape({
      id: text,
      racking_deg: orNull(number),
      diagonal_difference_mm: orNull(number),
      sag_mm: orNull(number),
      gussets: {},
    }),
  ),
  access: shape({ nodes: whole, nodes_in_reach: whole, run_length_mm: number, run_length_in_reach_mm: number }),
  joints: shape({ found: whole, recorded: whole, missing: list(pair(text)), without_joint: texts }),
};

const mass = shape({ mass_kg: number, centroid_mm: orNull(place), count: whole });
const byAxle = byName(orNull({ ...number, description: 'kilograms' }));
const axleKg = (...keys: readonly string[]): Shape =>
  shape({ axle: text, ...Object.fromEntries(keys.map((key) => [key, orNull(number)])) });
const verdict = oneOf('within', 'within uncertainty', 'over', 'not verified');

const inReach = oneOf('hand', 'forearm', 'arm', 'beyond');
const panelReach = shape({ id: text, distance_mm: orNull(number), reach: inReach, blocked_by: texts });

const weights = shape({
  ratings: list(
    shape({
      axle: text,
      gawr_kg: orNull(number),
      tyres_kg: orNull(number),
      wheels_kg: orNull(number),
      suspension_kg: orNull(number),
      limit_kg: orNull(number),
      limited_by: orNull(text),
    }),
  ),
  conditions: list(
    shape({
      name: text,
      total_kg: number,
      gvwr_margin_kg: orNull(number),
      axles: list(
        shape({
          axle: text,
          load_kg: orNull(number),
          limit_kg: orNull(number),
          margin_kg: orNull(number),
          uncertainty_kg: orNull(number),
          verdict,
        }),
      ),
    }),
  ),
  tickets: list(shape({ id: text, as_weighed: byAxle, normalised: byAxle, predicted: byAxle, residual: byAxle })),
  uvw_kg: orNull(number),
  occc_kg: orNull(number),
  ccc_kg: orNull(number),
  full_water_kg: orNull(number),
  bays: list(shape({ id: text, allowance_kg: orNull(number), limited_by: orNull(text) })),
});

const surface = shape({
  side: oneOf('left', 'right', 'front', 'rear', 'roof', 'ceiling', 'floor', 'underside', 'partition'),
  seen_from: oneOf('inside', 'outside'),
});

/** What something carries now, with a load added, and at most. */
const carried = { id: text, load_a: number, with_a: number, limit_a: orNull(number), over: flag };
/** Column and row in the picture. */
const pixel: Shape = pair({ ...number, description: 'pixels, from the left upper corner' });

export const FIGURE_ANSWERS: Readonly<Record<string, Shape>> = {
  check: {
    anyOf: [
      shape({ findings: list(finding), counts, ...ofOneShell }),
      shape({
        findings: list(finding),
        counts,
        shells: list(shape({ shell: text, revision: orNull(text), findings: list(finding), counts, ...ofOneShell })),
      }),
    ],
  },
  takeoff: shape({
    members: list(shape({ id: text, length_mm: number, mass_kg: orNull(number), centroid_mm: orNull(place) })),
    panels: list(shape({ id: text, area_mm2: orNull(number), mass_kg: orNull(number) })),
    sections: list(
      shape({ id: text, area_mm2: number, ix_mm4: orNull(number), iy_mm4: orNull(number), kg_per_m: orNull(number) }),
    ),
    total: mass,
    by_stage: byName(mass),
    by_alloy: byName(mass),
    overall: orNull(
      shape({
        length_mm: number,
        width_mm: number,
        height_above_ground_mm: orNull(number),
        set_by: shape({ length: text, width: text, height: text }),
        notes: texts,
      }),
    ),
  }),
  weights,
  load: shape({
    outlet: text,
    added_a: number,
    added_w: number,
    voltage_v: number,
    circuit: shape({
      ...carried,
      protection_at: orNull(text),
      ampacity_a: orNull(number),
      start_a: orNull(number),
      others: list(shape({ id: text, load_a: number })),
    }),
    feeders: list(shape(carried)),
    panels: list(shape({ ...carried, spare_spaces: texts })),
    supplies: list(shape(carried)),
    over: flag,
    unknown: list(shape({ id: text, what: text })),
    notes: texts,
  }),
  overlay: shape({
    photo: text,
    method: text,
    points: list(
      shape({ px: pixel, at_mm: orNull(place), residual_px: orNull(number), residual_mm: orNull(number), left_out: flag }),
    ),
    residual_mm: orNull(number),
    left_out_mm: orNull(number),
    usable: flag,
    notes: texts,
    drawn: list(shape({ id: text, kind: text, px: list(pixel), stretches: list(shape({ hidden: flag, px: list(pixel) })) })),
  }),
  locate: shape({ photo: text, px: pixel, on: text, at_mm: orNull(place), uncertainty_mm: orNull(number) }),
  where: shape({
    matches: list(
      shape(
        {
          id: text,
          kind: text,
          name: orNull(text),
          service: orNull(text),
          position_mm: orNull(place),
          place: orNull(text),
          panels: list(panelReach),
          protection: orNull(shape({ kind: text, rating_a: orNull(number), at: orNull(text) })),
          path_mm: list(place),
          length_mm: orNull(number),
          pages: list(whole),
        },
        {
          surface,
          circuit: shape({
            length_mm: orNull(number),
            drop_v: orNull(number),
            drop_percent: orNull(number),
            ampacity_a: orNull(number),
            protection_a: orNull(number),
            worst_load: orNull(text),
          }),
        },
      ),
    ),
    topics: list(shape({ topic: text, question: text, rows: list(shape({ id: text })), notes: texts })),
  }),
  behind: shape({
    panel: text,
    surface,
    contents: list(shape({ id: text, kind: text, distance_mm: orNull(number), reach: inReach })),
  }),
  near: shape({
    place_mm: place,
    within_mm: number,
    hits: list(shape({ id: text, kind: text, distance_mm: number, nearest_mm: place })),
  }),
  isolate: shape({
    id: text,
    actions: list(
      shape({ id: text, kind: text, action: oneOf('open', 'shut', 'disconnect', 'drain'), panels: { type: 'array' } }),
    ),
    sources: texts,
    sources_left: texts,
    verified: flag,
    notes: texts,
  }),
  release: shape({
    state,
    gvwr_left_kg: orNull(number),
    budget: list(axleKg('reserve_kg', 'uncertainty_kg', 'left_kg', 'left_end_kg', 'right_end_kg')),
    stations: list(shape({ x_mm: number, adds_kg: byAxle, most_kg: orNull(number), limited_by: orNull(text) })),
    faces: list(shape({ face: text, panels: texts, runs: list(shape({ id: text, depth_mm: number, at_mm: place })) })),
    open: list(shape({ zone: orNull(text), findings: list(finding) })),
    cautions: texts,
  }),
  verify: shape({
    sealed: flag,
    matches_itself: flag,
    signed_by: orNull(shape({ name: text, fingerprint: text, day: orNull(text), known: flag, said: text })),
    proved: flag,
    matches_store: orNull(flag),
    pages_compared: flag,
    not_covered: texts,
    fingerprint: orNull(text),
    differences: list(shape({ with: oneOf('itself', 'store') })),
  }),
  recover: shape({ edition: text, fingerprint: text, folder: text, files: {}, damaged: { type: 'array' } }),
  book: shape(
    { books: list(shape({ edition: oneOf('owner', 'service', 'shop'), file: orNull(text), pages: orNull(whole) })) },
    { since: text },
  ),
  labels: shape({ file: text, pages: whole, labels: list(shape({ panel: text, page: orNull(whole), hazards: texts })) }),
  demo: shape({ store: text, shells: texts, books: list(shape({ edition: text, file: text, pages: whole })) }),
};
