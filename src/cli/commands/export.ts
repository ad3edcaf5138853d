import path from 'node:path';
import type { EntryKind } from '../../entry/homes.js';
import { UserError } from '../../user-error.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import { openStoreFor, requireShell, revisionOf } from '../open.js';
import { readEntry, storeOf } from '../open-entry.js';
import type { Registry } from '../registry.js';
import { shownPath } from '../shown-path.js';

interface Options {
  readonly kind: string;
  readonly shell: string | undefined;
  readonly template: boolean;
  readonly out: string | undefined;
  readonly cobie: boolean;
  readonly customer: boolean;
}

export function declareExport(registry: Registry): void {
  registry
    .add('export <kind> [shell]', 'writes records as CSV or XLSX that import reads back, or a template to fill in', [
      'shellbook export members QF-007 > members.csv',
      'shellbook export wires QF-007 > wires.csv',
      'shellbook export all QF-007 --out tables',
      'shellbook export all QF-007 --out records.xlsx',
      'shellbook export members QF-007 --template --out members.xlsx',
      'shellbook export dxf QF-007 --out coach.dxf',
      'shellbook export all QF-007 --cobie --out handover',
    ])
    .option('--out <path>', 'the folder to write to, or a workbook, as cut.xlsx (one table alone goes to standard output)')
    .option('--template', 'a workbook to fill in: units in the column heads, lists to pick from, an example row, help')
    .option('--cobie', 'hand-over sheets laid out like COBie: facility, spaces, systems, components, documents')
    .option('--with-customer', 'name the customer in the hand-over sheets')
    .action(
      registry.run(
        ([kind, shell], { out, cobie, withCustomer, template }) => ({
          kind: kind as string,
          shell: typeof shell === 'string' ? shell : undefined,
          template: template === true,
          out: typeof out === 'string' ? out : undefined,
          cobie: cobie === true,
          customer: withCustomer === true,
        }),
        exportTables,
      ),
    );
}

async function exportTables(options: Options, context: Context): Promise<Status> {
  if (options.template) return writeTemplate(options, context);
  if (options.kind.toLowerCase() === 'dxf') return writeDrawing(options, context);
  if (options.shell === undefined && !(await isOfLibrary(options.kind)))
    throw new UserError(`Whose ${options.kind}? Name the shell, as shellbook export ${options.kind} QF-007`);
  if (options.out !== undefined && /\.xlsx$/iu.test(options.out) && !options.cobie)
    return writeTables(options, options.out, context);
  const files = options.cobie ? await sheets(options, context) : csvFiles(await tables(options, context));
  if (options.out === undefined) {
    const [only, ...others] = [...files.values()];
    if (only === undefined || others.length > 0) throw new UserError('Several tables need a folder: --out tables');
    if (context.settings.json)
      throw new UserError('A table on standard output is CSV: name a folder with --out, or leave --json away');
    // To a file byte for byte; a terminal would obey what stands in it.
    if (context.io.out.terminal) context.print(only.replaceAll('\r\n', '\n').trimEnd());
    else context.io.out.write(only);
    return 0;
  }
  const dir = path.resolve(context.io.cwd, options.out);
  const { writeOut } = await import('../../store/write-out.js');
  const root = context.settings.book === undefined ? await storeOf(context) : undefined;
  for (const [name, text] of files) await writeOut(root, path.join(dir, name), text);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    context.print(envelope('export', options.shell ?? null, null, { folder: shownPath(dir, context), files: [...files.keys()] }));
  } else context.print(`Wrote ${[...files.keys()].join(', ')} to ${shownPath(dir, context)}.`);
  return 0;
}

async function isOfLibrary(word: string): Promise<boolean> {
  const { homeOf, kindNamed } = await import('../../entry/homes.js');
  const kind = kindNamed(word);
  return kind !== undefined && homeOf(kind).in === 'library';
}

interface NamedTable {
  readonly name: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const csvFiles = (all: { readonly tables: readonly NamedTable[]; readonly csv: CsvOf }): ReadonlyMap<string, string> =>
  new Map(all.tables.map(({ name, heads, rows }) => [`${name}.csv`, all.csv(heads, rows)]));

type CsvOf = (heads: readonly string[], rows: readonly (readonly string[])[]) => string;

/** Members, panels, openings and runs by layer, for a drawing office. */
async function writeDrawing(options: Options, context: Context): Promise<Status> {
  const { shell } = options;
  if (shell === undefined) throw new UserError('Whose drawing? Name the shell, as shellbook export dxf QF-007 --out coach.dxf');
  const [{ openShell }, { dxfOf }] = await Promise.all([import('../open.js'), import('../../entry/dxf/write.js')]);
  const store = await openStoreFor(context);
  await requireShell(store, shell, context);
  const { assessment } = await openShell(store, shell, context);
  const text = dxfOf(assessment.model.shell);
  if (options.out !== undefined) {
    const out = /\.dxf$/iu.test(options.out) ? options.out : path.join(options.out, `${shell}.dxf`);
    return writeFile(out, new TextEncoder().encode(text), options, context);
  }
  if (context.settings.json)
    throw new UserError('A drawing on standard output is DXF: name a file with --out, or leave --json away');
  context.io.out.write(text);
  return 0;
}

/** One workbook, a sheet a table. */
async function writeTables(options: Options, out: string, context: Context): Promise<Status> {
  const { writeWorkbook } = await import('../../entry/workbook/write.js');
  const { tables: all } = await tables(options, context);
  return writeFile(out, await writeWorkbook(all), options, context);
}

async function writeFile(out: string, bytes: Uint8Array, options: Options, context: Context): Promise<Status> {
  const file = path.resolve(context.io.cwd, out);
  const { writeOut } = await import('../../store/write-out.js');
  await writeOut(await storeOf(context).catch(() => undefined), file, bytes);
  if (context.settings.json) {
    const { envelope } = await import('../report/json.js');
    const folder = shownPath(path.dirname(file), context);
    context.print(envelope('export', options.shell ?? null, null, { folder, files: [path.basename(file)] }));
  } else context.print(`Wrote ${shownPath(file, context)}.`);
  return 0;
}

async function writeTemplate(options: Options, context: Context): Promise<Status> {
  const [{ sheetAndShell }, { templateSheets }, { writeWorkbook }, { exampleTexts }, { readKnown }] = await Promise.all([
    import('../open-entry.js'),
    import('../../entry/workbook/template.js'),
    import('../../entry/workbook/write.js'),
    import('../../store/starter.js'),
    import('../../entry/record-index.js'),
  ]);
  const { kind: word } = await sheetAndShell(options.kind, options.shell ?? 'any');
  const { known, text } = await readEntry(await storeOf(context), options.shell);
  const examples = readKnown({ root: '', files: await exampleTexts('EXAMPLE'), photos: new Map() }, 'EXAMPLE');
  const units = /^units:\s*metric\b/mu.test(text.files.get('shop.yaml') ?? '') ? 'metric' : 'us';
  const sheets = templateSheets({ word, known, examples, units });
  const out = options.out ?? `${options.kind}.xlsx`;
  if (!/\.xlsx$/iu.test(out))
    throw new UserError(
      `Found --out ${out}, expected the name of a workbook: a template is always XLSX, as --out ${options.kind}.xlsx`,
    );
  return writeFile(out, await writeWorkbook(sheets), options, context);
}

/** Each table with the name of its file. Of `all`, tables without records are left out. */
async function tables(
  options: Options,
  context: Context,
): Promise<{ readonly tables: readonly NamedTable[]; readonly csv: CsvOf }> {
  const [{ ENTRY_KINDS, homeOf, kindNamed }, { csvOf, tableName, tableOf }, { isList, sheetNamed }] = await Promise.all([
    import('../../entry/homes.js'),
    import('../../entry/table.js'),
    import('../../entry/sheet-form.js'),
  ]);
  const { known } = await readEntry(await storeOf(context), options.shell);
  const word = sheetNamed(options.kind);
  if (word !== undefined && isList(word)) {
    const { listTable } = await import('../../entry/lists/table.js');
    return { tables: [{ name: `${word}s`, ...listTable(word, known) }], csv: csvOf };
  }
  const named = options.kind === 'all' ? undefined : kindNamed(options.kind);
  if (options.kind !== 'all' && named === undefined) {
    const { didYouMean } = await import('../../source/nearest.js');
    throw new UserError(
      `No record kind ${options.kind}${didYouMean(options.kind, ['all', 'wires', 'pipes', ...ENTRY_KINDS.flatMap((one) => [one, `${one}s`])]) || `, expected all, wires, pipes or one of ${ENTRY_KINDS.join(', ')}`}`,
    );
  }
  const wanted: readonly EntryKind[] = named
    ? [named]
    : ENTRY_KINDS.filter((kind) => homeOf(kind).in !== 'library' && known.ofKind(kind).length > 0);
  return { tables: wanted.map((kind) => ({ name: tableName(kind), ...tableOf(kind, known) })), csv: csvOf };
}

async function sheets(options: Options, context: Context): Promise<ReadonlyMap<string, string>> {
  if (options.kind !== 'all')
    throw new UserError('Hand-over sheets cover the whole shell: shellbook export all SHELL --cobie --out DIR');
  const [{ openShell }, { cobieSheets }, { csvOf }, { forEdition }, { hiddenFrom }, { cleanText }] = await Promise.all([
    import('../open.js'),
    import('../../entry/cobie/index.js'),
    import('../../entry/table.js'),
    import('../../book/editions.js'),
    import('../../book/redact/hidden.js'),
    import('../../book/redact/text.js'),
  ]);
  const store = await openStoreFor(context);
  const shell = options.shell as string;
  await requireShell(store, shell, context);
  const opened = await openShell(store, shell, context);
  // What is handed over is the owner's: it names no welder, and the customer only where asked.
  const { model } = forEdition(opened.assessment, 'owner');
  const hidden = hiddenFrom(opened.assessment.model, options.customer ? 'owner' : 'service');
  const clean = (rows: readonly (readonly string[])[]) => rows.map((row) => row.map((cell) => cleanText(cell, hidden)));
  const made = cobieSheets(model, {
    createdOn: opened.standing?.last?.date ?? null,
    revision: revisionOf(opened),
    customer: options.customer,
  });
  return new Map(made.map(({ name, heads, rows }) => [`${name}.csv`, csvOf(heads, clean(rows))]));
}
