import path from 'node:path';
import type { NoteDraft, NoteDrafts } from '../entry/notes.js';
import type { NotesFile } from '../page/notes-file.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { Status } from './io.js';
import { committed, type OpenEntry, readEntry, storeOf, writeTexts } from './open-entry.js';

interface Options {
  readonly file: string;
  readonly shell: string | undefined;
  readonly dryRun: boolean;
  readonly commit: boolean;
}

const LARGEST_BYTES = 40 * 1024 * 1024;

/** Notes of a pocket page as amendments of its shell, for the shop to look at. */
export async function importNotes(options: Options, context: Context): Promise<Status> {
  const [{ readGivenFile }, { readNotes }, { entering }] = await Promise.all([
    import('../store/given-file.js'),
    import('../entry/notes.js'),
    import('./entering.js'),
  ]);
  const name = path.basename(options.file);
  const bytes = await readGivenFile(path.resolve(context.io.cwd, options.file), options.file, LARGEST_BYTES, 'a file of notes');
  const file = readNotes(name, bytes.toString('utf8'));
  if (options.shell !== undefined && options.shell !== file.shell)
    throw new UserError(`${name} is for shell ${file.shell}, not ${options.shell}. Nothing was written.`);
  const pictures = await picturesOf(name, file);
  const root = await storeOf(context);
  if (options.dryRun) {
    const before = await readEntry(root, file.shell);
    return answer(name, file, await drafted(file, pictures, before), [], options, context);
  }
  return entering(
    root,
    () => `import notes ${name}`,
    async (writer) => {
      const now = await readEntry(root, file.shell);
      const drafts = await drafted(file, pictures, now);
      const files = await written(drafts, pictures, now, file.shell, (texts) => writeTexts(writer, texts, now.known));
      const message = `Take in ${drafts.drafts.length} notes on ${file.shell} from ${name}`;
      if (options.commit && files.length > 0) context.tell(await committed(root, files, message));
      return answer(name, file, drafts, files, options, context);
    },
  );
}

interface MadePicture {
  readonly sha256: string;
  readonly jpeg: Buffer;
}

/** Each picture made anew, so that nothing but pixels comes in. Throws {@link UserError} where one is none, or not what its note says. */
async function picturesOf(name: string, { notes }: NotesFile): Promise<ReadonlyMap<number, MadePicture>> {
  const [{ sha256 }, { openPicture }] = await Promise.all([import('../archive/fingerprint.js'), import('../store/picture.js')]);
  const made = new Map<number, MadePicture>();
  for (const [i, { picture }] of notes.entries()) {
    if (!picture) continue;
    const given = Buffer.from(picture.jpeg, 'base64');
    const wrong = (why: string): UserError => new UserError(`${name}: the picture of note ${i + 1} ${why}. Nothing was written.`);
    if (sha256(given) !== picture.sha256) throw wrong('was changed since the page saved it');
    try {
      const jpeg = await (await openPicture(given)).rotate().toColourspace('srgb').jpeg({ quality: 88 }).toBuffer();
      made.set(i + 1, { jpeg, sha256: sha256(jpeg) });
    } catch {
      throw wrong('cannot be read as a picture');
    }
  }
  return made;
}

async function drafted(
  { notes }: NotesFile,
  pictures: ReadonlyMap<number, MadePicture>,
  { known }: OpenEntry,
): Promise<NoteDrafts> {
  const { noteDrafts } = await import('../entry/notes.js');
  return noteDrafts(notes, pictures, known);
}

/** Pictures first, then both lists at one stroke. */
async function written(
  { drafts }: NoteDrafts,
  pictures: ReadonlyMap<number, MadePicture>,
  { root, known }: OpenEntry,
  shell: string,
  write: (texts: ReadonlyMap<string, string>) => Promise<void>,
): Promise<readonly string[]> {
  if (drafts.length === 0) return [];
  const [{ placeOf }, { replaceFile }, { textsOf }] = await Promise.all([
    import('../store/place.js'),
    import('../store/replace.js'),
    import('../entry/texts.js'),
  ]);
  const planned = (pick: (draft: NoteDraft) => NoteDraft['photo']) => ({
    added: drafts.flatMap((draft) => {
      const one = pick(draft);
      return one ? [{ id: one.id, data: one.data, place: one.place, row: draft.row }] : [];
    }),
    changed: [],
  });
  const texts = new Map([
    ...textsOf(
      'photo',
      planned(({ photo }) => photo),
      known,
    ),
    ...textsOf(
      'amendment',
      planned(({ amendment }) => amendment),
      known,
    ),
  ]);
  const files: string[] = [];
  for (const { photo, row } of drafts) {
    const picture = pictures.get(row);
    if (!photo || !picture) continue;
    const file = `shells/${shell}/photos/${String(photo.data.file)}`;
    await replaceFile(await placeOf(root, file), picture.jpeg);
    files.push(file);
  }
  await write(texts);
  return [...files, ...texts.keys()];
}

async function answer(
  name: string,
  { shell, notes }: NotesFile,
  { drafts, there }: NoteDrafts,
  files: readonly string[],
  { dryRun }: Options,
  context: Context,
): Promise<Status> {
  const added = drafts.flatMap(({ row, photo, amendment }) => [
    ...(photo ? [{ kind: 'photo', id: photo.id, file: photo.place.file, row }] : []),
    { kind: 'amendment', id: amendment.id, file: amendment.place.file, row },
  ]);
  if (context.settings.json) {
    const { envelope } = await import('./report/json.js');
    const rest = { columns: [], added, changed: [], unchanged: there, ahead: [], faults: [], gone: [], files };
    context.print(envelope('import', shell, null, { sheet: name, dry_run: dryRun, ...rest }));
    return 0;
  }
  const lines = drafts.map(
    ({ note, amendment, photo }) =>
      `  ${amendment.id}  ${note.date}  ${note.by}  ${note.of.join(', ') || 'names no record'}${photo ? `  picture ${photo.id}` : ''}`,
  );
  const head = `${dryRun ? 'Would propose' : 'Proposed'} ${drafts.length} ${drafts.length === 1 ? 'amendment' : 'amendments'} of ${shell} from ${notes.length} ${notes.length === 1 ? 'note' : 'notes'}.`;
  const more = there > 0 ? [`${there} in the record already.`] : [];
  const next = dryRun || drafts.length === 0 ? [] : ['They are in amendments.yaml; `shellbook undo` takes them out again.'];
  context.print([head, ...lines, ...more, ...next].join('\n'));
  return 0;
}
