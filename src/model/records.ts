import { isMap, isSeq, type Node, type Pair, type YAMLSeq } from 'yaml';
import type { Finding } from '../finding.js';
import type { Vec3 } from '../geometry/vector.js';
import type { FileUnits } from '../quantity/parse.js';
import { checkForm, type TypedRecordForm } from '../records/form/form.js';
import { readUnits } from '../records/form/units.js';
import type { KindName, RecordKind } from '../records/index.js';
import { type Form, kindOf } from '../records/kinds.js';
import { HEAD_LISTS, LIBRARY_LISTS, SERVICE_LISTS, SHELL_LISTS } from '../records/lists.js';
import { Schemas } from '../records/schema.js';
import { readDocument, type SourceDocument } from '../source/document.js';
import { nearest } from '../source/nearest.js';
import { found, shown } from '../source/shown.js';
import { NodeSource, type Path } from '../source/source.js';
import type { RawRecordRef } from './link.js';
import type { Register } from './register.js';

type Mapping = Readonly<Record<string, unknown>>;
export type SayFinding = (finding: Finding) => void;

/** One record whose form is right: fields under their typed names in SI, what was typed, and where. */
export interface Checked<K extends KindName> {
  readonly id: string;
  readonly form: Form<K>;
  readonly typed: Mapping;
  readonly source: NodeSource;
}

/** A file opened: its document, and the schemas for its units. */
export interface OpenFile {
  readonly document: SourceDocument;
  readonly units: FileUnits;
  readonly schemas: Schemas;
  /** The whole file as one record. */
  readonly source: NodeSource;
}

const isMapping = (data: unknown): data is Mapping => typeof data === 'object' && data !== null && !Array.isArray(data);

/** A form that is right, and where it was typed. */
export interface ReadForm {
  readonly kind: KindName;
  readonly id?: string;
  readonly form: object;
  readonly source: NodeSource;
  readonly path?: Path;
}

/** Reads the records of some files that share a datum. Every fault goes to `say`; what is whole comes back. */
export class RecordReader {
  /** Every record of a list, whether its form is right or not. */
  readonly seen: RawRecordRef[] = [];
  /** Every form that is right: where the places stand that hang on something. */
  readonly forms: ReadForm[] = [];
  /** Forms with a place that cannot be known, which was told. */
  lost: ReadonlySet<object> = new Set();
  private readonly schemas = new Map<string, Schemas>();

  constructor(
    readonly say: SayFinding,
    private origin: Vec3 = [0, 0, 0],
  ) {}

  /** Places read from now on are moved by this. */
  moveDatum(origin: Vec3): void {
    this.origin = origin;
    this.schemas.clear();
  }

  /** `unitsKey: false` for shop.yaml, whose `units` is something else. Undefined where the syntax is broken. */
  open(file: string, text: string, register?: Register, unitsKey = true): OpenFile | undefined {
    const document = readDocument(file, text);
    document.findings.forEach(this.say);
    if (document.broken) {
      register?.claimLoosely(text);
      return undefined;
    }
    const source = new NodeSource(document, () => document.root);
    if (register) claimStrayLists(document.data, register);
    const units = unitsKey && isMapping(document.data) ? readUnits(document.data.units, source, this.say) : {};
    return { document, units, schemas: this.schemasFor(units), source };
  }

  schemasFor(units: FileUnits): Schemas {
    const key = JSON.stringify(units);
    const schemas = this.schemas.get(key) ?? Schemas.for(units, this.origin);
    this.schemas.set(key, schemas);
    return schemas;
  }

  /** A file that is a list of records: bare, or under its kind's name beside `units`. */
  list<K extends KindName>(file: OpenFile, name: string, kind: K, register: Register): readonly Checked<K>[] {
    const { data } = file.document;
    if (data === null || data === undefined) return [];
    if (!isMapping(data)) return this.items(file, () => file.document.root, data, name, kind, register);
    const { [name]: list, units: _units, ...others } = data;
    for (const key of Object.keys(others)) {
      if (key.startsWith('x-')) continue;
      const looksLikeRecord = key === 'id' || 'id' in data;
      if (looksLikeRecord) {
        const message = `Found a single record in ${file.document.file}, expected a list: put \`- \` before its first key and indent the others by two`;
        this.tell('format.wrong-value', message, file.source.place('id'));
        return [];
      }
      this.tell('format.unknown-key', unknownInFile(key, name), file.source.placeOfKey(key));
    }
    return this.items(file, () => nodeAt(file, name), list, name, kind, register);
  }

  /** The records of one list within a file (`nodes` of a service, `tanks` of a shell). */
  items<K extends KindName>(
    file: OpenFile,
    nodeOf: () => Node | null,
    data: unknown,
    name: string,
    kind: K,
    register: Register,
  ): readonly Checked<K>[] {
    if (data === null || data === undefined) return [];
    if (!Array.isArray(data) || (!file.document.isPlain && !isSeq(nodeOf()))) {
      this.tell(
        'format.wrong-value',
        `Found ${found(data)} for \`${name}\`, expected a list of records, each beginning with \`- \``,
        file.source.place(name),
      );
      return [];
    }
    const records: Checked<K>[] = [];
    let list: YAMLSeq | undefined;
    const itemAt = (i: number): Node => {
      list ??= nodeOf() as YAMLSeq;
      return list.items[i] as Node;
    };
    for (let i = 0; i < data.length; i++) {
      if (data[i] === null) continue;
      const source = new NodeSource(file.document, () => itemAt(i));
      const record = this.item(file, source, data[i], kind, register);
      if (record) records.push(record);
    }
    return records;
  }

  private item<K extends KindName>(
    file: OpenFile,
    source: NodeSource,
    data: unknown,
    kind: K,
    register: Register,
  ): Checked<K> | undefined {
    if (!isMapping(data)) {
      const message = `Found ${found(data)} in the list, expected a ${kind} as a block of keys that begins with \`id:\``;
      this.tell('format.wrong-value', message, source.place());
      return undefined;
    }
    const id = typeof data.id === 'number' ? String(data.id) : typeof data.id === 'string' ? data.id : undefined;
    this.seen.push({ kind: kind as RecordKind, ...(id === undefined ? {} : { id }), data, source });
    const first = id === undefined || register.claim(id, kind, source, this.say);
    const form = this.form(file, kind, { ...(id === undefined ? {} : { id }), data, source });
    return form !== undefined && first ? { id: id ?? '', form, typed: data, source } : undefined;
  }

  /** The form of a record or of a part of one; undefined where something in it is wrong. */
  form<K extends KindName>(file: OpenFile, kind: K, typed: TypedRecordForm<NodeSource>): Form<K> | undefined {
    const data = file.document.hasBlanks ? withoutBlanks(typed.data) : typed.data;
    const form = checkForm(file.schemas, kind, { ...typed, data }, this.say);
    if (form !== undefined) this.forms.push({ kind, form, ...typed });
    if (form === undefined || file.document.faults.length === 0) return form;
    // A part of a file stands or falls by its own text: a slip in an axle costs that axle, and not the ratings beside it.
    const path = (typed.path ?? []).map(String);
    const parts = (typed.alsoKnown ?? []).map((key) => nodeAt(file, ...path, key));
    const node = path.length > 0 ? nodeAt(file, ...path) : typed.source.node;
    return isWhole(file.document, node, parts) ? form : undefined;
  }

  tell(rule: string, message: string, place: Finding['place'], ids: readonly string[] = []): void {
    this.say({ rule, severity: 'error', message, ids, place });
  }
}

/** Faults of a record that no single field can see. */
export function checkWhole<K extends KindName>(kind: K, { id, form, source }: Checked<K>, reader: RecordReader): void {
  const check = kindOf(kind).more.check as ((record: unknown, tell: RecordReader['tell']) => void) | undefined;
  check?.({ id, form, source }, (...fault) => reader.tell(...fault));
}

/** Lists under a misspelt key lose their records, which is told once; what names those records is not told as well. */
function claimStrayLists(data: unknown, register: Register): void {
  if (!isMapping(data)) return;
  for (const [key, list] of Object.entries(data)) if (Array.isArray(list) && !LISTS.has(key)) register.claimLooseList(list);
}

const LISTS: ReadonlySet<string> = new Set([
  ...LIBRARY_LISTS,
  ...SHELL_LISTS,
  ...['rules', 'photos', ...SERVICE_LISTS, ...HEAD_LISTS],
]);

export function nodeAt(file: OpenFile, ...path: readonly string[]): Node | null {
  let node = file.document.root;
  for (const step of path) {
    if (!isMap(node)) return null;
    const pair = (node.items as Pair<Node, Node | null>[]).find((item) => (item.key as { value?: unknown }).value === step);
    node = pair?.value ?? null;
  }
  return node;
}

function unknownInFile(key: string, name: string): string {
  const wanted = nearest(key, [name, 'units'], 1)[0];
  const expected = wanted === undefined ? `the list \`${name}\` (and \`units\` before it)` : `\`${wanted}\``;
  return `Found the key \`${shown(key)}\` at the head of this file, expected ${expected}`;
}

/** Keys to which nothing was typed count as not typed; the shop's own are never looked at. */
export function withoutBlanks(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(withoutBlanks);
  if (!isMapping(data)) return data;
  const kept: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(data)) {
    if (value !== null && !key.startsWith('x-')) kept[key] = withoutBlanks(value);
  }
  return kept;
}

/** No fault of reading lies within this record. */
function isWhole(document: SourceDocument, node: Node | null, but: readonly (Node | null)[] = []): boolean {
  const within = (offset: number, some: Node | null): boolean =>
    !!some?.range && offset >= some.range[0] && offset < some.range[2];
  return !document.faults.some((offset) => within(offset, node) && !but.some((part) => within(offset, part)));
}
