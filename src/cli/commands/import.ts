import path from 'node:path';
import type { SaidHabits } from '../../entry/habits.js';
import type { SheetHeader } from '../../entry/headers.js';
import type { SheetTable } from '../../entry/sheet.js';
import type { SheetWord } from '../../entry/sheet-form.js';
import type { SheetPlan } from '../../entry/sheet-plan.js';
import { MEDIA, type Medium } from '../../records/names.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import { formerOption } from '../former-options.js';
import { confirmedColumns, keepColumns } from '../import-columns.js';
import type { Status } from '../io.js';
import { committed, type OpenEntry, readEntry, sheetAndShell, storeOf, writeTexts } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly kind: string;
  readonly file: string;
  readonly shell: string | undefined;
  readonly map: readonly string[];
  readonly heads: number;
  readonly habits: SaidHabits;
  readonly into: string | undefined;
  readonly medium: Medium | undefined;
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
      'shellbook import wires wirelist.csv --shell QF-007 --medium dc',
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
    .option('--medium <medium>', 'for wires and pipes: what runs in them, where no service says (dc, ac, water, gas …)')
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
  const medium = text(given.medium);
  if (medium !== undefined && !(MEDIA as readonly string[]).includes(medium))
    throw new UserError(`Unexpected --medium ${medium}, expected one of ${MEDIA.join(', ')}`);
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
    medium: medium as Medium | undefined,
    dryRun: given.dryRun === true,
    yes: given.yes === true,
    ahead: given.allowMissing === true,
    keep: given.keep === true,
    commit: given.commit === true,
  };
}

async function importSheet(options: Options, context: Context): Promise<Status> {
  const [{ readSheet }, { entering }] = await Promise.all([import('../../entry/sheet.js'), import('../entering.js')]);
  const { kind, shell } = await sheetAndShell(options.kind, options.shell);
  const root = await storeOf(context);
  const sheet = readSheet(path.basename(options.file), await bytesOf(options.file, context), options.heads);
  const before = await readEntry(root, shell);
  const { heads, keep } = await confirmedColumns(kind, sheet, before, options, context);
  if (options.dryRun)
    return answer(kind, options, context, { sheet, heads, ...(await planned(kind, sheet, heads, before, options, context)) });
  return entering(
    root,
    () => `import ${options.kind} ${sheet.name}`,
    async (writer) => {
      // As the store stands now that nobody else writes to it.
      const now = await readEntry(root, shell);
      const { plan, texts } = await planned(kind, sheet, heads, now, options, context);
      if (plan.faults.length > 0) return answer(kind, options, context, { sheet, heads, plan, texts });
      await writeTexts(writer, texts, now.known);
      const kept = keep && (await keepColumns(writer, kind, heads));
      const files = [...texts.keys(), ...(kept ? ['import.yaml'] : [])];
      const { plannedCounts } = await import('../report/import-text.js');
      const message = `Record ${plannedCounts([...plan.added, ...plan.changed])}${shell === undefined ? '' : ` of ${shell}`} from ${sheet.name}`;
      const said = options.commit && files.length > 0 ? await committed(root, files, message) : undefined;
      return answer(kind, options, context, { sheet, heads, plan, texts, ...(said === undefined ? {} : { said }) });
    },
  );
}

async function bytesOf(file: string, context: Context): Promise<Uint8Array> {
  const { readGivenFile } = await import('../../store/given-file.js');
  return readGivenFile(path.resolve(context.io.cwd, file), file, LARGEST_BYTES, 'a sheet of records');
}

/** A sheet larger than this was not typed by a shop. */
const LARGEST_BYTES = 20 * 1024 * 1024;

interface Planned {
  readonly plan: SheetPlan;
  readonly texts: ReadonlyMap<string, string>;
}

async function planned(
  word: SheetWord,
  sheet: SheetTable,
  heads: readonly SheetHeader[],
  { known }: OpenEntry,
  options: Options,
  context: Context,
): Promise<Planned> {
  const [{ habitsOf }, { planSheet }, { LARGEST_BYTES }] = await Promise.all([
    import('../../entry/habits.js'),
    import('../../entry/sheet-plan.js'),
    import('../../store/taken.js'),
  ]);
  const { told, ...habits } = habitsOf(sheet, heads, options.habits);
  for (const one of told) context.tell(`${sheet.name}: ${one}.`);
  context.progress(`Comparing ${sheet.rows.length} rows`);
  const { into, medium, ahead } = options;
  const named = { ...(into === undefined ? {} : { into }), ...(medium === undefined ? {} : { medium }) };
  return planSheet({ word, sheet, heads, known, habits, ahead, ...named }, LARGEST_BYTES);
}

async function answer(
  kind: SheetWord,
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
