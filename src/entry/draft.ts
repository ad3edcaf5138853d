import { identityOf } from '../records/identity.js';
import { Schemas } from '../records/schema.js';
import { UserError } from '../user-error.js';
import type { ListPlace } from './append.js';
import { chooseFile } from './files.js';
import { type EntryKind, homeOf } from './homes.js';
import { nextId } from './numbering.js';
import { inOrder } from './options.js';
import type { RecordIndex } from './record-index.js';
import { NO_PLACE, validate } from './validate.js';
import type { Data } from './yaml-text.js';

/** A record that is ready to be written, and where it goes. */
export interface RecordDraft {
  readonly id: string;
  readonly data: Data;
  readonly place: ListPlace;
  readonly why: string;
}

/** Gives a record its number, checks it against what is known and finds its file. Throws {@link UserError} with all that is wrong. */
export function draftOf(kind: EntryKind, wanted: Data, known: RecordIndex, into: string | undefined, next: string): RecordDraft {
  const data = inOrder(kind, wanted.id === next ? { ...wanted, id: numbered(kind, known) } : wanted);
  const id = identityOf(kind, data);
  if (id === undefined) throw new UserError(`Missing for a ${kind}: --id`);
  const taken = known.taken(kind, id) ?? (known.find(kind, id) && kind);
  if (taken !== undefined)
    throw new UserError(`\`${id}\` is already the ID of a ${taken}, expected a new one${suggestion(kind, known)}`);
  const chosen = chooseFile(kind, data, known, into);
  if ('ask' in chosen) throw new UserError(`${kind} ${id}: ${chosen.ask}`);
  const faults: string[] = [];
  const schemas = new Schemas(known.unitsOf(chosen.place.file));
  // A record may name itself, as a closed loop does.
  if (homeOf(kind).in !== 'library' && data.id !== undefined) known.register.claim(id, kind as never, NO_PLACE, () => {});
  validate({ kind, data, known, schemas, source: NO_PLACE }, ({ message }) => faults.push(message));
  if (faults.length > 0) throw new UserError(`${faults.join('\n')}\nNothing was written.`);
  return { id, data, ...chosen };
}

function numbered(kind: EntryKind, known: RecordIndex): string {
  const id = nextId(kind, known);
  if (id === undefined)
    throw new UserError(`The IDs of ${kind}s follow no numbering, so there is no next one: give one with --id`);
  return id;
}

function suggestion(kind: EntryKind, known: RecordIndex): string {
  const id = nextId(kind, known);
  return id === undefined ? '' : `, as ${id} (--id next)`;
}
