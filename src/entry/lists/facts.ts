import type { Finding } from '../../finding.js';
import type { Path } from '../../source/source.js';
import { withValue } from '../change.js';
import { inOrder } from '../options.js';
import type { IndexedRecord } from '../record-index.js';
import type { ReadHead, SheetFault } from '../rows.js';
import { sameTyped } from '../same.js';
import type { Data } from '../yaml-text.js';

export type LineKind = 'circuit' | 'node' | 'run';

/** One cell of a list: the row it stands in, its column, what it says. */
export interface CellFact {
  readonly path: Path;
  readonly value: unknown;
  readonly row: number;
  readonly head?: ReadHead;
}

/** All that the rows of a list say of one record. */
export class RecordFacts {
  readonly facts = new Map<string, CellFact>();
  private readonly usually: [string, unknown][] = [];

  constructor(
    readonly kind: LineKind,
    readonly id: string,
    readonly file: string,
    /** The first row that speaks of it. */
    readonly row: number,
    readonly record: IndexedRecord | undefined,
  ) {}

  /** What two rows say of one record must agree; gives the fault where it does not. */
  add(fact: CellFact): SheetFault | undefined {
    const key = JSON.stringify(fact.path);
    const before = this.facts.get(key);
    if (before === undefined) this.facts.set(key, fact);
    if (before === undefined || sameTyped(before.value, fact.value)) return undefined;
    return {
      row: fact.row,
      ...(fact.head ? { column: fact.head.index } : {}),
      message: `${this.kind} \`${this.id}\` has \`${String(fact.value)}\` here and \`${String(before.value)}\` in row ${before.row}, expected one value: say it once, and leave the cell empty in the other rows`,
    };
  }

  /** The record as far as these cells say, on top of what is there. */
  on(data: Data, facts: Iterable<CellFact> = this.facts.values()): Data {
    let now: unknown = data;
    for (const { path, value } of facts) now = withValue(now, path, value);
    return now as Data;
  }

  /** As a record that is not there yet. */
  fresh(): Data {
    return inOrder(this.kind, this.on({ id: this.id, ...Object.fromEntries(this.usually) }));
  }

  /** What a new record has where no row says otherwise. */
  usual(key: string, value: unknown): void {
    if (!this.usually.some(([one]) => one === key)) this.usually.push([key, value]);
  }

  /** The cell that says what stands at a path of the record. */
  place(sheet: string, path: Path): Finding['place'] {
    const starts = (whole: Path, part: Path): boolean => part.length > 0 && part.every((step, i) => step === whole[i]);
    const facts = [...this.facts.values()];
    const fact = facts.find((one) => starts(path, one.path)) ?? facts.find((one) => starts(one.path, path));
    const line = fact?.row ?? this.row;
    const column = (fact?.head?.index ?? -1) + 1;
    return { file: sheet, line, column, endLine: line, endColumn: column + 1 };
  }
}
