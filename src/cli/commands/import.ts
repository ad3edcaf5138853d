import path from 'node:path';
import type { SaidHabits } from '../../entry/habits.js';
import type { SheetHeader } from '../../entry/headers.js';
import type { SheetTable } from '../../entry/sheet.js';
import type { SheetWord } from '../../entry/sheet-form.js';
import type { PlannedSheet } from '../../entry/sheet-plan.js';
import { MEDIA, type Medium } from '../../records/names.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import { formerOption } from '../former-options.js';
import { gather } from '../gather.js';
import { confirmedColumns } from '../import-columns.js';
import type { Status } from '../io.js';
import { committed, type OpenEntry, readEntry, sheetAndShell, storeOf, writeTexts } from '../open-entry.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly kind: string;
  readonly file: string;
  /** Of floor pages; of anything else the one. */
  readonly files: readonly string[];
  readonly shell: string | undefined;
  readonly map: readonly string[];
  readonly heads: number | undefined;
  /** Of a workbook. */
  readonly sheet: string | undefined;
  readonly habits: SaidHabits;
  readonly into: string | undefined;
  readonly medium: Medium | undefined;
  readonly dryRun: boolean;
  readonly yes: boolean;
  readonly ahead: boolean;
  /** What is done about rows that are gone from a sheet. */
  readonly gone: 'ask' | 'keep' | 'mark';
  readonly keep: boolean;
  readonly commit: boolean;
  /** Of drawings: what their layers are, and the unit of one that does not say. */
  readonly layers: readonly string[];
  readonly unit: string | undefined;
}

const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

export function declareImport(registry: Registry): void {
  registry
    .add('import <kind> <files...>', 'adds records from a sheet (CSV or XLSX) and updates those already there', [
      'shellbook import members cutlist.csv --shell QF-007 --dry-run',
      "shellbook import members cut.csv --shell QF-007 --map 'Shape=section' --yes",
      'shellbook import wires wirelist.csv --shell QF-007 --medium dc',
      'shellbook import notes QF-007-notes.json',
      "shellbook import dxf frame.dxf --shell QF-007 --layer 'FLOOR=member, section=RT2x2x1/8, alloy=6061-T6' --dry-run",
      'shellbook import floor QF-007-floor-*.json --shell QF-007',
    ])
    .option('--shell <shell>', 'the shell the records belong to')
    .option('--dry-run', 'show what would change, and write nothing')
    .option('--map <column=key>', 'which key a column holds; skip leaves it out (may be repeated)', gather)
    .option('--yes', 'accept columns whose names are close, and leave out those that fit nothing')
    .option('--keep', 'remember the columns in import.yaml for the next sheet')
    .option('--allow-missing', 'accept records that name others not entered yet')
    .option('--header-row <row>', 'the row that names the columns, if it is not found')
    .option('--sheet <name>', 'the sheet of a workbook, by name or number, if it is not the first')
    .addOption(formerOption('--ahead'))
    .addOption(formerOption('--heads <row>'))
    .option('--decimal-comma', 'a comma is the decimal mark: 5,25')
    .option('--decimal-point', 'a comma separates thousands: 14,600')
    .option('--dates <order>', 'how 2/11/2026 is read: m/d/y or d/m/y')
    .option('--gone <what>', 'what to do with records whose rows are gone from the sheet: ask, keep them, or mark them (x-gone)')
    .option('--into <file>', 'the file for new records, such as members-floor or dc-house')
    .option('--medium <medium>', 'for wires and pipes: what they carry, if no service says (dc, ac, water, gas …)')
    .option('--layer <layer=what>', 'for a drawing: what the pieces on a layer are; skip leaves it out (may be repeated)', gather)
    .option('--unit <unit>', 'the unit of a drawing that names none: in, ft, mm, cm or m')
    .option('--commit', 'commit what was written')
    .action(registry.run(([kind, files], given) => read(kind as string, files as readonly string[], given), importAny));
}

function read(kind: string, files: readonly string[], given: Readonly<Record<string, unknown>>): Options {
  const [file, second] = files as readonly [string, ...string[]];
  if (second !== undefined && kind !== 'floor')
    throw new UserError(`Found ${second} after ${file}, expected one file: only floor takes several at once`);
  const heads = given.headerRow === undefined ? undefined : Number(given.headerRow);
  if (heads !== undefined && (!Number.isInteger(heads) || heads < 1))
    throw new UserError(`Found --header-row ${String(given.headerRow)}, expected the number of a row, as 3`);
  const dates = text(given.dates);
  if (dates !== undefined && dates !== 'm/d/y' && dates !== 'd/m/y')
    throw new UserError(`Found --dates ${dates}, expected m/d/y or d/m/y`);
  const gone = text(given.gone) ?? 'ask';
  if (!['ask', 'keep', 'mark'].includes(gone)) throw new UserError(`Found --gone ${gone}, expected ask, keep or mark`);
  const medium = text(given.medium);
  if (medium !== undefined && !(MEDIA as readonly string[]).includes(medium))
    throw new UserError(`Found --medium ${medium}, expected one of ${MEDIA.join(', ')}`);
  return {
    kind,
    file,
    files,
    shell: text(given.shell),
    map: (given.map ?? []) as readonly string[],
    heads,
    sheet: text(given.sheet),
    habits: {
      ...(given.decimalComma === true ? { decimalComma: true } : given.decimalPoint === true ? { decimalComma: false } : {}),
      ...(dates === undefined ? {} : { dates }),
    },
    into: text(given.into),
    medium: medium as Medium | undefined,
    dryRun: given.dryRun === true,
    yes: given.yes === true,
    ahead: given.allowMissing === true,
    gone: gone as Options['gone'],
    keep: given.keep === true,
    commit: given.commit === true,
    layers: (given.layer ?? []) as readonly string[],
    unit: text(given.unit),
  };
}

async function importAny(options: Options, context: Context): Promise<Status> {
  if (options.kind === 'floor') return (await import('../import-floor.js')).importFloor(options, context);
  if (options.kind === 'notes') return (await import('../import-notes.js')).importNotes(options, context);
  if (options.kind.toLowerCase() === 'dxf') {
    const { importDrawing } = await import('../import-drawing.js');
    return importDrawing(options, context);
  }
  return importSheet(options, context);
}

async function importSheet(options: Options, context: Context): Promise<Status> {
  const [{ readAnySheet }, { entering }] = await Promise.all([import('../../entry/any-sheet.js'), import('../entering.js')]);
  const { kind, shell } = await sheetAndShell(options.kind, options.shell);
  const root = await storeOf(context);
  const { table: sheet, told } = await readAnySheet(path.basename(options.file), await bytesOf(options.file, context), {
    word: kind,
    ...(options.heads === undefined ? {} : { headRow: options.heads }),
    ...(options.sheet === undefined ? {} : { sheet: options.sheet }),
  });
  for (const one of told) context.tell(`${sheet.name}: ${one}.`);
  const before = await readEntry(root, shell);
  const { heads, keep } = await confirmedColumns(kind, sheet, before, options, context);
  const { markGone, forget } = await whatOfGone(kind, sheet, heads, before, options, context);
  if (options.dryRun)
    return answer(kind, options, context, { sheet, heads, ...(await planned(kind, sheet, heads, before, options, context)) });
  return entering(
    root,
    () => `import ${options.kind} ${sheet.name}`,
    async (writer) => {
      // As the store stands now that nobody else writes to it.
      const now = await readEntry(root, shell);
      const { plan, texts, gone } = await planned(kind, sheet, heads, now, { ...options, markGone }, context);
      if (plan.faults.length > 0) return answer(kind, options, context, { sheet, heads, plan, texts, gone });
      await writeTexts(writer, texts, now.known);
      const ids = await idsToRemember(kind, { plan, gone: forget ? [] : gone }, now.known);
      const kept = await keepSheet(writer, kind, { name: sheet.name, ids, ...(keep ? { heads } : {}) }, shell);
      const files = [...texts.keys(), ...(kept ? ['import.yaml'] : [])];
      const { plannedCounts } = await import('../report/import-text.js');
      const message = `Record ${plannedCounts([...plan.added, ...plan.changed])}${shell === undefined ? '' : ` of ${shell}`} from ${sheet.name}`;
      const said = options.commit && files.length > 0 ? await committed(root, files, message) : undefined;
      return answer(kind, options, context, {
        sheet,
        heads,
        plan,
        texts,
        gone: forget ? [] : gone,
        ...(said === undefined ? {} : { said }),
      });
    },
  );
}

/** Asks at a terminal what is to become of records whose rows are gone; elsewhere they are named. */
async function whatOfGone(
  kind: SheetWord,
  sheet: SheetTable,
  heads: readonly SheetHeader[],
  before: OpenEntry,
  options: Options,
  context: Context,
): Promise<{ readonly markGone: boolean; readonly forget: boolean }> {
  if (options.gone !== 'ask' || options.dryRun) return { markGone: options.gone === 'mark', forget: options.gone === 'keep' };
  const asker = await context.io.ask?.();
  if (!asker) return { markGone: false, forget: false };
  const { gone, plan } = await planned(kind, sheet, heads, await readEntry(before.root, before.known.shell), options, context);
  if (gone.length === 0 || plan.faults.length > 0) return { markGone: false, forget: false };
  const names = gone.length > 8 ? `${gone.slice(0, 8).join(', ')} and ${gone.length - 8} more` : gone.join(', ');
  const said = await asker.choose({
    text: `Gone from ${sheet.name} but still in the records: ${names}. What of them?`,
    choices: [
      { value: 'later', name: 'leave them, and ask again next time' },
      { value: 'mark', name: 'mark them (x-gone)' },
      { value: 'keep', name: 'keep them, and say no more' },
    ],
  });
  return { markGone: said === 'mark', forget: said === 'keep' };
}

async function idsToRemember(
  kind: SheetWord,
  { plan, gone }: Pick<PlannedSheet, 'plan' | 'gone'>,
  known: OpenEntry['known'],
): Promise<readonly string[]> {
  const { idsInSheet } = await import('../../entry/gone.js');
  return [...idsInSheet(kind, plan, known), ...gone];
}

/** What the sheet held, and, where wanted, what its columns are read as, is kept in import.yaml: at one stroke. */
async function keepSheet(
  writer: { update(file: string, change: (old: string | null) => string): Promise<boolean> },
  kind: SheetWord,
  { name, ids, heads }: { readonly name: string; readonly ids: readonly string[]; readonly heads?: readonly SheetHeader[] },
  shell: string | undefined,
): Promise<boolean> {
  const [{ withRemembered }, { withKept }, { COLUMNS_FILE }] = await Promise.all([
    import('../../entry/gone.js'),
    import('../../entry/mapping.js'),
    import('../../store/layout.js'),
  ]);
  return writer.update(COLUMNS_FILE, (old) => withRemembered(heads ? withKept(old, kind, heads) : old, shell, kind, name, ids));
}

async function bytesOf(file: string, context: Context): Promise<Uint8Array> {
  const { readGivenFile } = await import('../../store/given-file.js');
  return readGivenFile(path.resolve(context.io.cwd, file), file, LARGEST_BYTES, 'a sheet of records');
}

/** A sheet larger than this was not typed by a shop. */
const LARGEST_BYTES = 20 * 1024 * 1024;

async function planned(
  word: SheetWord,
  sheet: SheetTable,
  heads: readonly SheetHeader[],
  { known, text }: OpenEntry,
  options: Options & { readonly markGone?: boolean },
  context: Context,
): Promise<PlannedSheet> {
  const [{ habitsOf }, { planSheet }, { rememberedIds }, { LARGEST_BYTES }] = await Promise.all([
    import('../../entry/habits.js'),
    import('../../entry/sheet-plan.js'),
    import('../../entry/gone.js'),
    import('../../store/taken.js'),
  ]);
  const { told, ...habits } = habitsOf(sheet, heads, options.habits);
  for (const one of told) context.tell(`${sheet.name}: ${one}.`);
  context.progress(`Comparing ${sheet.rows.length} rows`);
  const { into, medium, ahead } = options;
  const named = { ...(into === undefined ? {} : { into }), ...(medium === undefined ? {} : { medium }) };
  const remembered = rememberedIds(text.files.get('import.yaml'), known.shell, word, sheet.name);
  const markGone = options.gone === 'mark' || options.markGone === true;
  return planSheet({ word, sheet, heads, known, habits, ahead, ...named, remembered, markGone }, LARGEST_BYTES);
}

async function answer(
  kind: SheetWord,
  options: Options,
  context: Context,
  done: PlannedSheet & { readonly sheet: SheetTable; readonly heads: readonly SheetHeader[]; readonly said?: string },
): Promise<Status> {
  const { importJson, importText } = await import('../report/import-text.js');
  const shown = { ...done, kind, dryRun: options.dryRun };
  context.print(context.settings.json ? importJson(shown, options.shell ?? null) : importText(shown));
  if (done.said !== undefined) context.tell(done.said);
  return done.plan.faults.length > 0 ? 2 : 0;
}
