import type { SheetHeader } from '../entry/headers.js';
import type { SheetTable } from '../entry/sheet.js';
import type { SheetWord } from '../entry/sheet-form.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { OpenEntry } from './open-entry.js';

/** How sure the person wants to be of the columns. */
export interface ColumnOptions {
  readonly map: readonly string[];
  readonly yes: boolean;
  readonly dryRun: boolean;
  readonly keep: boolean;
}

/** The columns, each certain or confirmed by the person or by --yes. Throws {@link UserError} with what to say otherwise. */
export async function confirmedColumns(
  kind: SheetWord,
  sheet: SheetTable,
  { text, known }: OpenEntry,
  options: ColumnOptions,
  context: Context,
): Promise<{ readonly heads: readonly SheetHeader[]; readonly keep: boolean }> {
  const [{ matchHeads, unreadMass }, { keptColumns, ownWords, saidColumns }, report] = await Promise.all([
    import('../entry/headers.js'),
    import('../entry/mapping.js'),
    import('./report/import-columns-text.js'),
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
  if (open.length > 0 || options.dryRun) context.tell(report.columnsText(sheet, heads));
  if (open.length === 0 || options.yes || options.dryRun) return { heads, keep };
  const asker = await context.io.ask?.();
  if (asker && (await asker.confirm({ text: 'Are the columns read right?', usual: true }))) {
    return { heads, keep: keep || (await asker.confirm({ text: 'Keep them in import.yaml for the next sheet?', usual: true })) };
  }
  throw new UserError(report.columnsAdvice(sheet, heads));
}
