import type { SheetHeader } from '../../entry/headers.js';
import { countOf, type EntryKind } from '../../entry/homes.js';
import { placeInSheet, type SheetFault } from '../../entry/rows.js';
import { columnName, type SheetTable } from '../../entry/sheet.js';
import type { CellChange, SheetPlan } from '../../entry/sheet-changes.js';
import type { SheetWord } from '../../entry/sheet-form.js';
import { isList } from '../../entry/sheet-form.js';
import { understood } from '../../entry/understood.js';
import { flow } from '../../entry/yaml-text.js';
import { envelope } from './json.js';
import { counted, paragraph } from './wrap.js';

/** What an import did, or would do. */
export interface Imported {
  readonly kind: SheetWord;
  readonly sheet: SheetTable;
  readonly heads: readonly SheetHeader[];
  readonly plan: SheetPlan;
  readonly texts: ReadonlyMap<string, string>;
  readonly dryRun: boolean;
  /** Ids of records whose rows are gone from the sheet. */
  readonly gone: readonly string[];
}

/** So many new records are shown with all that was understood. */
const FIRST = 3;

/** The first new records, or all that the first row of a list makes. */
const firstOf = ({ added }: SheetPlan, kind: SheetWord): SheetPlan['added'] =>
  isList(kind) ? added.filter(({ row }) => row === added[0]?.row) : added.slice(0, FIRST);

function firstRows(first: SheetPlan['added'], kind: SheetWord): readonly string[] {
  const named = (one: { readonly kind: EntryKind; readonly id: string }): string =>
    isList(kind) ? `${one.kind} ${one.id}` : one.id;
  const shown = first.map((one) => paragraph(`+ ${named(one)} (row ${one.row}): ${understood(one.kind, one.data)}`, '  '));
  return shown.length > 0 ? ['The first ones, as read:', ...shown] : [];
}

const goneText = (sheet: SheetTable, gone: readonly string[]): string =>
  paragraph(
    `Gone from ${sheet.name} but still in the records: ${gone.slice(0, SHOWN).join(', ')}${gone.length > SHOWN ? ` and ${gone.length - SHOWN} more` : ''}. Take them out by hand if they are gone from the coach; --gone mark marks them (x-gone), --gone keep leaves them without asking again.`,
  );

/** Faults of one column that say the same, but for ids and figures. */
function likeFaults(faults: readonly SheetFault[]): readonly (readonly SheetFault[])[] {
  const groups = new Map<string, SheetFault[]>();
  for (const fault of faults) {
    const words = fault.message
      .replace(/`[^`]*`/gu, '`')
      .replace(/\b(of|for|in) ([a-z]+(?: [a-z]+)?) \S*[^\s,.]/gu, '$1 $2')
      .replace(/\d+/gu, '0');
    const key = `${fault.column ?? ''} ${words}`;
    groups.set(key, [...(groups.get(key) ?? []), fault]);
  }
  return [...groups.values()];
}

function faultText(group: readonly SheetFault[], heads: readonly string[]): string {
  const [first, ...others] = group as readonly [SheetFault, ...SheetFault[]];
  const rows = [...new Set(others.map(({ row }) => row))].filter((row) => row !== first.row);
  const more = rows.length > 6 ? ` and ${rows.length - 6} more` : '';
  const alike =
    rows.length === 0 ? '' : ` (the same in row${rows.length === 1 ? '' : 's'} ${rows.slice(0, 6).join(', ')}${more})`;
  return `${placeInSheet(first, heads)}: ${first.message}${alike}`;
}

const NOT_THERE = 'which is nowhere in the records';
const LATER = 'Import the records that others name first. If two kinds name each other, add --allow-missing to the first.';

/** Beyond this many, like lines are only counted. */
const SHOWN = 20;

export function importText({ kind, sheet, plan, texts, dryRun, gone }: Imported): string {
  const { added, changed, unchanged, faults } = plan;
  if (faults.length > 0) {
    const groups = likeFaults(faults);
    const lines = groups.slice(0, SHOWN).map((group) => paragraph(faultText(group, sheet.heads), '  '));
    const more = groups.length > SHOWN ? [`  and ${groups.length - SHOWN} more kinds`] : [];
    if (faults.some(({ message }) => message.includes(NOT_THERE))) more.push(paragraph(LATER));
    return [`${sheet.name}: ${counted(faults.length, 'fault')}, nothing was written.`, ...lines, ...more].join('\n');
  }
  const verb = dryRun ? 'would be ' : '';
  const first = dryRun ? firstOf(plan, kind) : [];
  const lines = [
    `${sheet.name}: ${isList(kind) ? plannedCounts(added) : countOf(added.length, kind)} ${verb}added, ${changed.length} ${verb}changed, ${unchanged.length} already there.`,
    ...[...texts.keys()].map((file) => {
      const [fresh, other] = [added.filter((one) => one.place.file === file), changed.filter((one) => one.record.file === file)];
      return `  ${file}: ${[fresh.length > 0 ? `${fresh.length} added` : '', other.length > 0 ? `${other.length} changed` : ''].filter((part) => part !== '').join(', ')}`;
    }),
    ...(dryRun ? firstRows(first, kind) : []),
    ...limited(
      added.filter((one) => !first.includes(one)),
      ({ id }) => `  + ${id}`,
      dryRun,
    ),
    ...(plan.ahead.length > 0
      ? [`Not entered yet: ${counted(plan.ahead.length, 'name')}; check lists them until they are:`]
      : []),
    ...limited(plan.ahead, (fault) => `  ? ${placeInSheet(fault, sheet.heads)}: ${fault.message}`, true),
    ...limited(changed, ({ record, changes }) => `  ~ ${record.id}: ${changes.map(changeText).join('; ')}`, true),
    ...(gone.length > 0 ? [goneText(sheet, gone)] : []),
  ];
  return lines.join('\n');
}

/** `60 circuits, 61 nodes and 60 runs`. */
export function plannedCounts(records: readonly { readonly kind: EntryKind }[]): string {
  const counts = new Map<EntryKind, number>();
  for (const { kind } of records) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const all = [...counts].map(([kind, count]) => countOf(count, kind));
  return all.length < 2 ? (all[0] ?? 'nothing') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

function limited<T>(list: readonly T[], text: (one: T) => string, wanted: boolean): readonly string[] {
  if (!wanted) return [];
  const more = list.length > SHOWN ? [`  and ${list.length - SHOWN} more`] : [];
  return [...list.slice(0, SHOWN).map((one) => paragraph(text(one).trim(), '  ')), ...more];
}

const changeText = ({ path, old, new: now }: CellChange): string =>
  `${path.map((step) => (typeof step === 'number' ? step + 1 : step)).join('.')} ${old === undefined ? 'is now' : `${flow(old)} →`} ${flow(now)}`;

/** What would become of the rows of a sheet or the pieces of a drawing, as the JSON answers have it. */
export const plannedRows = (plan: Pick<Imported['plan'], 'added' | 'changed' | 'unchanged' | 'ahead'>) => ({
  added: plan.added.map(({ kind, id, place, row }) => ({ kind, id, file: place.file, row })),
  changed: plan.changed.map(({ kind, record, changes, row }) => ({
    kind,
    id: record.id ?? null,
    file: record.file,
    row,
    keys: changes.map(({ path }) => path.join('.')),
  })),
  unchanged: plan.unchanged.length,
  ahead: plan.ahead.map(({ row, message }) => ({ row, message })),
});

export function importJson({ plan, texts, dryRun, sheet, heads, gone }: Imported, shell: string | null): string {
  return envelope('import', shell, null, {
    sheet: sheet.name,
    dry_run: dryRun,
    columns: heads.map(({ text, column, unit, how }) => ({ head: text, key: column?.key ?? null, unit: unit ?? null, how })),
    ...plannedRows(plan),
    faults: plan.faults.map(({ row, column, message }) => ({
      row,
      column: column === undefined ? null : columnName(column),
      message,
    })),
    gone,
    files: [...texts.keys()],
  });
}
