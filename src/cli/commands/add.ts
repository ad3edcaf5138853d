import type { Command } from 'commander';
import type { Asker } from '../../entry/asker.js';
import type { EntryKind } from '../../entry/homes.js';
import type { Data } from '../../entry/yaml-text.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { committed, kindAndShell, type OpenEntry, readEntry, storeOf, writeTexts } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly kind: string | undefined;
  /** `--id`, `W-0112` … as typed. */
  readonly fields: readonly string[];
  readonly shell: string | undefined;
  readonly like: string | undefined;
  readonly last: boolean;
  readonly into: string | undefined;
  readonly onPhoto: readonly string[] | undefined;
  readonly on: string | undefined;
  readonly dryRun: boolean;
  readonly commit: boolean;
  readonly help: () => void;
}

/** `--id next`: the next free one in the shop’s numbering. */
const NEXT = 'next';

export function declareAdd(registry: Registry): void {
  const command: Command = registry
    .add('add [kind] [fields...]', 'adds one record: from options, or by asking for what is missing', [
      'shellbook add weld --shell QF-007          asks, at a terminal',
      "shellbook add weld --shell QF-007 --id next --like W-0112 --joins 'SF-L, CB-5'",
      'shellbook add weld --help                  the fields of a weld',
    ])
    .helpOption(false)
    .allowUnknownOption()
    .option('--shell <shell>', 'the shell it belongs to')
    .option('--like <id>', 'copy what you do not give from this record; never photos, inspections or heats')
    .option('--last', 'copy what you do not give from the last record of this kind, with the next free number')
    .option('--into <file>', 'the file to write it to, such as members-floor or dc-house')
    .option('--on-photo <photo-and-point...>', 'take its place from a point in a photo, such as P-0231 1310,402')
    .option('--on <id>', 'with --on-photo: the panel, member or zone that the point lies on')
    .option('--dry-run', 'show the record, and write nothing')
    .option('--commit', 'commit what was written');
  const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);
  command.action(
    registry.run(([kind, fields], given): Options => {
      return {
        kind: kind as string | undefined,
        fields: (fields ?? []) as readonly string[],
        shell: text(given.shell),
        like: text(given.like),
        last: given.last === true,
        into: text(given.into),
        onPhoto: Array.isArray(given.onPhoto) ? (given.onPhoto as readonly string[]) : undefined,
        on: text(given.on),
        dryRun: given.dryRun === true,
        commit: given.commit === true,
        help: () => command.outputHelp(),
      };
    }, add),
  );
}

const isHelp = (word: string | undefined): boolean => word === '--help' || word === '-h';

async function add(options: Options, context: Context): Promise<Status> {
  if (options.kind === undefined || isHelp(options.kind)) {
    options.help();
    const { ENTRY_KINDS } = await import('../../entry/homes.js');
    const { paragraph } = await import('../report/wrap.js');
    context.print(`\n${paragraph(['chassis', 'service', ...ENTRY_KINDS].join(', '), 'Kinds: ')}`);
    return options.kind === undefined ? 2 : 0;
  }
  if (options.fields.some(isHelp)) return help(options.kind, options.help, context);
  if (options.kind === 'service') return addService(options, context);
  if (options.kind === 'chassis') return addChassis(options, context);
  const { kind, shell } = await kindAndShell(options.kind, options.shell);
  const { readFields } = await import('../../entry/options.js');
  const placed = options.onPhoto && shell !== undefined ? await onPhoto(shell, options.onPhoto, options.on, context) : [];
  const given = readFields(kind, [...placed, ...options.fields]);
  const root = await storeOf(context);
  const wanted = await complete(kind, shell, given, root, options, context);
  return write(kind, shell, wanted, root, options, context);
}

const onPhoto = async (...given: Parameters<typeof import('../on-photo.js')['fieldsOnPhoto']>): Promise<readonly string[]> =>
  (await import('../on-photo.js')).fieldsOnPhoto(...given);

/** Vehicle number, ratings, axles and bare weights, by asking: they stand in shell.yaml. */
async function addChassis({ shell, dryRun, commit }: Options, context: Context): Promise<Status> {
  if (shell === undefined) throw new UserError('Whose chassis is it? Name the shell, as --shell QF-007');
  const ask = context.io.ask;
  const file = `shells/${shell}/shell.yaml`;
  if (ask === undefined)
    throw new UserError(`The chassis is asked for at a terminal. Without one write it into ${file}: its examples show how`);
  const [{ askChassis }, { withChassis }, { entering }] = await Promise.all([
    import('../../entry/ask-chassis.js'),
    import('../../entry/chassis-text.js'),
    import('../entering.js'),
  ]);
  const root = await storeOf(context);
  const { known } = await readEntry(root, shell);
  const old = known.files.get(file)?.text ?? '';
  const asker = await ask();
  const said = await askChassis(known, asker);
  const text = withChassis(file, old, said);
  const before = new Set(old.split('\n'));
  const fresh = text.split('\n').filter((line) => line !== '' && !before.has(line));
  if (fresh.length === 0) throw new UserError('You gave nothing new, so nothing was written.');
  context.tell(`${file}:\n${fresh.map((line) => `  ${line}`).join('\n')}`);
  if (!dryRun && !(await asker.confirm({ text: 'Write it?', usual: true }))) throw new UserError('Nothing was written.');
  if (!dryRun) {
    await entering(
      root,
      () => `add chassis of ${shell}`,
      (writer) => writeTexts(writer, new Map([[file, text]]), known),
    );
  }
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(envelope('add', shell, null, { kind: 'chassis', file, dry_run: dryRun }));
  } else context.print(`${dryRun ? 'Would write' : 'Wrote'} the chassis of ${shell} to ${file}.`);
  if (commit && !dryRun) context.tell(await committed(root, [file], `Record the chassis of ${shell}`));
  return 0;
}

/** A service is a file of its own, with lists for its records. */
async function addService(options: Options, context: Context): Promise<Status> {
  const { shell } = options;
  if (shell === undefined) throw new UserError('Whose service is it? Name the shell, as --shell QF-007');
  const [{ newService }, { entering }] = await Promise.all([import('../../entry/new-service.js'), import('../entering.js')]);
  const root = await storeOf(context);
  return entering(
    root,
    () => `add service of ${shell}`,
    async (writer): Promise<Status> => {
      const { known } = await readEntry(root, shell);
      const { file, text } = newService(options.fields, known);
      if (!options.dryRun) await writeTexts(writer, new Map([[file, text]]), known);
      if (context.settings.json) {
        const { envelope } = await import('../report/json.js');
        context.print(envelope('add', shell, null, { kind: 'service', file, dry_run: options.dryRun }));
      } else context.print(`${options.dryRun ? 'Would start' : 'Started'} ${file}:\n${text.trimEnd()}`);
      if (options.commit && !options.dryRun) context.tell(await committed(root, [file], `Start a service of ${shell}: ${file}`));
      return 0;
    },
  );
}

async function write(
  kind: EntryKind,
  shell: string | undefined,
  wanted: Data,
  root: string,
  options: Options,
  context: Context,
): Promise<Status> {
  if (options.dryRun) return finish(kind, shell, wanted, await readEntry(root, shell, new Set([kind])), options, context);
  const { entering } = await import('../entering.js');
  let what = `add ${kind}`;
  // As the store stands now that nobody else writes to it.
  return entering(
    root,
    () => what,
    async (writer) =>
      finish(kind, shell, wanted, await readEntry(root, shell, new Set([kind])), options, context, async (texts, known, id) => {
        what = `add ${kind} ${id}${shell === undefined ? '' : ` to ${shell}`}`;
        await writeTexts(writer, texts, known);
      }),
  );
}

async function help(word: string, show: () => void, context: Context): Promise<Status> {
  const { kindNamed } = await import('../../entry/homes.js');
  const { fieldsText } = await import('../report/add-text.js');
  const kind = word === 'service' ? word : kindNamed(word);
  show();
  if (kind) context.print(fieldsText(kind));
  return 0;
}

/** What was given, what --like lends, and what the person says. Throws {@link UserError} with what is missing where nobody can be asked. */
async function complete(
  kind: EntryKind,
  shell: string | undefined,
  given: Data,
  root: string,
  options: Options,
  context: Context,
): Promise<Data> {
  const { lentBy, missingFields, optionOf } = await import('../../entry/options.js');
  const data = { ...(await lent(kind, shell, root, options, lentBy)), ...given };
  const missing = missingFields(kind, data);
  if (missing.length === 0) return data;
  if (context.io.ask === undefined) {
    const list = missing.map(
      ({ key, help: text }) => `  --${optionOf(key)}  ${text}${key === 'id' ? ' (--id next: the next free one)' : ''}`,
    );
    throw new UserError(`Missing for a ${kind}:\n${list.join('\n')}\nAll its fields: shellbook add ${kind} --help`);
  }
  const [{ askRecord }, { loadStore }] = await Promise.all([import('../../entry/ask-record.js'), import('../../model/load.js')]);
  const { text, known } = await readEntry(root, shell);
  const model = shell === undefined ? undefined : loadStore(text).shells.get(shell)?.model;
  if (shell !== undefined && !model) throw new UserError(`Shell ${shell} cannot be read. See: shellbook check ${shell}`);
  const asker = await context.io.ask();
  const answered = await askRecord({ kind, given: data, known, model }, asker);
  if (!options.dryRun) await confirm(kind, shell, answered, root, options, context, asker);
  return answered;
}

/** What another record of the kind lends: the one that was named, or with --last the last one. */
async function lent(
  kind: EntryKind,
  shell: string | undefined,
  root: string,
  { like, last }: Options,
  lentBy: typeof import('../../entry/options.js')['lentBy'],
): Promise<Data> {
  if (like === undefined && !last) return {};
  if (like !== undefined && last) throw new UserError('Give --like or --last, not both');
  const { known } = await readEntry(root, shell, new Set([kind]));
  const id = like ?? (await lastId(kind, root, known));
  const broken = [...known.files.values()].find(({ open }) => open === undefined)?.path;
  if (id === undefined)
    throw new UserError(
      broken === undefined
        ? `There is no ${kind} yet that --last could take from`
        : `${broken} is not complete YAML, so --last has nothing to copy from. See: shellbook check`,
    );
  return { ...lentBy(kind, id, known), ...(last ? { id: NEXT } : {}) };
}

/** The last that this user added and that is still there; else the last of the file. */
async function lastId(kind: EntryKind, root: string, known: OpenEntry['known']): Promise<string | undefined> {
  const { Journal } = await import('../../store/journal.js');
  const added = new RegExp(`^add ${kind} (\\S+)`, 'u');
  const mine = (await (await Journal.of(root)).entered()).map((what) => added.exec(what)?.[1]);
  return mine.find((id) => id !== undefined && known.find(kind, id)) ?? known.ofKind(kind).at(-1)?.id;
}

/** Shows the record and its file before anything is locked: people take their time. */
async function confirm(
  kind: EntryKind,
  shell: string | undefined,
  answered: Data,
  root: string,
  { into }: Options,
  context: Context,
  asker: Asker,
): Promise<void> {
  const [{ draftOf }, { recordText }] = await Promise.all([import('../../entry/draft.js'), import('../report/add-text.js')]);
  try {
    const draft = draftOf(kind, answered, (await readEntry(root, shell, new Set([kind]))).known, into, NEXT);
    context.tell(`${draft.place.file} (${draft.why}):\n${recordText(draft.data, draft.place.usual)}`);
  } catch (error) {
    // What somebody answered question by question is not lost with one wrong answer.
    context.tell(`Not written:\n${recordText(answered, 'block')}`);
    throw error;
  }
  if (!(await asker.confirm({ text: 'Add it?', usual: true }))) throw new UserError('Nothing was written.');
}

type Write = (texts: ReadonlyMap<string, string>, known: OpenEntry['known'], id: string) => Promise<void>;

async function finish(
  kind: EntryKind,
  shell: string | undefined,
  wanted: Data,
  { root, known }: OpenEntry,
  options: Options,
  context: Context,
  write?: Write,
): Promise<Status> {
  const [{ draftOf }, { textsOf }, report] = await Promise.all([
    import('../../entry/draft.js'),
    import('../../entry/texts.js'),
    import('../report/add-text.js'),
  ]);
  const draft = draftOf(kind, wanted, known, options.into, NEXT);
  const texts = textsOf(kind, { added: [{ ...draft, row: 0 }], changed: [] }, known);
  await write?.(texts, known, draft.id);
  if (context.settings.json) context.print(report.addJson(shell ?? null, kind, draft, write === undefined));
  else
    context.print(
      `${write ? 'Added' : 'Would add'} ${kind} ${draft.id} to ${draft.place.file} (${draft.why}).\n${report.recordText(draft.data, draft.place.usual)}`,
    );
  if (kind === 'stage')
    context.tell(`Stages are listed in build order: move this one in ${draft.place.file} to where it belongs.`);
  if (write && options.commit) {
    const { entryMessage } = await import('../../entry/message.js');
    context.tell(await committed(root, [draft.place.file], entryMessage(kind, draft.id, shell, draft.data)));
  }
  return 0;
}
