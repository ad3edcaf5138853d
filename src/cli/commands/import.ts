import path from 'node:path';
import type { SaidHabits } from '../../entry/habits.js';
import type { SheetHeader } from '../../entry/headers.js';
import type { EntryKind } from '../../entry/homes.js';
import type { ImportPlan } from '../../entry/plan.js';
import type { SheetTable } from '../../entry/sheet.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import { formerOption } from '../former-options.js';
import type { Status } from '../io.js';
import { committed, kindAndShell, type OpenEntry, readEntry, storeOf, writeTexts } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly kind: string;
  readonly file: string;
  readonly shell: string | undefined;
  readonly map: readonly string[];
  readonly heads: number;
  readonly habits: SaidHabits;
  readonly into: string | undefined;
  readonly dryRun: boolean;
  readonly yes: boolean;
  readonly ahead: boolean;
  readonly keep: boolean;
  readonly commit: boolean;
}

const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

export function declareImport(registry: Registry): void {
  registry
    .add('import <kind> <file>', 'adds many records from a spreadsheet’s CSV, and changes those that it knows', [
      'shellbook import members cutlist.csv --shell QF-007 --dry-run',
      "shellbook import members cut.csv --shell QF-007 --map 'Shape=section' --yes",
    ])
    .option('--shell <shell>', 'the shell that the records are of')
    .option('--dry-run', 'show what would change, and write nothing')
    .option('--map <column=key>', 'what a column is read as; skip: not read (may be given again)', gather)
    .option('--yes', 'take columns whose names are only close, and leave out those that fit nothing')
    .option('--keep', 'keep such columns in import.yaml for the next sheet')
    .option('--allow-missing', 'take records that name others which come with a later sheet')
    .option('--header-row <row>', 'the row that names the columns, where it is not the first')
    .addOption(formerOption('--ahead'))
    .addOption(formerOption('--heads <row>'))
    .option('--decimal-comma', 'commas part decimals: 5,25')
    .option('--decimal-point', 'commas part thousands: 14,600')
    .option('--dates <order>', 'how 2/11/2026 is read: m/d/y or d/m/y')
    .option('--into <file>', 'the file that new records go to, as members-floor or dc-house')
    .option('--commit', 'commit what was written')
    .action(registry.run(([kind, file], given) => read(kind as string, file as string, given), importSheet));
}

const gather = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];

function read(kind: string, file: string, given: Readonly<Record<string, unknown>>): Options {
  const heads = Number(given.headerRow ?? 1);
  if (!Number.isInteger(heads) || heads < 1)
    throw new UserError(`Unexpected --header-row ${String(given.headerRow)}, expected the number of a row, as 3`);
  const dates = text(given.dates);
  if (dates !== undefined && dates !== 'm/d/y' && dates !== 'd/m/y')
    throw new UserError(`Unexpected --dates ${dates}, expected m/d/y or d/m/y`);
  return {
    kind,
    file,
    shell: text(given.shell),
    map: (given.map ?? []) as readonly string[],
    heads,
    habits: {
      ...(given.decimalComma === true ? { decimalComma: true } : given.decimalPoint === true ? { decimalComma: false } : {}),
      ...(dates === undefined ? {} : { dates }),
    },
    into: text(given.into),
    dryRun: given.dryRun === true,
    yes: given.yes === true,
    ahead: given.allowMissing === true,
    keep: given.keep === true,
    commit: given.commit === true,
  };
}

async function importSheet(options: Options, context: Context): Promise<Status> {
  const [{ readSheet }, { writing }, { countOf }] = await Promise.all([
    import('../../entry/sheet.js'),
    import('../../store/write.js'),
    import('../../entry/homes.js'),
  ]);
  const { kind, shell } = await kindAndShell(options.kind, options.shell);
  const root = await storeOf(context);
  const sheet = readSheet(path.basename(options.file), await bytesOf(options.file, context), options.heads);
  const before = await readEntry(root, shell);
  const { heads, keep } = await confirmed(kind, sheet, before, options, context);
  if (options.dryRun)
    return answer(kind, options, context, { sheet, heads, ...(await planned(kind, sheet, heads, before, options, context)) });
  return writing(root, async (writer) => {
    // As the store stands now that nobody else writes to it.
    const now = await readEntry(root, shell);
    const { plan, texts } = await planned(kind, sheet, heads, now, options, context);
    if (plan.faults.length > 0) return answer(kind, options, context, { sheet, heads, plan, texts });
    await writeTexts(writer, texts, now.known);
    const kept = keep && (await keepColumns(writer, kind, heads));
    const files = [...texts.keys(), ...(kept ? ['import.yaml'] : [])];
    const message = `Record ${countOf(plan.added.length + plan.changed.length, kind)}${shell === undefined ? '' : ` of ${shell}`} from ${sheet.name}`;
    const said = options.commit && files.length > 0 ? await committed(root, files, message) : undefined;
    return answer(kind, options, context, { sheet, heads, plan, texts, ...(said === undefined ? {} : { said }) });
  });
}

async function bytesOf(file: string, context: Context): Promise<Uint8Array> {
  const { readGivenFile } = await import('../../store/given-file.js');
  return readGivenFile(path.resolve(context.io.cwd, file), file, LARGEST_BYTES, 'a sheet of records');
}

/** A sheet larger than this was not typed by a shop. */
const LARGEST_BYTES = 20 * 1024 * 1024;

/** The columns, each certain or confirmed by the person or by --yes. Throws {@link UserError} with what to say otherwise. */
async function confirmed(
  kind: EntryKind,
  sheet: SheetTable,
  { text, known }: OpenEntry,
  options: Options,
  context: Context,
): Promise<{ readonly heads: readonly SheetHeader[]; readonly keep: boolean }> {
  const [{ matchHeads, unreadMass }, { keptColumns, ownWords, saidColumns }, report] = await Promise.all([
    import('../../entry/headers.js'),
    import('../../entry/mapping.js'),
    import('../report/import-text.js'),
  ]);
  const said = new Map([...keptColumns(text.files.get('import.yaml'), kind), ...saidColumns(options.map)]);
  const heads = matchHeads(kind, sheet.heads, { said, own: ownWords(kind, known) });
  const wrong = heads.find(({ how }) => how === 'wrong');
  if (wrong) throw new UserError(`${sheet.name}: ${wrong.message}`);
  const lost = unreadMass(kind, heads, known);
  if (lost !== undefined) throw new UserError(`${sheet.name}: ${lost}`);
  if (!heads.some(({ column }) => column)) throw new UserError(report.noColumns(kind, sheet));
  const open = heads.filter(({ how }) => how === 'close' || how === 'unknown');
  const { keep } = options;
  if (open.length === 0) return { heads, keep };
  context.tell(report.columnsText(sheet, heads));
  if (options.yes || options.dryRun) return { heads, keep };
  const asker = await context.io.ask?.();
  if (asker && (await asker.confirm({ text: 'Read the columns so?', usual: true }))) {
    return { heads, keep: keep || (await asker.confirm({ text: 'Keep them in import.yaml for the next sheet?', usual: true })) };
  }
  throw new UserError(report.columnsAdvice(sheet, heads));
}

interface Planned {
  readonly plan: ImportPlan;
  readonly texts: ReadonlyMap<string, string>;
}

async function planned(
  kind: EntryKind,
  sheet: SheetTable,
  heads: readonly SheetHeader[],
  { known }: OpenEntry,
  options: Options,
  context: Context,
): Promise<Planned> {
  const [{ habitsOf }, { planImport }, { textsOf }, { LARGEST_BYTES }] = await Promise.all([
    import('../../entry/habits.js'),
    import('../../entry/plan.js'),
    import('../../entry/texts.js'),
    import('../../store/taken.js'),
  ]);
  const { told, ...habits } = habitsOf(sheet, heads, options.habits);
  for (const one of told) context.tell(`${sheet.name}: ${one}.`);
  context.progress(`Comparing ${sheet.rows.length} rows`);
  const plan = planImport({
    kind,
    sheet,
    heads,
    known,
    habits,
    ahead: options.ahead,
    ...(options.into === undefined ? {} : { into: options.into }),
  });
  return { plan, texts: plan.faults.length > 0 ? new Map() : textsOf(kind, plan, known, undefined, LARGEST_BYTES) };
}

async function keepColumns(
  writer: { update(file: string, change: (old: string | null) => string): Promise<boolean> },
  kind: EntryKind,
  heads: readonly SheetHeader[],
): Promise<boolean> {
  const [{ withKept }, { COLUMNS_FILE }] = await Promise.all([import('../../entry/mapping.js'), import('../../store/layout.js')]);
  return writer.update(COLUMNS_FILE, (old) => withKept(old, kind, heads));
}

async function answer(
  kind: EntryKind,
  options: Options,
  context: Context,
  done: Planned & { readonly sheet: SheetTable; readonly heads: readonly SheetHeader[]; readonly said?: string },
): Promise<Status> {
  const { importJson, importText } = await import('../report/import-text.js');
  const shown = { ...done, kind, dryRun: options.dryRun };
  context.print(context.settings.json ? importJson(shown, options.shell ?? null) : importText(shown));
  if (done.said !== undefined) context.tell(done.said);
  return done.plan.faults.length > 0 ? 2 : 0;
}
