import { z } from 'zod';
import { found, shown } from '../source/shown.js';
import { UserError } from '../user-error.js';
import { MOST_SOUND_BYTES } from './sound.js';

/** A day's work of one phone is below these. */
export const MOST_ENTRIES = 5000;
export const MOST_PICTURES = 500;
const MOST_SOUNDS = 200;
/** Of one picture, in base64. A picture that the page made small has about a tenth of it. */
const MOST_PICTURE_SIGNS = 12 * 1024 * 1024;

/** Ids and keys go into records and file names. */
const WORD = z.string().regex(/^[A-Za-z0-9][\w./:+-]{0,79}$/u);
const TEXT = z.string().max(4000);
const VALUE: z.ZodType<unknown> = z.lazy(() =>
  z.union([TEXT, z.number(), z.boolean(), z.array(VALUE).max(500), z.record(z.string().max(60), VALUE)]),
);

const entry = z.strictObject({
  /** Of this entry alone, among all phones: the phone's tag and a number. */
  key: WORD,
  /** When it was entered, by the phone's clock: ISO 8601 in UTC. */
  at: z.iso.datetime(),
  /** Who entered it, as in library/people.yaml. */
  person: z.string().max(60),
  kind: z.string().max(40),
  id: WORD,
  /**
   * `add`: a new record with these fields. `append`: one more block at the end of a list of a record that is there, as a look at a weld.
   * `set`: fields of a record that is there.
   */
  does: z.enum(['add', 'append', 'set']),
  /** The list that a block is appended to. */
  list: z.string().max(60).optional(),
  /** As typed in YAML: texts with units, ids, lists of them. */
  data: z.record(z.string().max(60), VALUE),
  /** What the page showed in the fields that are set; a field that was empty is left out. */
  was: z.record(z.string().max(60), VALUE).optional(),
  /** SHA-256 of the picture that a photo's record is of. */
  picture: z.string().optional(),
  /** SHA-256 of a voice note. */
  sound: z.string().optional(),
});

const handOver = z.strictObject({
  shellbook: z.literal('floor'),
  version: z.literal(1),
  shell: z.string().max(60),
  /** What this phone puts into the numbers that it gives. */
  device: z.strictObject({ tag: z.string().regex(/^[A-Z0-9]{2,6}$/u), name: z.string().max(80) }),
  /** Fingerprint of the records that the page was made from. */
  fingerprint: z.string().max(80),
  /** When it was handed over. */
  at: z.iso.datetime(),
  entries: z.array(entry).max(MOST_ENTRIES),
  pictures: z
    .array(
      z.strictObject({
        sha256: z.string().regex(/^[0-9a-f]{64}$/u),
        /** As the phone called it. */
        name: z.string().max(200),
        /** JPEG in base64. */
        jpeg: z.string().max(MOST_PICTURE_SIGNS),
      }),
    )
    .max(MOST_PICTURES),
  sounds: z
    .array(
      z.strictObject({
        sha256: z.string().regex(/^[0-9a-f]{64}$/u),
        /** As the phone called it. */
        name: z.string().max(200),
        /** In base64. */
        sound: z.string().max(Math.ceil(MOST_SOUND_BYTES / 3) * 4),
      }),
    )
    .max(MOST_SOUNDS)
    .optional(),
});

/** What a phone hands over: entries in the order in which they were made, and the pictures that they are of. */
export type FloorFile = z.output<typeof handOver>;
export type FloorEntry = FloorFile['entries'][number];

/** Reads the file that a page for the floor gave back. Throws {@link UserError} where it is none, or is not whole. */
export function readHandOver(text: string, file: string, shell: string): FloorFile {
  let typed: unknown;
  try {
    typed = JSON.parse(text);
  } catch {
    throw new UserError(`${file} is not a file of a floor page: it is not complete JSON. Save it again on the phone`);
  }
  if (typeof typed !== 'object' || typed === null || (typed as { shellbook?: unknown }).shellbook !== 'floor')
    throw new UserError(`${file} is not a file of a floor page (shellbook floor), expected what its “Hand over” saved`);
  const read = handOver.safeParse(typed);
  if (!read.success) {
    const [issue] = read.error.issues;
    const at = issue?.path.join('.') ?? '';
    throw new UserError(
      `${file}: ${at === '' ? '' : `\`${shown(at)}\`: `}${issue?.message ?? 'not whole'}. Nothing was taken in.`,
    );
  }
  if (read.data.shell !== shell)
    throw new UserError(`${file} is of shell ${found(read.data.shell)}, expected ${shell}. Nothing was taken in.`);
  return read.data;
}
