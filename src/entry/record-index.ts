import { isSeq, type Node } from 'yaml';
import type { Finding } from '../finding.js';
import type { LinkedLibrary } from '../model/links.js';
import { loadLibrary } from '../model/load-library.js';
import type { StoreText } from '../model/load-types.js';
import { nodeAt, type OpenFile, RecordReader } from '../model/records.js';
import { Register } from '../model/register.js';
import type { FileUnits } from '../quantity/parse.js';
import { identityOf } from '../records/identity.js';
import type { RecordKind } from '../records/index.js';
import { NodeSource } from '../source/source.js';
import { roleOf } from '../store/layout.js';
import { valueAt } from './change.js';
import { type EntryKind, type HeldList, homeOf, listsOf } from './homes.js';
import { scanIds } from './scan-ids.js';
import { type Data, isData } from './yaml-text.js';

/** A record as it stands in a file, its form not looked at. */
export interface IndexedRecord {
  readonly kind: EntryKind;
  /** Its id, or what stands for one; see {@link identityOf}. */
  readonly id: string | undefined;
  readonly data: Data;
  readonly file: string;
  readonly node: Node;
}

export interface IndexedFile {
  readonly path: string;
  readonly text: string;
  /** Undefined where it is not whole YAML. */
  readonly open: OpenFile | undefined;
}

/** What stands in the library and in one shell: enough to choose an id, a file and to check links. */
export class RecordIndex {
  readonly files = new Map<string, IndexedFile>();
  readonly records: IndexedRecord[] = [];
  readonly register = new Register<RecordKind>();
  private readonly byIdentity = new Map<string, IndexedRecord>();

  constructor(
    text: StoreText,
    /** Undefined for the library alone. */
    readonly shell: string | undefined,
    readonly linked: LinkedLibrary,
    /** Kinds whose records are wanted; of others the ids will do. Everything where it is not said. */
    wanted?: ReadonlySet<EntryKind>,
  ) {
    const reader = new RecordReader(() => {});
    for (const [path, yaml] of text.files) {
      const role = roleOf(path);
      const inShell = 'shell' in role && role.shell === shell;
      if (role.holds === 'unknown' || !(inShell || role.holds === 'library')) continue;
      // As a writer sees it: without the byte order mark, lines ended alike.
      const plain = yaml.replace(/^\uFEFF/u, '').replace(/\r\n/gu, '\n');
      const lists = listsOf(role);
      if (inShell && wanted && this.scanned(plain, lists, wanted)) continue;
      const open = reader.open(path, plain, inShell ? this.register : undefined);
      this.files.set(path, { path, text: plain, open });
      if (open) for (const list of lists) this.take(path, open, list);
    }
  }

  ofKind(kind: EntryKind): readonly IndexedRecord[] {
    return this.records.filter((record) => record.kind === kind);
  }

  find(kind: EntryKind, id: string): IndexedRecord | undefined {
    return this.byIdentity.get(`${kind} ${id}`);
  }

  /** The kind of record that has this id; of kind `kind` only where that lies in the library, whose lists do not share ids. */
  taken(kind: EntryKind, id: string): string | undefined {
    if (homeOf(kind).in === 'library') return this.find(kind, id) && kind;
    return this.register.kindOf(id);
  }

  unitsOf(file: string): FileUnits {
    return this.files.get(file)?.open?.units ?? {};
  }

  /** Claims the ids of a file that holds nothing wanted; false where it must be read whole. */
  private scanned(text: string, lists: readonly HeldList[], wanted: ReadonlySet<EntryKind>): boolean {
    const [list, ...others] = lists;
    if (list === undefined || others.length > 0 || wanted.has(list.kind)) return false;
    const ids = scanIds(text);
    for (const id of ids ?? []) this.register.claim(id, list.kind as RecordKind, { file: '', place: () => NOWHERE }, () => {});
    return ids !== undefined;
  }

  private take(path: string, open: OpenFile, list: HeldList): void {
    const { data, root } = open.document;
    const own = list.bare && Array.isArray(data);
    const items: unknown = own ? data : valueAt(data, list.path);
    const node = own ? root : nodeAt(open, ...list.path);
    if (!Array.isArray(items) || !isSeq(node)) return;
    items.forEach((item: unknown, i) => {
      if (!isData(item)) return;
      const record: IndexedRecord = {
        kind: list.kind,
        id: identityOf(list.kind, item),
        data: item,
        file: path,
        get node() {
          return node.items[i] as Node;
        },
      };
      this.records.push(record);
      if (record.id === undefined) return;
      this.byIdentity.set(`${list.kind} ${record.id}`, record);
      const inShell = homeOf(list.kind).in !== 'library' && item.id !== undefined;
      if (inShell)
        this.register.claim(record.id, list.kind as RecordKind, new NodeSource(open.document, () => record.node), () => {});
    });
  }
}

/** Reads what a store's text holds of the library and of one shell, or the ids alone of what is not `wanted`. Pure; faults of form are for `check` to tell. */
export function readKnown(text: StoreText, shell: string | undefined, wanted?: ReadonlySet<EntryKind>): RecordIndex {
  const none = (_finding: Finding): void => {};
  const known = new RecordIndex(text, shell, loadLibrary(text.files, none), wanted);
  if (shell !== undefined) known.register.claim(shell, 'shell', { file: '', place: () => NOWHERE }, none);
  return known;
}

const NOWHERE = { file: '', line: 1, column: 1, endLine: 1, endColumn: 2 };
