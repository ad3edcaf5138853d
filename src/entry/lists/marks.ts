import type { IndexedRecord, RecordIndex } from '../record-index.js';
import type { ListRow } from './row.js';

/**
 * The circuit and the run of each row. A mark that was seen before is the same circuit (or the run of that id); a further row with it is a
 * further run of the circuit, told from the others by its ends.
 */
export class Marks {
  private readonly given = new Set<string>();
  private readonly byMarking = new Map<string, string[]>();
  private readonly runsOf = new Map<string, IndexedRecord[]>();

  constructor(
    private readonly known: RecordIndex,
    rows: readonly ListRow[],
  ) {
    for (const { id, data } of known.ofKind('circuit')) {
      if (id !== undefined && data.marking !== undefined) {
        const word = String(data.marking);
        this.byMarking.set(word, [...(this.byMarking.get(word) ?? []), id]);
      }
    }
    for (const run of known.ofKind('run')) {
      const circuit = String(run.data.circuit ?? '');
      this.runsOf.set(circuit, [...(this.runsOf.get(circuit) ?? []), run]);
    }
    // Runs that a row names are none of those that other rows may find by their ends.
    for (const row of rows) {
      const named = this.named(row);
      if (named !== undefined) this.given.add(named);
    }
  }

  runsIn(circuit: string): readonly IndexedRecord[] {
    return this.runsOf.get(circuit) ?? [];
  }

  circuitOf(row: ListRow): string | undefined {
    const run = this.named(row);
    const recorded = run === undefined ? undefined : this.known.find('run', run);
    const said = row.word('circuit') ?? (row.word('mark') === run ? undefined : row.word('mark'));
    if (said === undefined) return recorded?.data.circuit === undefined ? undefined : String(recorded.data.circuit);
    const [one, other] = this.byMarking.get(said) ?? [];
    return this.known.find('circuit', said) || one === undefined || other !== undefined ? said : one;
  }

  /** The run that a row names by its id: in a column of its own, or by a mark beside the circuit. */
  named(row: ListRow): string | undefined {
    const [run, mark, circuit] = [row.word('run'), row.word('mark'), row.word('circuit')];
    if (run !== undefined || mark === undefined) return run;
    if (this.known.find('run', mark)) return mark;
    return circuit === undefined || circuit === mark || this.known.find('circuit', mark) ? undefined : mark;
  }

  /** Rows in their order; `ends` are their nodes. */
  runOf(row: ListRow, circuit: string | undefined, ends: readonly [string, string], isAlone: boolean): string | undefined {
    const named = this.named(row);
    if (named !== undefined || circuit === undefined) return named;
    const free = this.runsIn(circuit).filter(({ id }) => id !== undefined && !this.given.has(id));
    const same = free.find(({ data }) => sameEnds(data, ends)) ?? (isAlone && free.length === 1 ? free[0] : undefined);
    const id = same?.id ?? this.next(circuit);
    this.given.add(id);
    return id;
  }

  private next(circuit: string): string {
    for (let n = 1; ; n++) {
      const id = `${circuit}/${n}`;
      if (!this.given.has(id) && this.known.taken('run', id) === undefined) return id;
    }
  }
}

/** The same two nodes, whichever way round. */
export function sameEnds(data: Readonly<Record<string, unknown>>, [from, to]: readonly [string, string]): boolean {
  const [a, b] = [String(data.from), String(data.to)];
  return (a === from && b === to) || (a === to && b === from);
}
