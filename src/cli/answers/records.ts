/** Answers of the commands that write records, or lay files down. */
import { finding } from './check.js';
import { counts, state } from './common.js';
import {
  type AnswerForms,
  flag,
  jsonAny,
  jsonList,
  jsonNumber,
  jsonOneOf,
  jsonRecord,
  jsonText,
  jsonTexts,
  orNull,
  shape,
  whole,
} from './shape.js';

/** One of what is missing before a stage may be signed or a shell closed. */
const openItem = shape({
  list: jsonOneOf('completion', 'punch'),
  grade: jsonOneOf('A', 'B', 'C'),
  message: jsonText,
  ids: jsonTexts,
  who: jsonText,
  where: jsonText,
  because: jsonText,
  stage: orNull(jsonText),
  file: orNull(jsonText),
  line: orNull(whole),
});

/** A record that would meet a hold point: one that lacks something, or (without an id) one that is still to be made. */
const wouldMeet = shape({
  kind: jsonText,
  id: orNull(jsonText),
  what: jsonText,
  type: jsonText,
  file: orNull(jsonText),
  line: orNull(whole),
});

const countOfWhat = shape({ what: jsonText, count: whole });
const rowSaid = shape({ row: whole, message: jsonText });

const change = shape({
  kind: jsonText,
  id: jsonText,
  change: jsonText,
  text: jsonText,
  by: orNull(jsonText),
  date: orNull(jsonText),
  commit: orNull(jsonText),
  fields: jsonList(
    shape({
      field: jsonText,
      from: jsonAny,
      to: jsonAny,
      by: orNull(jsonText),
      date: orNull(jsonText),
      commit: orNull(jsonText),
    }),
  ),
});

/** What a record of a picture has where its file or the command line says so. */
const takenKeys = {
  of: jsonTexts,
  view: jsonText,
  taken: jsonText,
  sha256: jsonText,
  stage: jsonText,
  caption: jsonText,
  original: jsonRecord,
};

export const RECORD_ANSWERS: Readonly<Record<string, AnswerForms>> = {
  'new-store': shape({ store: jsonText, files: jsonTexts, git_started: flag }),
  'new-shell': shape({ folder: jsonText, files: jsonTexts }),
  add: shape({ kind: jsonText, file: jsonText, dry_run: flag }, { id: jsonText, record: jsonRecord }),
  import: shape(
    {
      sheet: jsonText,
      dry_run: flag,
      columns: jsonList(shape({ head: jsonText, key: orNull(jsonText), unit: orNull(jsonText), how: jsonText })),
      added: jsonList(shape({ kind: jsonText, id: jsonText, file: jsonText, row: whole }, { person: jsonText })),
      changed: jsonList(
        shape({ kind: jsonText, id: orNull(jsonText), file: jsonText, row: whole, keys: jsonTexts }, { person: jsonText }),
      ),
      unchanged: whole,
      ahead: jsonList(rowSaid),
      faults: jsonList(shape({ row: whole, column: orNull(jsonText), message: jsonText }, { person: jsonText })),
      gone: jsonTexts,
      files: jsonTexts,
    },
    // Of a drawing; of floor pages.
    {
      layers_not_read: jsonList(countOfWhat),
      left_out: jsonList(countOfWhat),
      clashes: jsonList(
        shape({ kind: jsonText, id: jsonText, field: jsonText, record: jsonText, phone: jsonText, person: jsonText }),
      ),
    },
  ),
  export: shape({ folder: jsonText, files: jsonTexts }),
  photos: shape({
    dry_run: flag,
    // As the record is typed; what a picture proposes of it is told beside it.
    taken: jsonList(shape({ id: jsonText, file: jsonText, proposed: jsonTexts }, takenKeys)),
    already_there: jsonTexts,
    refused: jsonList(shape({ file: jsonText, reason: jsonText })),
    undated: jsonList(shape({ file: jsonText, written: jsonText })),
    missing: jsonTexts,
  }),
  progress: shape({
    state,
    next: orNull(shape({ stage: jsonText, who: jsonTexts })),
    today: jsonList(shape({ who: jsonText, stage: orNull(jsonText), what: jsonText, type: orNull(jsonText), ids: jsonTexts })),
    stages: jsonList(
      shape({
        stage: jsonText,
        name: jsonText,
        standing: jsonOneOf('open', 'holds', 'lapsed', 'not verified'),
        signed: jsonList(shape({ by: jsonText, role: jsonText, date: jsonText, standing: jsonText })),
        records: shape({ built: whole, planned: whole }),
        hold_points: jsonList(
          shape({
            hold_point: jsonText,
            state: jsonOneOf('met', 'unmet', 'nothing yet'),
            met_by: jsonTexts,
            unmet: jsonList(shape({ message: jsonText, ids: jsonTexts, who: jsonText, would_meet: jsonList(wouldMeet) })),
          }),
        ),
        errors: jsonList(openItem),
      }),
    ),
    counts,
  }),
  undo: shape({ entry: jsonText, time: jsonText, files: jsonTexts, dry_run: flag }),
  mend: shape({
    rule: jsonText,
    dry_run: flag,
    written: flag,
    changed: jsonList(shape({ kind: jsonText, id: jsonText, file: jsonText, keys: jsonTexts })),
    left: jsonTexts,
    files: jsonTexts,
  }),
  decide: shape({
    rule: jsonText,
    id: orNull(jsonText),
    of: jsonTexts,
    file: orNull(jsonText),
    record: orNull(jsonRecord),
    dry_run: flag,
  }),
  merge: shape({
    installed: flag,
    settled: jsonTexts,
    left: jsonList(shape({ file: jsonText, line: whole, ids: jsonTexts })),
  }),
  backup: shape({
    file: jsonText,
    size_mb: jsonNumber,
    files: whole,
    history: flag,
    uncommitted: jsonTexts,
    shells: jsonList(shape({ shell: jsonText, fingerprint: jsonText })),
  }),
  signoff: shape({
    signed: flag,
    stage: jsonText,
    by: jsonText,
    role: jsonText,
    date: jsonText,
    digest: orNull(jsonText),
    missing: jsonList(openItem),
  }),
  close: shape(
    { closed: flag, missing: jsonList(openItem) },
    {
      tag: jsonText,
      revision_letter: jsonText,
      committed: jsonTexts,
      files: jsonTexts,
      accepted: jsonList(openItem),
      library: jsonList(finding),
    },
  ),
  key: shape({ file: orNull(jsonText), name: orNull(jsonText), fingerprint: orNull(jsonText) }),
  history: [
    shape({
      commits: jsonList(shape({ commit: jsonText, date: jsonText, author: jsonText, subject: jsonText, tags: jsonTexts })),
      uncommitted: jsonTexts,
    }),
    shape({ id: jsonText, changes: jsonList(change) }),
  ],
  compare: shape({ from: jsonText, to: jsonText, changes: jsonList(change) }),
  list: shape({
    not_counted: jsonTexts,
    shells: jsonList(
      shape({
        shell: jsonText,
        title: jsonText,
        state,
        stage: orNull(jsonText),
        lapsed: jsonTexts,
        closed: orNull(shape({ tag: jsonText, revision_letter: jsonText })),
        built: shape({ planned: whole, done: whole }),
        counts,
      }),
    ),
  }),
  trace: shape({
    key: jsonText,
    value: jsonText,
    hits: jsonList(shape({ shell: jsonText, kind: jsonText, id: jsonText, field: jsonText, file: jsonText, line: whole })),
  }),
};
