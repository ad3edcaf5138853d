import type { ListPlace } from './append.js';
import type { EntryKind } from './homes.js';
import type { CellChange } from './plan.js';
import type { IndexedRecord } from './record-index.js';
import type { SheetFault } from './rows.js';
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
