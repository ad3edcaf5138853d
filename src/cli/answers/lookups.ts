import {
  type AnswerForms,
  byName,
  flag,
  jsonEither,
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
const facts = byName(jsonEither(jsonText, jsonNumber, jsonTexts));

const surface = shape({
  side: jsonOneOf('left', 'right', 'front', 'rear', 'roof', 'ceiling', 'floor', 'underside', 'partition'),
  seen_from: jsonOneOf('inside', 'outside'),
});

/** What something carries now, with a load added, and at most. */
const carried = { id: jsonText, load_a: jsonNumber, with_a: jsonNumber, limit_a: orNull(jsonNumber), over: flag };

/** Where things are, what is beside them, what to switch off, what may be plugged in. */
export const LOOKUP_ANSWERS: Readonly<Record<string, AnswerForms>> = {
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
};
