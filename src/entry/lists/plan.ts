import { MEDIA, type Medium } from '../../records/names.js';
import type { ListPlace } from '../append.js';
import { valueAt } from '../change.js';
import { heldList, usualStyle } from '../homes.js';
import { outsideList } from '../listed-words.js';
import type { IndexedRecord } from '../record-index.js';
import { isRead, type ReadHead, readRow } from '../rows.js';
import { sameTyped, sameValue } from '../same.js';
import { type CellChange, cellChanges, differingPaths, readForm, type SheetInput, type SheetPlan } from '../sheet-changes.js';
import { SheetChecks } from '../sheet-checks.js';
import { type Data, isData } from '../yaml-text.js';
import type { ListColumn, ListWord } from './columns.js';
import { Ends } from './ends.js';
import { type CellFact, type LineKind, RecordFacts } from './facts.js';
import { Marks, sameEnds } from './marks.js';
import { ListRow, ratedBy, SAYS_NOTHING } from './row.js';
import { freshService, mediaOf, type ServiceFile, servicesNamed, servicesOf } from './services.js';

/** What taking a list in would do, by record; unchanged are runs and circuits that stand as the list has them. */
export interface ListPlan extends SheetPlan<LineKind> {
  /** Every run, circuit and node that a row names. */
  readonly named: readonly { readonly kind: LineKind; readonly id: string }[];
  /** Services that begin with this list: file → text. */
  readonly begun: ReadonlyMap<string, string>;
}

/** `into`: the service that new records go to, its file or its name. */
export interface ListOf extends SheetInput {
  readonly word: ListWord;
  /** What runs in them, where no service says. */
  readonly medium?: Medium;
}

export const planList = (of: ListOf): ListPlan => new ListPlanner(of).make();

/** A row whose records are known. */
interface Placed {
  readonly row: ListRow;
  readonly circuit?: string;
  readonly run?: string;
  readonly ends: readonly [string, string] | undefined;
  readonly file: string;
}

class ListPlanner {
  private readonly checks: SheetChecks;
  private readonly say: SheetChecks['say'];
  private readonly begun = new Map<string, string>();
  private readonly facts = new Map<string, RecordFacts>();
  private readonly ends: Ends;
  private readonly services: ServiceFile[];

  constructor(private readonly of: ListOf) {
    this.checks = new SheetChecks(of);
    this.say = this.checks.say;
    this.ends = new Ends(of.known);
    this.services = [...servicesOf(of.word, of.known)];
  }

  make(): ListPlan {
    const rows = this.rows();
    const marks = new Marks(this.of.known, rows);
    const placed = this.placed(rows, marks);
    for (const one of placed) this.gather(one);
    this.carried(placed, marks);
    for (const { id, kind, record } of this.facts.values()) if (record === undefined) this.claim(kind, id);
    const added: ListPlan['added'][number][] = [];
    const changed: ListPlan['changed'][number][] = [];
    const unchanged: string[] = [];
    for (const kind of ['circuit', 'node', 'run'] as const) {
      for (const facts of this.facts.values()) {
        if (facts.kind !== kind) continue;
        if (facts.record === undefined) {
          const data = facts.fresh();
          if (!this.outsideLists([...facts.facts.values()]) && this.valid(facts, data))
            added.push({ kind, id: facts.id, data, place: placeIn(kind, facts.file), row: facts.row });
          continue;
        }
        const change = this.compared(facts, facts.record);
        if (change === undefined && kind !== 'node') unchanged.push(facts.id);
        else if (change !== undefined && change !== 'faulty')
          changed.push({ kind, record: facts.record, ...change, row: facts.row });
      }
    }
    return {
      added,
      changed,
      unchanged,
      named: [...this.facts.values()].map(({ kind, id }) => ({ kind, id })),
      faults: this.checks.faults,
      ahead: this.checks.ahead,
      begun: this.begun,
    };
  }

  private rows(): readonly ListRow[] {
    const heads = this.of.heads.filter(isRead).map((head): ReadHead => {
      const { unit } = head.column as ListColumn;
      return unit === undefined || head.unit !== undefined ? head : { ...head, unit };
    });
    return this.of.sheet.rows.flatMap((row) => {
      const cells = row.cells.map((cell) => (SAYS_NOTHING.test(cell) ? '' : cell));
      const read = readRow({ ...row, cells }, heads, this.of.habits, this.say);
      return read ? [new ListRow(read)] : [];
    });
  }

  private placed(rows: readonly ListRow[], marks: Marks): readonly Placed[] {
    const counts = new Map<string, number>();
    const circuits = rows.map((row) => marks.circuitOf(row));
    for (const circuit of circuits) if (circuit !== undefined) counts.set(circuit, (counts.get(circuit) ?? 0) + 1);
    const seen = new Map<string, number>();
    return rows.flatMap((row, i) => {
      const circuit = circuits[i];
      const ends = this.endsOf(row, circuit);
      if (ends === 'faulty') return [];
      const run = ends === undefined ? marks.named(row) : marks.runOf(row, circuit, ends, counts.get(circuit ?? '') === 1);
      if (run === undefined && circuit === undefined) {
        const first = this.of.word === 'wire' ? 'a wire’s number' : 'a line’s number';
        this.say({ row: row.number, message: `no mark, expected ${first}, a circuit or a run` });
        return [];
      }
      const before = run === undefined ? undefined : seen.get(run);
      if (run !== undefined && before !== undefined) {
        this.say({ row: row.number, message: `\`${run}\` is in row ${before} too, expected one row per run` });
        return [];
      }
      if (run !== undefined) seen.set(run, row.number);
      const file = this.fileFor(row, circuit, run, ends);
      if (file === undefined) return [];
      return [{ row, ends, file, ...(circuit === undefined ? {} : { circuit }), ...(run === undefined ? {} : { run }) }];
    });
  }

  /** Undefined for a row that speaks of a circuit alone, or of a run whose ends stand already. */
  private endsOf(row: ListRow, circuit: string | undefined): readonly [string, string] | 'faulty' | undefined {
    const [from, to] = [row.word('from'), row.word('to')];
    if (from === undefined && to === undefined) return undefined;
    if (from === undefined || to === undefined) {
      const missing = from === undefined ? 'from' : 'to';
      this.say({
        row: row.number,
        message: `no \`${missing}\`${circuit === undefined ? '' : ` for ${circuit}`}, expected the node at each end`,
      });
      return 'faulty';
    }
    const found = (['from', 'to'] as const).map((key) => this.nodeOf(row, key));
    const [a, b] = found;
    return a === undefined || b === undefined ? 'faulty' : [a, b];
  }

  private nodeOf(row: ListRow, key: string): string | undefined {
    const found = this.ends.find(row.word(key) as string);
    if ('id' in found) return found.id;
    this.say({ row: row.number, ...column(row.headOf(key)), message: found.fault });
    return undefined;
  }

  private fileFor(
    row: ListRow,
    circuit: string | undefined,
    run: string | undefined,
    ends: readonly [string, string] | undefined,
  ): string | undefined {
    const { known, into } = this.of;
    const recorded =
      (run === undefined ? undefined : known.find('run', run)) ??
      (circuit === undefined ? undefined : known.find('circuit', circuit));
    if (recorded) return recorded.file;
    const said = row.word('service') ?? into;
    if (said !== undefined) return this.serviceSaid(row, said);
    const medium = this.of.medium;
    const files = this.services.filter((one) => medium === undefined || one.medium === medium);
    const near = ends?.map((id) => known.find('node', id)?.file).find((file) => files.some(({ path }) => path === file));
    if (near !== undefined) return near;
    const [only, ...others] = files;
    if (only && others.length === 0) return only.path;
    if (only === undefined && medium !== undefined) return this.begin(medium);
    const media = mediaOf(this.of.word).join(', ');
    this.say({
      row: row.number,
      message: only
        ? `several services hold ${this.of.word}s (${files.map(({ stem }) => stem).join(', ')}), expected a column \`service\`, or one for all as --into ${only.stem}`
        : `there is no service for ${this.of.word}s yet, expected what they carry, such as --medium ${media.split(', ')[0]} (one of ${media})`,
    });
    return undefined;
  }

  private serviceSaid(row: ListRow, said: string): string | undefined {
    const [one, other] = servicesNamed(said, this.services);
    if (one && other === undefined) return one.path;
    const medium = mediaOf(this.of.word).find((each) => each === said.toLowerCase());
    if (!one && medium) return this.begin(medium);
    const stems = this.services.map(({ stem }) => stem);
    const expected = one ? `one of ${stems.join(', ')}` : [...stems, ...mediaOf(this.of.word)].join(', ');
    const isMedium = (MEDIA as readonly string[]).includes(said.toLowerCase());
    this.say({
      row: row.number,
      ...column(row.headOf('service')),
      message: `\`${said}\` is ${one ? 'the medium of several services' : isMedium ? `no medium of ${this.of.word}s` : 'no service of this shell'}, expected ${expected}`,
    });
    return undefined;
  }

  private begin(medium: Medium): string {
    const { path, text } = freshService(medium, this.of.known);
    if (!this.begun.has(path)) {
      this.begun.set(path, text);
      this.services.push({ path, stem: medium, name: medium, medium });
    }
    return path;
  }

  /** What the row says of its circuit, its run and the nodes at its ends. */
  private gather({ row, circuit, run, ends, file }: Placed): void {
    const { known } = this.of;
    if (ends) {
      this.node(row, 'from', ends[0], file);
      this.node(row, 'to', ends[1], file);
    }
    const line = circuit === undefined ? undefined : this.factsOf('circuit', circuit, file, row);
    if (line) this.ofCircuit(line, row, file);
    if (run === undefined) return;
    const facts = this.factsOf('run', run, file, row);
    const add = (path: readonly (string | number)[], value: unknown, head?: ReadHead): void =>
      this.add(facts, { path, value, row: row.number, ...(head ? { head } : {}) });
    if (circuit !== undefined) add(['circuit'], circuit, row.headOf('circuit') ?? row.headOf('mark'));
    const recorded = known.find('run', run);
    const turned =
      ends !== undefined && recorded !== undefined && sameEnds(recorded.data, ends) && recorded.data.from !== ends[0];
    if (ends && !turned) {
      add(['from'], ends[0], row.headOf('from'));
      add(['to'], ends[1], row.headOf('to'));
    }
    for (const { column: cell, value, head } of row.cellsOf('run'))
      add(turned ? turnedPath(cell.target) : cell.target, value, head);
  }

  private ofCircuit(facts: RecordFacts, row: ListRow, file: string): void {
    for (const { column: cell, value, head } of row.cellsOf('circuit')) {
      const add = (path: readonly (string | number)[], one: unknown): void =>
        this.add(facts, { path, value: one, row: row.number, head });
      if (cell.key === 'fuse') {
        const { rating, kind } = ratedBy(value, head);
        add(cell.target, rating);
        const said = row.word('protection') !== undefined || valueAt(facts.record?.data, ['protection', 'kind']) !== undefined;
        if (kind !== undefined && !said) add(['protection', 'kind'], kind);
      } else if (cell.key.endsWith('_at')) {
        const id = this.nodeOf(row, cell.key);
        if (id === undefined) continue;
        this.node(row, cell.key, id, file);
        add(cell.target, id);
      } else add(cell.target, value);
    }
  }

  /** A node that is not there yet is a device of which nothing more is known, until the record says what it does. */
  private node(row: ListRow, key: string, id: string, file: string): void {
    const recorded = this.of.known.find('node', id);
    const facts = this.factsOf('node', id, recorded?.file ?? file, row);
    const word = row.word(key) as string;
    const head = row.headOf(key);
    const add = (path: readonly (string | number)[], value: unknown, from = head): void =>
      this.add(facts, { path, value, row: row.number, ...(from ? { head: from } : {}) });
    const cells = key === 'from' || key === 'to' ? row.cellsOf(key) : [];
    for (const { column: cell, value, head: from } of cells) add(cell.target, value, from);
    if (recorded !== undefined) return;
    facts.usual('kind', 'device');
    if (word !== id) facts.usual('name', word);
  }

  /** What wires are made of stands at the circuit where all its runs are alike, and at the run where not. */
  private carried(placed: readonly Placed[], marks: Marks): void {
    const byCircuit = new Map<string, Placed[]>();
    for (const one of placed) {
      const key = one.circuit ?? `\u0000${one.run}`;
      byCircuit.set(key, [...(byCircuit.get(key) ?? []), one]);
    }
    for (const rows of byCircuit.values()) {
      const units = new Set(rows.flatMap(({ row }) => row.cellsOf('carried').map(({ column: cell }) => String(cell.target[0]))));
      for (const unit of units) this.carriedUnit(unit, rows, marks);
    }
  }

  private carriedUnit(unit: string, rows: readonly Placed[], marks: Marks): void {
    const [{ circuit, file }] = rows as readonly [Placed];
    const { known } = this.of;
    const line = circuit === undefined ? undefined : known.find('circuit', circuit);
    const inherited = line?.data[unit];
    const saying = rows.flatMap((placed) => {
      const cells = placed.row.cellsOf('carried').filter(({ column: cell }) => cell.target[0] === unit);
      const own = placed.run === undefined ? undefined : known.find('run', placed.run)?.data[unit];
      return cells.length === 0 ? [] : [{ placed, cells, own, value: cellsOn(own ?? inherited, cells) }];
    });
    const news = saying.filter(({ own, value }) => !this.same(unit, own ?? inherited, value, file));
    const inSheet = new Set(rows.map(({ run }) => run));
    const outside =
      circuit === undefined ? [] : marks.runsIn(circuit).filter(({ id, data }) => !inSheet.has(id) && data[unit] === undefined);
    const alike = new Set(saying.filter(({ own }) => own === undefined).map(({ value }) => JSON.stringify(value))).size === 1;
    const silent = rows.filter(({ row }) => !row.cellsOf('carried').some(({ column: cell }) => cell.target[0] === unit));
    const forAll = circuit !== undefined && alike && outside.length === 0 && (inherited === undefined || silent.length === 0);
    for (const { placed, cells, own, value } of news) {
      const atCircuit = circuit !== undefined && own === undefined && (forAll || placed.run === undefined);
      const facts = atCircuit
        ? this.factsOf('circuit', circuit, file, placed.row)
        : this.factsOf('run', placed.run as string, file, placed.row);
      const isBlock = cells.some(({ column: cell }) => cell.target.length > 1);
      const split = isBlock && (atCircuit || own !== undefined);
      if (!split) this.add(facts, { path: [unit], value, row: placed.row.number, head: (cells[0] as { head: ReadHead }).head });
      else
        for (const { column: cell, value: each, head } of cells)
          this.add(facts, { path: cell.target, value: each, row: placed.row.number, head });
    }
  }

  private same(unit: string, old: unknown, now: unknown, file: string): boolean {
    if (sameTyped(old, now)) return true;
    const of = (value: unknown): unknown =>
      (readForm(this.checks.schemasFor(file), 'run', { id: 'x', from: 'x', to: 'x', [unit]: value }) as Data | undefined)?.[unit];
    const [a, b] = [of(old), of(now)];
    return a !== undefined && b !== undefined && sameValue(a, b);
  }

  private factsOf(kind: LineKind, id: string, file: string, row: ListRow): RecordFacts {
    const key = `${kind} ${id}`;
    const record = this.of.known.find(kind, id);
    const facts = this.facts.get(key) ?? new RecordFacts(kind, id, record?.file ?? file, row.number, record);
    this.facts.set(key, facts);
    return facts;
  }

  private add(facts: RecordFacts, fact: CellFact): void {
    const fault = facts.add(fact);
    if (fault) this.say(fault);
  }

  private claim(kind: LineKind, id: string): void {
    const { known } = this.of;
    const facts = this.facts.get(`${kind} ${id}`) as RecordFacts;
    const taken = known.taken(kind, id);
    if (taken === undefined)
      known.register.claim(id, kind, { file: this.of.sheet.name, place: () => facts.place(this.of.sheet.name, []) }, () => {});
    else if (taken !== kind || known.find(kind, id) === undefined) {
      this.say({ row: facts.row, message: `\`${id}\` is the id of a ${taken}, expected another id for this ${kind}` });
      this.facts.delete(`${kind} ${id}`);
    }
  }

  private compared(
    facts: RecordFacts,
    record: IndexedRecord,
  ): { data: Data; changes: readonly CellChange[] } | 'faulty' | undefined {
    const { kind, file } = facts;
    const all = [...facts.facts.values()];
    const now = facts.on(record.data);
    const paths = all.map(({ path }) => path);
    const other = new Set(differingPaths(this.checks.schemasFor(file), kind, record.data, now, paths));
    const differing = all.filter(({ path }) => other.has(path));
    if (differing.length === 0) return undefined;
    const data = facts.on(record.data, differing);
    if (this.outsideLists(differing) || !this.valid(facts, data)) return 'faulty';
    return {
      data,
      changes: cellChanges(
        record.data,
        data,
        differing.map(({ path }) => path),
      ),
    };
  }

  private outsideLists(facts: readonly CellFact[]): boolean {
    const wrong = facts.flatMap(({ head, value, row, path }) => {
      const message =
        head && path.length === (head.column as ListColumn).target.length ? outsideList(head.column, value) : undefined;
      return message === undefined ? [] : [{ row, ...column(head), message }];
    });
    wrong.forEach(this.say);
    return wrong.length > 0;
  }

  private valid(facts: RecordFacts, data: Data): boolean {
    const place = (...path: readonly (string | number)[]) => facts.place(this.of.sheet.name, path);
    const source = { file: this.of.sheet.name, place, placeOfKey: place };
    return this.checks.isValid({ kind: facts.kind, data, source }, facts.file);
  }
}

const column = (head: ReadHead | undefined): { readonly column?: number } => (head ? { column: head.index } : {});

const turnedPath = ([key, ...rest]: readonly (string | number)[]): readonly (string | number)[] => [
  key === 'from_side' ? 'to_side' : key === 'to_side' ? 'from_side' : (key as string),
  ...rest,
];

function cellsOn(old: unknown, cells: readonly { readonly column: ListColumn; readonly value: unknown }[]): unknown {
  if (cells.every(({ column: cell }) => cell.target.length === 1)) return cells[0]?.value;
  const block: Data = isData(old) ? old : {};
  return { ...block, ...Object.fromEntries(cells.map(({ column: cell, value }) => [String(cell.target[1]), value])) };
}

function placeIn(kind: LineKind, file: string): ListPlace {
  const { path, bare } = heldList(kind);
  return { file, path, bare, usual: usualStyle(kind) };
}
