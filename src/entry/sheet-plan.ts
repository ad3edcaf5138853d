import type { Medium } from '../records/names.js';
import type { ListPlace } from './append.js';
import type { Habits } from './cells.js';
import type { SheetHeader } from './headers.js';
import type { EntryKind } from './homes.js';
import { type ListPlan, planList } from './lists/plan.js';
import { listTexts } from './lists/texts.js';
import { type CellChange, type ImportPlan, planImport } from './plan.js';
import type { IndexedRecord, RecordIndex } from './record-index.js';
import type { SheetFault } from './rows.js';
import type { SheetTable } from './sheet.js';
import { isList, type SheetWord } from './sheet-form.js';
import { textsOf } from './texts.js';
import type { Data } from './yaml-text.js';

/** What taking a sheet in would do, whatever the sheet is of. */
export interface SheetPlan {
  readonly added: readonly {
    readonly kind: EntryKind;
    readonly id: string;
    readonly data: Data;
    readonly place: ListPlace;
    readonly row: number;
  }[];
  readonly changed: readonly {
    readonly kind: EntryKind;
    readonly record: IndexedRecord;
    readonly data: Data;
    readonly changes: readonly CellChange[];
    readonly row: number;
  }[];
  readonly unchanged: readonly string[];
  readonly faults: readonly SheetFault[];
  readonly ahead: readonly SheetFault[];
}

export interface SheetOf {
  readonly word: SheetWord;
  readonly sheet: SheetTable;
  readonly heads: readonly SheetHeader[];
  readonly known: RecordIndex;
  readonly habits: Habits;
  readonly into?: string;
  readonly medium?: Medium;
  readonly ahead: boolean;
}

/** The plan, and the new text of each file; none where something is wrong. */
export function planSheet(
  of: SheetOf,
  mostBytes: number,
): { readonly plan: SheetPlan; readonly texts: ReadonlyMap<string, string> } {
  const { word, known } = of;
  const none = new Map<string, string>();
  if (isList(word)) {
    const plan: ListPlan = planList({ ...of, word });
    return { plan, texts: plan.faults.length > 0 ? none : listTexts(plan, known) };
  }
  const plan: ImportPlan = planImport({ ...of, kind: word });
  const texts = plan.faults.length > 0 ? none : textsOf(word, plan, known, undefined, mostBytes);
  const ofKind = <T>(one: T) => ({ ...one, kind: word });
  return { plan: { ...plan, added: plan.added.map(ofKind), changed: plan.changed.map(ofKind) }, texts };
}
