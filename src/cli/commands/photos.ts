import path from 'node:path';
import type { PhotoDraft, PhotoDrafts } from '../../entry/photos.js';
import type { Model } from '../../model/shell.js';
import type { Pictures } from '../../store/phone-pictures.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { committed, type OpenEntry, readEntry, storeOf, writeTexts } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly shell: string;
  readonly folder: string;
  readonly stage: string | undefined;
  readonly of: readonly string[];
  readonly dryRun: boolean;
  readonly commit: boolean;
}

export function declarePhotos(registry: Registry): void {
  registry
    .add(
      'photos <shell> <folder>',
      'takes in a folder of pictures: when each was taken, what it may show, what still needs one',
      ['shellbook photos QF-007 ~/phone/friday', 'shellbook photos QF-007 ~/phone/trough --of TROUGH,DC-12/1 --stage belly'],
    )
    .option('--of <ids>', 'what all of these pictures show')
    .option('--stage <stage>', 'the build stage they show')
    .option('--dry-run', 'show what would be taken in, and write nothing')
    .option('--commit', 'commit what was written')
    .action(
      registry.run(
        ([shell, folder], { of, stage, dryRun, commit }) => ({
          shell: shell as string,
          folder: folder as string,
          stage: typeof stage === 'string' ? stage : undefined,
          of: typeof of === 'string' ? of.split(/[\s,;]+/u).filter((id) => id !== '') : [],
          dryRun: dryRun === true,
          commit: commit === true,
        }),
        photos,
      ),
    );
}

async function photos(options: Options, context: Context): Promise<Status> {
  const [{ readPictures }, { entering }] = await Promise.all([import('../../store/phone-pictures.js'), import('../entering.js')]);
  const root = await storeOf(context);
  const before = await readEntry(root, options.shell);
  const found = await readPictures(path.resolve(context.io.cwd, options.folder), (text) => context.progress(text));
  const first = await drafted(found, before, options);
  const subjects = options.dryRun ? new Map<string, readonly string[]>() : await askSubjects(first, context);
  if (options.dryRun) return answer(first, found, before, options, context, false);
  const what = `photos of ${options.shell}, their records (the pictures stay in the store)`;
  return entering(
    root,
    () => what,
    async (writer) => {
      // As the store stands now that nobody else writes to it.
      const now = await readEntry(root, options.shell);
      const taken = withSubjects(await drafted(found, now, options), subjects);
      const files = await takeIn(taken, found, now, options.shell, (texts) => writeTexts(writer, texts, now.known));
      const status = await answer(taken, found, await readEntry(root, options.shell), options, context, true);
      const message = `Take in ${taken.drafts.length} photos of ${options.shell}${options.stage === undefined ? '' : `, stage ${options.stage}`}`;
      if (options.commit && files.length > 0) context.tell(await committed(root, files, message));
      return status;
    },
  );
}

async function drafted(found: Pictures, { text, known }: OpenEntry, options: Options): Promise<PhotoDrafts> {
  const [{ photoDrafts }, { hashPhotos }, { validateAll }, { isData }] = await Promise.all([
    import('../../entry/photos.js'),
    import('../../store/hash-photos.js'),
    import('../../entry/validate-photos.js'),
    import('../../entry/yaml-text.js'),
  ]);
  const records = known.ofKind('photo').map(({ data }) => data);
  const folder = `shells/${options.shell}/photos/`;
  const named = new Set(records.map(({ file }) => `${folder}${String(file)}`));
  const there = await hashPhotos(text, options.shell);
  const recorded = [...there].flatMap(([file, hash]) => (named.has(file) ? [hash] : []));
  const drafts = photoDrafts(found.pictures, {
    known,
    files: [...text.photos.keys()].filter((file) => file.startsWith(folder)).map((file) => file.slice(folder.length)),
    hashes: new Set([
      ...recorded,
      ...records.flatMap(({ sha256, original }) =>
        [sha256, isData(original) ? original.sha256 : undefined].flatMap((hash) => (hash === undefined ? [] : String(hash))),
      ),
    ]),
    unrecorded: new Map(
      [...there].flatMap(([file, hash]) =>
        named.has(file) || file.endsWith('.yaml') ? [] : [[hash, file.slice(folder.length)]],
      ),
    ),
    unseen: await unseenIn(await modelOf(text, options.shell)),
    ...(options.stage === undefined ? {} : { stage: options.stage }),
    of: options.of,
  });
  validateAll(drafts.drafts, known);
  return drafts;
}

async function modelOf(text: OpenEntry['text'], shell: string): Promise<Model | undefined> {
  const { loadStore } = await import('../../model/load.js');
  return loadStore(text).shells.get(shell)?.model;
}

/** Runs and joints in cavities that are closed for good, and that no photo shows. */
async function unseenIn(model: Model | undefined): Promise<readonly string[]> {
  if (!model) return [];
  const [{ concealed }, { evidenceOf }] = await Promise.all([
    import('../../query/concealment.js'),
    import('../../rules/order/evidence.js'),
  ]);
  return concealed(model)
    .filter((item) => evidenceOf(item, model).photos.length === 0)
    .map((item) => item.record.id);
}

const LATER = '';
const SAME = '\u0000same';

/** What each picture shows, where somebody sits there to say; by its content. */
async function askSubjects({ drafts }: PhotoDrafts, context: Context): Promise<ReadonlyMap<string, readonly string[]>> {
  const said = new Map<string, readonly string[]>();
  const asker = await context.io.ask?.();
  let before: readonly string[] = [];
  for (const { picture, proposed } of drafts) {
    if (!asker || (proposed.length === 0 && before.length === 0)) continue;
    const same = before.length > 0 ? [{ value: SAME, name: `the same as the one before (${before.join(', ')})` }] : [];
    const choices = [...same, ...proposed.map((value) => ({ value })), { value: LATER, name: '(say later)' }];
    const one = await asker.choose({
      text: `What does ${picture.name} show${picture.taken === undefined ? '' : `, taken ${picture.taken}`}?`,
      choices,
      usual: LATER,
    });
    before = one === SAME ? before : one === LATER ? [] : [one];
    if (before.length > 0) said.set(picture.sha256, before);
  }
  return said;
}

function withSubjects({ drafts, doubles }: PhotoDrafts, subjects: ReadonlyMap<string, readonly string[]>): PhotoDrafts {
  const told = drafts.map((draft): PhotoDraft => {
    const of = subjects.get(draft.picture.sha256);
    if (of === undefined) return draft;
    const { id, file, ...others } = draft.data;
    return { ...draft, data: { id, file, of, ...others }, proposed: [] };
  });
  return { drafts: told, doubles };
}

/**
 * Puts the pictures into the photos folder as they are, one by one, then their records at one stroke. Broken off in between, the next run
 * takes up what lies there. Gives the files.
 */
async function takeIn(
  { drafts }: PhotoDrafts,
  { bytesOf }: Pictures,
  { root, known }: OpenEntry,
  shell: string,
  write: (texts: ReadonlyMap<string, string>) => Promise<void>,
): Promise<readonly string[]> {
  if (drafts.length === 0) return [];
  const [{ placeOf }, { reason }, { replaceFile }, { chooseFile }, { textsOf }, { UserError }] = await Promise.all([
    import('../../store/place.js'),
    import('../../store/read.js'),
    import('../../store/replace.js'),
    import('../../entry/files.js'),
    import('../../entry/texts.js'),
    import('../../user-error.js'),
  ]);
  const added = drafts.map(({ id, data }) => {
    const chosen = chooseFile('photo', data, known);
    if ('ask' in chosen) throw new UserError(chosen.ask);
    return { id, data, place: chosen.place, row: 0 };
  });
  const comments = new Map(
    drafts
      .filter(({ proposed }) => proposed.length > 0)
      .map(({ data, proposed }) => [data, `of: [${proposed.join(', ')}]  which of these does it show?`]),
  );
  const texts = textsOf('photo', { added, changed: [] }, known, comments);
  const files = drafts.map(({ data }) => `shells/${shell}/photos/${String(data.file)}`);
  for (const [i, { picture, isThere }] of drafts.entries()) {
    if (isThere) continue;
    try {
      await replaceFile(await placeOf(root, files[i] as string), await bytesOf(picture));
    } catch (error) {
      if (error instanceof UserError) throw error;
      throw new UserError(
        `${files[i]} cannot be written: ${reason(error)}. ${i} of ${drafts.length} pictures lie in the store, without records yet: make room and run the same command again, which takes them up.`,
      );
    }
  }
  await write(texts);
  return [...files, ...texts.keys()];
}

async function answer(
  taken: PhotoDrafts,
  found: Pictures,
  { text }: OpenEntry,
  options: Options,
  context: Context,
  written: boolean,
): Promise<Status> {
  const { photosJson, photosText } = await import('../report/photos-text.js');
  const missing = await unseenIn(await modelOf(text, options.shell));
  const shown = { ...taken, refused: found.refused, undated: found.undated, others: found.others, missing, written };
  context.print(context.settings.json ? photosJson(shown, options.shell) : photosText(shown, options.shell));
  return found.refused.size > 0 ? 1 : 0;
}
