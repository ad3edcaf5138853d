import { z } from 'zod';
import type { NotesFile, PageNote } from '../page/notes-file.js';
import { UserError } from '../user-error.js';
import { draftOf, type RecordDraft } from './draft.js';
import { nextId } from './numbering.js';
import type { RecordIndex } from './record-index.js';
import { NO_PLACE } from './validate.js';

const text = (most: number) => z.string().trim().min(1).max(most);

const note = z.strictObject({
  date: z.iso.date(),
  by: text(200),
  text: text(8000),
  of: z.array(text(80)).max(50),
  picture: z.strictObject({ jpeg: z.base64().max(8_000_000), sha256: z.string().regex(/^[0-9a-f]{64}$/u) }).optional(),
});

const FILE = z.strictObject({
  shellbook: z.literal('notes'),
  version: z.literal(1),
  shell: text(80),
  edition: text(20),
  revision: z.string().max(80).nullable(),
  fingerprint: z.string().max(80),
  notes: z.array(note).max(500),
});

/** The file that a page for a phone gave back. Throws {@link UserError} with the first thing that is wrong where it is no such file. */
export function readNotes(name: string, content: string): NotesFile {
  let given: unknown;
  try {
    given = JSON.parse(content);
  } catch {
    throw new UserError(`${name} is not a file of notes: it is not JSON. Expected the file that a pocket page saved.`);
  }
  const read = FILE.safeParse(given);
  if (read.success) return read.data as NotesFile;
  const [fault] = read.error.issues;
  const at = fault?.path.map((key) => (typeof key === 'number' ? key + 1 : String(key))).join(' ');
  throw new UserError(
    `${name} is not a file of notes: ${at ? `${at}: ` : ''}${fault?.message ?? 'of another form'}. Expected the file that a pocket page saved. Nothing was written.`,
  );
}

/** What a note becomes: an amendment that the shop looks at, and a photo where the note has a picture. */
export interface NoteDraft {
  readonly note: PageNote;
  /** From 1, as it stands in the file. */
  readonly row: number;
  readonly photo?: RecordDraft;
  readonly amendment: RecordDraft;
}

export interface NoteDrafts {
  readonly drafts: readonly NoteDraft[];
  /** How many are in the record already. */
  readonly there: number;
}

/** A picture of a note as it will lie in the photos folder. */
export interface NotePicture {
  readonly sha256: string;
}

/** `pictures`: by the note's row, what was made of its picture. Throws {@link UserError} where a note names what the shell does not have. */
export function noteDrafts(
  notes: readonly PageNote[],
  pictures: ReadonlyMap<number, NotePicture>,
  known: RecordIndex,
): NoteDrafts {
  const drafts: NoteDraft[] = [];
  let there = 0;
  for (const [i, one] of notes.entries()) {
    const row = i + 1;
    if (isThere(one, known)) {
      there++;
      continue;
    }
    const made = pictures.get(row);
    const photo = made && photoOf(one, made, known);
    const data = {
      id: freeId('amendment', 'AM-', known),
      date: one.date,
      by: one.by,
      reason: one.text,
      changes: [...one.of],
      ...(photo ? { photos: [photo.id] } : {}),
    };
    drafts.push({ note: one, row, ...(photo ? { photo } : {}), amendment: draftOf('amendment', data, known, undefined, '') });
  }
  return { drafts, there };
}

const isThere = ({ date, by, text: reason }: PageNote, known: RecordIndex): boolean =>
  known
    .ofKind('amendment')
    .some(({ data }) => String(data.date) === date && String(data.by) === by && String(data.reason).trim() === reason);

function photoOf({ date, of, text: caption }: PageNote, { sha256 }: NotePicture, known: RecordIndex): RecordDraft {
  const id = freeId('photo', 'P-', known);
  const file = `${id.replace(/[^\w.-]+/gu, '-')}.jpg`;
  const data = { id, file, of: [...of], taken: date, caption: caption.split('\n')[0] ?? '', sha256 };
  const draft = draftOf('photo', data, known, undefined, '');
  known.register.claim(id, 'photo', NO_PLACE, () => {});
  return draft;
}

/** The shop's own numbering, else one of the program's. */
function freeId(kind: 'amendment' | 'photo', head: string, known: RecordIndex): string {
  const next = nextId(kind, known);
  if (next !== undefined) return next;
  for (let n = 1; ; n++) {
    const id = `${head}${String(n).padStart(3, '0')}`;
    if (known.taken(kind, id) === undefined) return id;
  }
}
