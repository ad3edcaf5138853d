import { Schemas } from '../records/schema.js';
import { UserError } from '../user-error.js';
import type { PhotoDraft } from './photos.js';
import type { RecordIndex } from './record-index.js';
import { NO_PLACE, validate } from './validate.js';

/** Throws {@link UserError} where what all pictures are said to show, or their stage, is nowhere in the records. */
export function validateAll(drafts: readonly PhotoDraft[], known: RecordIndex): void {
  const faults = new Set<string>();
  const schemas = new Schemas();
  for (const { data } of drafts)
    validate({ kind: 'photo', data, known, schemas, source: NO_PLACE }, ({ message }) => faults.add(message));
  if (faults.size > 0) throw new UserError(`${[...faults].join('\n')}\nNothing was taken in.`);
}
