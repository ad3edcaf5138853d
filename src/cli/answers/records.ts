/** Answers of the commands that write records, or lay files down. */
import { counts, state } from './common.js';
import { flag, list, oneOf, orNull, type Shape, shape, text, texts, whole } from './shape.js';

/** One of what is missing before a stage may be signed or a shell closed. */
const openItem = shape({
  list: oneOf('completion', 'punch'),
  grade: oneOf('A', 'B', 'C'),
  message: text,
  ids: texts,
  who: text,
  where: text,
  because: text,
  stage: orNull(text),
  file: orNull(text),
  line: orNull(whole),
});

const rowSaid = shape({ row: whole, message: text });

const change = shape({
  kind: text,
  id: text,
  change: text,
  text,
  by: orNull(text),
  date: orNull(text),
  commit: orNull(text),
  fields: list(shape({ field: text, from: {}, to: {}, by: orNull(text), date: orNull(text), commit: orNull(text) })),
});

export const RECORD_ANSWERS: Readonly<Record<string, Shape>> = {
  'new-store': shape({ store: text, files: texts, git_started: flag }),
  'new-shell': shape({ folder: text, files: texts }),
  add: shape({ kind: text, file: text, dry_run: flag }, { id: text, record: { type: 'object' } }),
  import: shape({
    sheet: text,
    dry_run: flag,
    columns: list(shape({ head: text, key: orNull(text), unit: orNull(text), how: text })),
    added: list(shape({ id: text, file: text, row: whole })),
    changed: list(shape({ id: orNull(text), file: text, row: whole, keys: texts })),
    unchanged: whole,
    ahead: list(rowSaid),
    faults: list(shape({ row: whole, column: orNull(text), message: text })),
    files: texts,
  }),
  export: shape({ folder: text, files: texts }),
  photos: shape({
    dry_run: flag,
    taken: list(shape({ id: text, file: text, proposed: texts })),
    already_there: { type: 'array' },
    refused: list(shape({ file: text, reason: text })),
    missing: { type: 'array' },
  }),
  signoff: shape({
    signed: flag,
    stage: text,
    by: text,
    role: text,
    date: text,
    digest: orNull(text),
    missing: list(openItem),
  }),
  close: shape(
    { closed: flag, missing: list(openItem) },
    {
      tag: text,
      revision_letter: text,
      committed: texts,
      files: texts,
      accepted: list(openItem),
      library: { type: 'array' },
    },
  ),
  key: shape({ file: orNull(text), name: orNull(text), fingerprint: orNull(text) }),
  history: {
    anyOf: [
      shape({
        commits: list(shape({ commit: text, date: text, author: text, subject: text, tags: texts })),
        uncommitted: texts,
      }),
      shape({ id: text, changes: list(change) }),
    ],
  },
  compare: shape({ from: text, to: text, changes: list(change) }),
  list: shape({
    not_counted: texts,
    shells: list(
      shape({
        shell: text,
        title: text,
        state,
        stage: orNull(text),
        lapsed: texts,
        closed: orNull(shape({ tag: text, revision_letter: text })),
        counts,
      }),
    ),
  }),
  trace: shape({
    key: text,
    value: text,
    hits: list(shape({ shell: text, kind: text, id: text, field: text, file: text, line: whole })),
  }),
};
