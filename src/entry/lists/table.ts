import { writeCell } from '../cells.js';
import { valueAt } from '../change.js';
import type { IndexedRecord, RecordIndex } from '../record-index.js';
import { type Data, isData } from '../yaml-text.js';
import { LIST_FORMS, type ListColumn, type ListWord } from './columns.js';
import { servicesOf } from './services.js';

/** Columns that such a list has even where nothing stands in them. */
const ALWAYS: Readonly<Record<ListWord, readonly string[]>> = {
  wire: ['mark', 'from', 'to', 'run', 'service', 'awg', 'colour', 'fuse', 'length'],
  pipe: ['mark', 'from', 'to', 'run', 'service', 'size', 'length'],
};

interface ListedLine {
  readonly circuit: IndexedRecord | undefined;
  readonly run: IndexedRecord | undefined;
}

/** All wires, or all pipes, of a shell, a row a run. A circuit without runs has a row of its own; what is of a node stands in the first row that names it. */
export function listTable(
  word: ListWord,
  known: RecordIndex,
): { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const columns = LIST_FORMS[word]().columns.filter(({ path }) => path.length === 1);
  const stems = new Map(servicesOf(word, known).map(({ path, stem }) => [path, stem]));
  const writer = new RowWriter(known, stems);
  const rows = linesOf(known, stems).map((line) => columns.map((column) => writer.cell(line, column)));
  const kept = columns.map((column, i) => ALWAYS[word].includes(column.key) || rows.some((row) => row[i] !== ''));
  return {
    heads: columns.filter((_, i) => kept[i]).map(({ key }) => key),
    rows: rows.map((row) => row.filter((_, i) => kept[i])),
  };
}

function linesOf(known: RecordIndex, stems: ReadonlyMap<string, string>): readonly ListedLine[] {
  const runs = known.ofKind('run').filter(({ file }) => stems.has(file));
  const used = new Set(runs.map(({ data }) => String(data.circuit)));
  const alone = known.ofKind('circuit').filter(({ id, file }) => stems.has(file) && !used.has(String(id)));
  return [
    ...runs.map((run) => ({ run, circuit: known.find('circuit', String(run.data.circuit)) })),
    ...alone.map((circuit) => ({ circuit, run: undefined })),
  ];
}

/** Writes cells; facts of circuits and nodes once, so that nobody need change them in many rows. */
class RowWriter {
  private readonly told = new Set<string>();

  constructor(
    private readonly known: RecordIndex,
    private readonly stems: ReadonlyMap<string, string>,
  ) {}

  cell({ circuit, run }: ListedLine, column: ListColumn): string {
    const data: Data = run?.data ?? {};
    switch (column.part) {
      case 'row':
        return this.word({ circuit, run }, column.key);
      case 'run':
        return this.value(run, column.target, column);
      case 'circuit':
        return this.once(circuit, column.target, column);
      case 'carried': {
        const unit = String(column.target[0]);
        return this.value(data[unit] === undefined ? circuit : run, column.target, column);
      }
      default: {
        const end = data[column.part];
        return end === undefined ? '' : this.once(this.known.find('node', String(end)), column.target, column);
      }
    }
  }

  private word({ circuit, run }: ListedLine, key: string): string {
    const data: Data = run?.data ?? {};
    if (key === 'mark') return String(data.circuit ?? circuit?.id ?? '');
    if (key === 'run') return run?.id ?? '';
    if (key === 'service') return this.stems.get(run?.file ?? circuit?.file ?? '') ?? '';
    return key === 'from' || key === 'to' ? String(data[key] ?? '') : '';
  }

  private once(record: IndexedRecord | undefined, path: ListColumn['target'], column: ListColumn): string {
    const key = `${record?.kind} ${record?.id} ${path.join('.')}`;
    if (record === undefined || this.told.has(key)) return '';
    this.told.add(key);
    return this.value(record, path, column);
  }

  private value(record: IndexedRecord | undefined, path: ListColumn['target'], column: ListColumn): string {
    const value = record === undefined ? undefined : valueAt(record.data, path);
    return record === undefined || value === undefined || (isData(value) && column.form.as !== 'place')
      ? ''
      : writeCell(value, column, this.known.unitsOf(record.file));
  }
}
