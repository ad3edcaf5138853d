import { type SheetHeader, UNREAD } from '../../entry/headers.js';
import { countOf, type EntryKind } from '../../entry/homes.js';
import type { CellChange, ImportPlan } from '../../entry/plan.js';
import { placeInSheet } from '../../entry/rows.js';
import { columnName, type SheetTable } from '../../entry/sheet.js';
import { flow } from '../../entry/yaml-text.js';
import { envelope } from './json.js';
import { textTable } from './tables.js';
import { counted, paragraph } from './wrap.js';

/** What an import did, or would do. */
export interface Imported {
  readonly kind: EntryKind;
  readonly sheet: SheetTable;
  readonly heads: readonly SheetHeader[];
  readonly plan: ImportPlan;
  readonly texts: ReadonlyMap<string, string>;
  readonly dryRun: boolean;
}

const NOT_THERE = 'which is nowhere in the records';
const LATER = 'Records that others name come first. Where two kinds name each other, add --allow-missing to the first.';

/** Beyond this many, like lines are only counted. */
const SHOWN = 20;

export function importText({ kind, sheet, plan, texts, dryRun }: Imported): string {
  const { added, changed, unchanged, faults } = plan;
  if (faults.length > 0) {
    const lines = faults.slice(0, SHOWN).map((fault) => paragraph(`${placeInSheet(fault, sheet.heads)}: ${fault.message}`, '  '));
    const more = faults.length > SHOWN ? [`  and ${faults.length - SHOWN} more`] : [];
    if (faults.some(({ message }) => message.includes(NOT_THERE))) more.push(paragraph(LATER));
    return [`${sheet.name}: ${counted(faults.length, 'fault')}, nothing was written.`, ...lines, ...more].join('\n');
  }
  const verb = dryRun ? 'would be ' : '';
  const lines = [
    `${sheet.name}: ${countOf(added.length, kind)} ${verb}added, ${changed.length} ${verb}changed, ${unchanged.length} already there.`,
    ...[...texts.keys()].map((file) => {
      const [fresh, other] = [added.filter((one) => one.place.file === file), changed.filter((one) => one.record.file === file)];
      return `  ${file}: ${[fresh.length > 0 ? `${fresh.length} added` : '', other.length > 0 ? `${other.length} changed` : ''].filter((part) => part !== '').join(', ')}`;
    }),
    ...limited(added, ({ id }) => `  + ${id}`, dryRun),
    ...(plan.ahead.length > 0 ? [`Not there yet, ${counted(plan.ahead.length, 'name')}; check tells them until they are:`] : []),
    ...limited(plan.ahead, (fault) => `  ? ${placeInSheet(fault, sheet.heads)}: ${fault.message}`, true),
    ...limited(changed, ({ record, changes }) => `  ~ ${record.id}: ${changes.map(changeText).join('; ')}`, true),
  ];
  return lines.join('\n');
}

function limited<T>(list: readonly T[], text: (one: T) => string, wanted: boolean): readonly string[] {
  if (!wanted) return [];
  const more = list.length > SHOWN ? [`  and ${list.length - SHOWN} more`] : [];
  return [...list.slice(0, SHOWN).map((one) => paragraph(text(one).trim(), '  ')), ...more];
}

const changeText = ({ path, old, new: now }: CellChange): string =>
  `${path.map((step) => (typeof step === 'number' ? step + 1 : step)).join('.')} ${old === undefined ? 'is now' : `${flow(old)} →`} ${flow(now)}`;

/** The columns as they are understood. */
export function columnsText(sheet: SheetTable, heads: readonly SheetHeader[]): string {
  const rows = heads
    .filter(({ text }) => text !== '')
    .map((head) => [columnName(head.index), head.text, head.column?.key ?? 'not read', head.unit ?? '', NOTES[head.how]]);
  return `Columns of ${sheet.name}:\n${textTable([{ head: '' }, { head: 'column' }, { head: 'read as' }, { head: 'unit' }, { head: '' }], rows, '  ')}`;
}

const NOTES: Readonly<Record<SheetHeader['how'], string>> = {
  certain: '',
  close: 'by a close name: is it right?',
  unknown: 'fits no key',
  unread: '',
  wrong: 'wrong',
};

export function columnsAdvice(sheet: SheetTable, heads: readonly SheetHeader[]): string {
  const example = heads.find(({ how }) => how === 'close') ?? heads.find(({ how }) => how === 'unknown');
  return `${sheet.name}: some columns are not certain. If they are read right, add --yes (and --keep for the next sheet). Otherwise say what they are, as --map '${example?.text}=${example?.column?.key ?? UNREAD}', or in import.yaml. Nothing was written.`;
}

export const noColumns = (kind: EntryKind, sheet: SheetTable): string =>
  `${sheet.name}: no column fits a ${kind}: ${sheet.heads.filter((head) => head !== '').join(', ')}. Its keys: shellbook add ${kind} --help`;

export function importJson({ plan, texts, dryRun, sheet, heads }: Imported, shell: string | null): string {
  return envelope('import', shell, null, {
    sheet: sheet.name,
    dry_run: dryRun,
    columns: heads.map(({ text, column, unit, how }) => ({ head: text, key: column?.key ?? null, unit: unit ?? null, how })),
    added: plan.added.map(({ id, place, row }) => ({ id, file: place.file, row })),
    changed: plan.changed.map(({ record, changes, row }) => ({
      id: record.id ?? null,
      file: record.file,
      row,
      keys: changes.map(({ path }) => path.join('.')),
    })),
    unchanged: plan.unchanged.length,
    ahead: plan.ahead.map(({ row, message }) => ({ row, message })),
    faults: plan.faults.map(({ row, column, message }) => ({
      row,
      column: column === undefined ? null : columnName(column),
      message,
    })),
    files: [...texts.keys()],
  });
}
