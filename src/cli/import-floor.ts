import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { FloorFile } from '../floor/hand-over.js';
import type { ClashDecision, FloorClash, FloorPlan } from '../floor/merge.js';
import type { StoreText } from '../model/load-types.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { Status } from './io.js';
import { committed, readEntry, storeOf, writeTexts } from './open-entry.js';

export interface ImportFloor {
  readonly files: readonly string[];
  readonly shell: string | undefined;
  readonly dryRun: boolean;
  /** Leave out what cannot come in, and take the rest. */
  readonly yes: boolean;
  readonly commit: boolean;
}

/** A phone's morning with two hundred pictures has about 80 MB. */
const LARGEST_BYTES = 256 * 1024 * 1024;

/** Takes in what floor pages handed over, from any number of phones at once. */
export async function importFloor(options: ImportFloor, context: Context): Promise<Status> {
  const { shell } = options;
  if (shell === undefined) throw new UserError('Which shell do these records belong to? Name it, such as --shell QF-007');
  const root = await storeOf(context);
  const handOvers: FloorFile[] = [];
  for (const file of options.files) handOvers.push(await handOverFrom(file, shell, context));
  const before = await readEntry(root, shell);
  const first = await planned(handOvers, before.text, shell, options, new Map());
  const decisions = options.dryRun ? new Map<string, ClashDecision>() : await decided(first.clashes, context);
  const shown = await planned(handOvers, before.text, shell, options, decisions);
  const { floorJson, floorText } = await import('./report/floor-text.js');
  const answer = (plan: FloorPlan, written: boolean): Status => {
    const said = { plan, written, shell, files: options.files };
    context.print(context.settings.json ? floorJson(said) : floorText(said));
    return plan.faults.length > 0 ? 2 : plan.clashes.length > 0 ? 1 : 0;
  };
  const stop = shown.faults.length > 0 && !options.yes;
  if (options.dryRun || stop || shown.taken.length === 0) return answer(shown, false);
  if (!(await agreed(shown, context, floorText({ plan: shown, written: false, shell, files: options.files }))))
    throw new UserError('Nothing was written.');
  const { entering } = await import('./entering.js');
  return entering(
    root,
    () => `import floor of ${shell}`,
    async (writer): Promise<Status> => {
      // As the store stands now that nobody else writes to it.
      const now = await readEntry(root, shell);
      const plan = await planned(handOvers, now.text, shell, options, decisions);
      if (plan.faults.length > 0 && !options.yes) return answer(plan, false);
      const evidence = await writeEvidence(root, shell, handOvers, plan);
      await writeTexts(writer, plan.texts, now.known);
      const status = answer(plan, true);
      if (options.commit) {
        const people = [...new Set(plan.taken.map(({ person }) => person))].sort().join(', ');
        const message = `Record ${plan.taken.length} entries of ${shell} from the floor, by ${people}`;
        context.tell(await committed(root, [...evidence, ...plan.texts.keys()], message));
      }
      return status;
    },
  );
}

async function handOverFrom(file: string, shell: string, context: Context): Promise<FloorFile> {
  const [{ readGivenFile }, { readHandOver }, { checkPictures, checkSounds }] = await Promise.all([
    import('../store/given-file.js'),
    import('../floor/hand-over.js'),
    import('./floor-pictures.js'),
  ]);
  const bytes = await readGivenFile(path.resolve(context.io.cwd, file), file, LARGEST_BYTES, 'a file of a floor page');
  const read = readHandOver(bytes.toString('utf8'), path.basename(file), shell);
  await checkPictures(read, path.basename(file));
  checkSounds(read, path.basename(file));
  return read;
}

/** The plan; with `--yes` without the entries that cannot come in, which are told all the same. */
async function planned(
  handOvers: readonly FloorFile[],
  text: StoreText,
  shell: string,
  { yes }: ImportFloor,
  decisions: ReadonlyMap<string, ClashDecision>,
): Promise<FloorPlan> {
  const [{ planFloor }, { LARGEST_BYTES: mostBytes }] = await Promise.all([
    import('../floor/merge.js'),
    import('../store/taken.js'),
  ]);
  const leaveOut = new Set<string>();
  for (let faults: FloorPlan['faults'] = []; ; ) {
    const plan = planFloor(handOvers, text, shell, { decisions, leaveOut, mostBytes });
    faults = [...faults, ...plan.faults];
    const more = plan.faults.filter(({ key }) => key !== '' && !leaveOut.has(key));
    if (!yes || more.length === 0) return { ...plan, faults };
    for (const { key } of more) leaveOut.add(key);
  }
}

/** Asks of each clash which stands; where nobody can be asked, they stay out and are named. */
async function decided(clashes: readonly FloorClash[], context: Context): Promise<ReadonlyMap<string, ClashDecision>> {
  const decisions = new Map<string, ClashDecision>();
  const asker = clashes.length > 0 ? await context.io.ask?.() : undefined;
  if (!asker) return decisions;
  for (const { key, person, kind, id, field, record, phone } of clashes) {
    if (decisions.has(key)) continue;
    const said = await asker.choose({
      text: `${kind} ${id}${field === '' ? '' : `, ${field}`}: the record says ${record}, ${person} entered ${phone}. Which is right?`,
      choices: [
        { value: 'record', name: 'what the record says' },
        { value: 'phone', name: `what ${person} entered` },
        { value: 'later', name: 'leave it, and ask again next time' },
      ],
    });
    if (said !== 'later') decisions.set(key, said as ClashDecision);
  }
  return decisions;
}

async function agreed({ taken }: FloorPlan, context: Context, shown: string): Promise<boolean> {
  const asker = await context.io.ask?.();
  if (!asker) return true;
  context.tell(shown);
  return asker.confirm({ text: `Take in these ${taken.length} entries?`, usual: true });
}

/** Puts pictures and voice notes into the shell's folder, before the records that name them. Gives their files. */
async function writeEvidence(
  root: string,
  shell: string,
  handOvers: readonly FloorFile[],
  { pictures, sounds }: FloorPlan,
): Promise<readonly string[]> {
  const [{ placeOf }, { replaceFile }] = await Promise.all([import('../store/place.js'), import('../store/replace.js')]);
  const bytes = new Map(
    handOvers.flatMap((one) => [
      ...one.pictures.map(({ sha256, jpeg }) => [sha256, jpeg] as const),
      ...(one.sounds ?? []).map(({ sha256, sound }) => [sha256, sound] as const),
    ]),
  );
  const wanted = [...[...pictures].map(([sha256, name]) => [sha256, `photos/${name}`] as const), ...sounds];
  const placed = await Promise.all(
    wanted.map(async ([sha256, inShell]) => {
      const file = `shells/${shell}/${inShell}`;
      return { file, target: await placeOf(root, file), made: Buffer.from(bytes.get(sha256) as string, 'base64') };
    }),
  );
  // Whatever a phone calls its file, what is there stays as it is.
  for (const [i, { file, target, made }] of placed.entries()) {
    const there = placed.slice(0, i).find((one) => one.file === file)?.made ?? (await readFile(target).catch(() => undefined));
    if (there && !there.equals(made)) throw new UserError(`${file} is there already with other contents. Nothing was taken in.`);
  }
  for (const { target, made } of placed) await replaceFile(target, made);
  const files = placed.map(({ file }) => file);
  return files;
}
