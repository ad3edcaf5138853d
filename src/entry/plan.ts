import { identityOf } from '../records/identity.js';
import type { RecordKind } from '../records/index.js';
import { valueAt, withValue } from './change.js';
import { chooseFile } from './files.js';
import { plainHeader } from './headers.js';
import { type EntryKind, homeOf } from './homes.js';
import { outsideList } from './listed-words.js';
import { nextId } from './numbering.js';
import type { IndexedRecord } from './record-index.js';
import { isRead, type ReadHead, RowSource, readRow, type SheetRecord } from './rows.js';
import { cellChanges, differingPaths, type SheetInput, type SheetPlan } from './sheet-changes.js';
import { SheetChecks } from './sheet-checks.js';
import { type Data, isData } from './yaml-text.js';

export interface ImportOf extends SheetInput {
  readonly kind: EntryKind;
}

/** Compares a sheet with what is known: which rows are new records, which change one, which say nothing new, and what is wrong. */
export const planImport = (of: ImportOf): SheetPlan => new Planner(of).make();

/** What tells rows of a sheet without ids from each other. */
const NATURAL: Readonly<Partial<Record<EntryKind, string>>> = { ticket: 'ticket', photo: 'file' };

/** What cut lists call a number of pieces. */
const PIECES: ReadonlySet<string> = new Set(['qty', 'quantity', 'pcs', 'pieces', 'count', 'nos', 'off']);
const ONE_BY_ONE: ReadonlySet<EntryKind> = new Set(['member', 'panel', 'component', 'node']);

class Planner {
  private readonly checks: SheetChecks;
  private readonly say: SheetChecks['say'];
  private readonly heads: readonly ReadHead[];

  constructor(private readonly of: ImportOf) {
    this.heads = of.heads.filter(isRead);
    this.checks = new SheetChecks(of);
    this.say = this.checks.say;
  }

  make(): SheetPlan {
    this.reportPieces();
    const rows = this.identified(this.of.sheet.rows.flatMap((row) => readRow(row, this.heads, this.of.habits, this.say) ?? []));
    const added: SheetPlan['added'][number][] = [];
    const changed: SheetPlan['changed'][number][] = [];
    const unchanged: string[] = [];
    for (const { id, one, record } of rows) {
      if (record === undefined) {
        const fresh = this.fresh(id, one);
        if (fresh) added.push(fresh);
        continue;
      }
      const change = this.compared(one, record);
      if (change === 'same') unchanged.push(id);
      else if (change) changed.push(change);
    }
    return { added, changed, unchanged, faults: this.checks.faults, ahead: this.checks.ahead };
  }

  /** A row of four pieces would be one record, and three pieces lost to the mass and the drawings. */
  private reportPieces(): void {
    const { kind, heads, sheet } = this.of;
    const index = heads.find(({ text, column }) => column === undefined && PIECES.has(plainHeader(text)))?.index;
    if (index === undefined || !ONE_BY_ONE.has(kind)) return;
    for (const { number, cells } of sheet.rows) {
      const pieces = Number(cells[index] || 1);
      if (pieces === 1) continue;
      const message = `${cells[index]} pieces in one row, expected a row for each ${kind}, with an id and a place of its own`;
      this.say({ row: number, column: index, message });
    }
  }

  /** Rows with the id of their record, and that record where there is one. Ids of new ones are known before any row is checked. */
  private identified(rows: readonly SheetRecord[]) {
    const { kind, known, sheet } = this.of;
    const seen = new Map<string, number>();
    const given = new Set<string>();
    return rows.flatMap((row) => {
      const [id, one] = this.withId(row, given) ?? [];
      if (id === undefined || one === undefined) return [];
      const before = seen.get(id);
      if (before !== undefined) {
        this.say({ row: row.row.number, message: `\`${id}\` is in row ${before} too, expected one row per record` });
        return [];
      }
      seen.set(id, row.row.number);
      const record = known.find(kind, id);
      const taken = record === undefined ? known.taken(kind, id) : undefined;
      if (taken !== undefined) {
        this.say({
          row: row.row.number,
          column: this.columnOf('id'),
          message: `\`${id}\` is the id of a ${taken}, expected another id for this ${kind}`,
        });
        return [];
      }
      if (record === undefined && homeOf(kind).in !== 'library' && one.data.id !== undefined) {
        known.register.claim(id, kind as RecordKind, new RowSource(sheet, row.row, this.heads), () => {});
      }
      return [{ id, one, record }];
    });
  }

  private withId(one: SheetRecord, given: Set<string>): readonly [string, SheetRecord] | undefined {
    const { kind, known } = this.of;
    const id = identityOf(kind, one.data);
    if (id !== undefined) return [id, one];
    const key = NATURAL[kind];
    const word = key === undefined ? undefined : one.data[key];
    const record =
      word === undefined ? undefined : known.ofKind(kind).find(({ data }) => String(data[key as string]) === String(word));
    const found = record?.id ?? (word === undefined ? undefined : nextId(kind, known, given));
    if (found === undefined) {
      this.say({
        row: one.row.number,
        column: this.columnOf('id'),
        message: `no id${key === undefined ? '' : ` and no \`${key}\``}, expected the shop’s own number or name for this ${kind}`,
      });
      return undefined;
    }
    given.add(found);
    return [found, { ...one, data: { id: found, ...one.data } }];
  }

  private fresh(id: string, one: SheetRecord): SheetPlan['added'][number] | undefined {
    const { kind, known, into } = this.of;
    const chosen = chooseFile(kind, one.data, known, into);
    if ('ask' in chosen) {
      this.say({ row: one.row.number, message: chosen.ask });
      return undefined;
    }
    if (this.outsideLists(one.data, one.heads, one.row.number) || !this.valid(one.data, chosen.place.file, one)) return undefined;
    return { kind, id, data: one.data, place: chosen.place, row: one.row.number };
  }

  /** What the row says otherwise than the record; a value that means the same stays as it was typed. */
  private compared(read: SheetRecord, record: IndexedRecord): SheetPlan['changed'][number] | 'same' | undefined {
    const { kind } = this.of;
    const one = atItems(read, record.data);
    const data = one.heads.reduce<unknown>(
      (at, { column }) => withValue(at, column.path, valueAt(one.data, column.path)),
      record.data,
    ) as Data;
    const schemas = this.checks.schemasFor(record.file);
    const paths = one.heads.map(({ column }) => column.path);
    const other = new Set(differingPaths(schemas, kind, record.data, data, paths));
    const differing = one.heads.filter(({ column }) => other.has(column.path));
    if (differing.length === 0) return 'same';
    const kept = differing.reduce<unknown>(
      (at, { column }) => withValue(at, column.path, valueAt(one.data, column.path)),
      record.data,
    ) as Data;
    if (this.outsideLists(kept, differing, one.row.number) || !this.valid(kept, record.file, one)) return undefined;
    return {
      kind,
      record,
      data: kept,
      changes: cellChanges(
        record.data,
        kept,
        differing.map(({ column }) => column.path),
      ),
      row: one.row.number,
    };
  }

  private valid(data: Data, file: string, one: SheetRecord): boolean {
    return this.checks.isValid({ kind: this.of.kind, data, source: this.sourceOf(one) }, file);
  }

  /** A word outside a closed list is a slip in what comes in now, whatever older records say. */
  private outsideLists(data: Data, heads: readonly ReadHead[], row: number): boolean {
    const wrong = heads.flatMap((head) => {
      const message = outsideList(head.column, valueAt(data, head.column.path));
      return message === undefined ? [] : [{ row, column: head.index, message }];
    });
    wrong.forEach(this.say);
    return wrong.length > 0;
  }

  private sourceOf = (one: SheetRecord): RowSource => new RowSource(this.of.sheet, one.row, this.heads);
  private columnOf = (key: string): number | undefined => this.heads.find(({ column }) => column.key === key)?.index;
}

/** `VT by` is of the record’s own VT, wherever it stands in the list; else of a further one. */
function atItems(one: SheetRecord, old: Data): SheetRecord {
  if (!one.heads.some(({ implied }) => implied)) return one;
  const fresh = new Map<string, number>();
  let data: unknown = {};
  const heads = one.heads.flatMap((head): readonly ReadHead[] => {
    const { implied, column } = head;
    const value = valueAt(one.data, column.path);
    if (!implied) {
      data = withValue(data, column.path, value);
      return [head];
    }
    const list: readonly unknown[] = Array.isArray(old[implied.list]) ? (old[implied.list] as unknown[]) : [];
    const found = list.findLastIndex((item) => isData(item) && String(item[implied.key]) === implied.value);
    if (found < 0 && !fresh.has(implied.value)) fresh.set(implied.value, list.length + fresh.size);
    const at = found < 0 ? (fresh.get(implied.value) as number) : found;
    const path = [implied.list, at, ...column.path.slice(2)];
    const method = [implied.list, at, implied.key];
    data = withValue(withValue(padded(data, implied.list, at), method, implied.value), path, value);
    const more = found < 0 ? [{ ...head, column: { ...column, path: method } }] : [];
    return [...more, { ...head, column: { ...column, path } }];
  });
  return { row: one.row, heads, data: { ...one.data, ...(data as Data) } };
}

/** A list that is long enough for an item at this place. */
function padded(data: unknown, key: string, index: number): unknown {
  const list = isData(data) && Array.isArray(data[key]) ? (data[key] as unknown[]) : [];
  return withValue(data, [key], [...list, ...Array.from({ length: Math.max(0, index - list.length) }, () => ({}))]);
}
