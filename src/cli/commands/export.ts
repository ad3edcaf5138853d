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
  readonly shell: string;
  readonly out: string | undefined;
  readonly cobie: boolean;
  readonly customer: boolean;
}

export function declareExport(registry: Registry): void {
  registry
    .add('export <kind> <shell>', 'the records of a kind, or all of them, as CSV tables that import reads back', [
      'shellbook export members QF-007 > members.csv',
      'shellbook export wires QF-007 > wires.csv',
      'shellbook export all QF-007 --out tables',
      'shellbook export all QF-007 --cobie --out handover',
    ])
    .option('--out <dir>', 'the folder to write to (one table alone goes to standard output)')
    .option('--cobie', 'hand-over sheets in the COBie manner: facility, spaces, systems, components, documents')
    .option('--with-customer', 'name the customer in the hand-over sheets')
    .action(
      registry.run(
        ([kind, shell], { out, cobie, withCustomer }) => ({
          kind: kind as string,
          shell: shell as string,
          out: typeof out === 'string' ? out : undefined,
          cobie: cobie === true,
          customer: withCustomer === true,
        }),
        exportTables,
      ),
    );
}

async function exportTables(options: Options, context: Context): Promise<Status> {
  const files = options.cobie ? await sheets(options, context) : await tables(options, context);
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
    context.print(envelope('export', options.shell, null, { folder: shownPath(dir, context), files: [...files.keys()] }));
  } else context.print(`Wrote ${[...files.keys()].join(', ')} to ${shownPath(dir, context)}.`);
  return 0;
}

/** Name of each file → its text. Of `all`, tables without records are left out. */
async function tables(options: Options, context: Context): Promise<ReadonlyMap<string, string>> {
  const [{ ENTRY_KINDS, homeOf, kindNamed }, { csvOf, tableName, tableOf }, { isList, sheetNamed }] = await Promise.all([
    import('../../entry/homes.js'),
    import('../../entry/table.js'),
    import('../../entry/sheet-form.js'),
  ]);
  const { known } = await readEntry(await storeOf(context), options.shell);
  const word = sheetNamed(options.kind);
  if (word !== undefined && isList(word)) {
    const { listTable } = await import('../../entry/lists/table.js');
    const { heads, rows } = listTable(word, known);
    return new Map([[`${word}s.csv`, csvOf(heads, rows)]]);
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
  return new Map(
    wanted.map((kind) => {
      const { heads, rows } = tableOf(kind, known);
      return [`${tableName(kind)}.csv`, csvOf(heads, rows)] as const;
    }),
  );
}

async function sheets(options: Options, context: Context): Promise<ReadonlyMap<string, string>> {
  if (options.kind !== 'all')
    throw new UserError('Hand-over sheets are of the whole shell: shellbook export all SHELL --cobie --out DIR');
  const [{ openShell }, { cobieSheets }, { csvOf }, { forEdition }, { hiddenFrom }, { cleanText }] = await Promise.all([
    import('../open.js'),
    import('../../entry/cobie/index.js'),
    import('../../entry/table.js'),
    import('../../book/editions.js'),
    import('../../book/redact/hidden.js'),
    import('../../book/redact/text.js'),
  ]);
  const store = await openStoreFor(context);
  await requireShell(store, options.shell, context);
  const opened = await openShell(store, options.shell, context);
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
