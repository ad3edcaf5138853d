import type { SheetHeader } from '../../entry/headers.js';
import { countOf, type EntryKind } from '../../entry/homes.js';
import type { CellChange } from '../../entry/plan.js';
import { placeInSheet } from '../../entry/rows.js';
import { columnName, type SheetTable } from '../../entry/sheet.js';
import type { SheetWord } from '../../entry/sheet-form.js';
import { isList } from '../../entry/sheet-form.js';
import type { SheetPlan } from '../../entry/sheet-plan.js';
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
    `${sheet.name}: ${isList(kind) ? plannedCounts(added) : countOf(added.length, kind)} ${verb}added, ${changed.length} ${verb}changed, ${unchanged.length} already there.`,
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

export function importJson({ plan, texts, dryRun, sheet, heads }: Imported, shell: string | null): string {
  return envelope('import', shell, null, {
    sheet: sheet.name,
    dry_run: dryRun,
    columns: heads.map(({ text, column, unit, how }) => ({ head: text, key: column?.key ?? null, unit: unit ?? null, how })),
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
    faults: plan.faults.map(({ row, column, message }) => ({
      row,
      column: column === undefined ? null : columnName(column),
      message,
    })),
    files: [...texts.keys()],
  });
}
