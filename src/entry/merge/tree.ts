import { isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import { identityOf } from '../../records/identity.js';
import { readDocument } from '../../source/document.js';
import { type FileRole, roleOf } from '../../store/layout.js';
import { type EntryKind, type HeldList, listsOf } from '../homes.js';
import { isBlank, Splices, startOf } from '../splices.js';
import { type Data, isData } from '../yaml-text.js';

/** A record or a key with its value: lines of the file that belong together. */
export interface MergeLeaf {
  readonly leaf: true;
  /** `weld W-0112`, or the key. */
  readonly key: string;
  /** What a person calls it. */
  readonly name: string;
  readonly text: string;
  /** Of a record its fields, of a key its value; as it was typed. */
  readonly data: unknown;
  /** The kind of record; undefined for a key. */
  readonly kind: EntryKind | undefined;
}

/** Lines with a head, parts that have names, and lines behind them. */
export interface MergeBlock {
  readonly leaf: false;
  readonly key: string;
  readonly name: string;
  readonly head: string;
  readonly parts: readonly MergePart[];
  readonly tail: string;
  /** What its parts are: records of a list, or keys. */
  readonly of: 'list' | 'keys';
  /** Signs before each part on its line. */
  readonly indent: number;
  /** The same as one leaf, where the other side has none of these parts. */
  readonly text: string;
  readonly data: unknown;
}

export type MergePart = MergeLeaf | MergeBlock;

/** What the file of this path in a work tree holds; the store may lie in a folder of it. */
export function roleWithin(path: string): FileRole | undefined {
  const parts = path.split('/');
  for (let i = 0; i < parts.length; i++) {
    const role = roleOf(parts.slice(i).join('/'));
    if (role.holds !== 'unknown') return role;
  }
  return undefined;
}

/** A record file taken apart into what has a name; undefined where it cannot be: it is not whole, or two parts of it bear one name. */
export function treeOf(role: FileRole, text: string): MergeBlock | undefined {
  try {
    const { data, broken, root: read } = readDocument('', text);
    const root = read === null || isBlank(read) ? null : read;
    // A starter file of examples alone: a list that has no record yet.
    if (root === null && !broken && listsOf(role).some(({ bare }) => bare)) return emptyList(text);
    if (root === null || broken) return undefined;
    return new TreeMaker(text, listsOf(role)).root(root, data);
  } catch {
    // Not whole YAML, or nested deeper than any record.
    return undefined;
  }
}

const emptyList = (text: string): MergeBlock => ({
  leaf: false,
  key: '',
  name: '',
  of: 'list',
  head: text,
  parts: [],
  tail: '',
  indent: 0,
  text,
  data: [],
});

class Unfit extends Error {}

class TreeMaker {
  private readonly splices: Splices;

  constructor(
    private readonly text: string,
    private readonly lists: readonly HeldList[],
  ) {
    this.splices = new Splices(text);
  }

  root(root: Node, data: unknown): MergeBlock | undefined {
    try {
      const bare = this.lists.find((list) => list.bare);
      if (isSeq(root)) return bare && this.block(root, data, { key: '', path: bare.path, from: 0, to: this.text.length }, bare);
      return isMap(root) ? this.block(root, data, { key: '', path: [], from: 0, to: this.text.length }) : undefined;
    } catch (error) {
      if (error instanceof Unfit) return undefined;
      throw error;
    }
  }

  /** `from` and `to`: the lines that are the block’s, its key’s own included. */
  private block(
    node: Node,
    data: unknown,
    {
      key,
      path,
      from,
      to,
    }: { readonly key: string; readonly path: readonly string[]; readonly from: number; readonly to: number },
    list?: HeldList,
  ): MergeBlock {
    const items = (isSeq(node) || isMap(node) ? node.items : []) as readonly (Node | Pair<Node, Node | null>)[];
    if ((node as { flow?: boolean }).flow === true || items.length === 0) throw new Unfit();
    const starts = items.map((one) => this.lineStart(startOf(isNode(one) ? one : one.key)));
    const first = starts[0] as number;
    const column = this.splices.column(isSeq(node) ? startOf(node) : startOf((items[0] as Pair<Node>).key));
    const parts: MergePart[] = [];
    let at = first;
    items.forEach((one, i) => {
      const value = isNode(one) ? one : (one.value ?? one.key);
      const end = Math.max(at, this.splices.lineEnd(value.range?.[1] ?? 0));
      parts.push(isNode(one) ? this.record(list as HeldList, data, i, at, end) : this.pair(one, data, path, at, end));
      at = end;
    });
    if (new Set(parts.map((part) => part.key)).size !== parts.length || first < from) throw new Unfit();
    return {
      leaf: false,
      key,
      name: key,
      of: isSeq(node) ? 'list' : 'keys',
      head: this.text.slice(from, first),
      parts,
      tail: this.text.slice(at, Math.max(at, to)),
      indent: column,
      text: this.text.slice(from, Math.max(at, to)),
      data,
    };
  }

  private record({ kind }: HeldList, data: unknown, i: number, from: number, to: number): MergeLeaf {
    const record = (data as readonly unknown[])[i];
    const id = isData(record) ? identityOf(kind, record) : undefined;
    if (id === undefined) throw new Unfit();
    return { leaf: true, key: `${kind} ${id}`, name: id, text: this.text.slice(from, to), data: record, kind };
  }

  private pair(
    { key: keyNode, value }: Pair<Node, Node | null>,
    data: unknown,
    path: readonly string[],
    from: number,
    to: number,
  ): MergePart {
    if (!isScalar(keyNode)) throw new Unfit();
    const key = String(keyNode.value);
    const inner = (data as Data)[key];
    const way = [...path, key];
    const list = this.lists.find((one) => one.path.join('/') === way.join('/'));
    const isBlock = (isMap(value) && !value.flow) || (isSeq(value) && !value.flow && list !== undefined);
    if (isBlock && value.items.length > 0) return this.block(value, inner, { key, path: way, from, to }, list);
    return { leaf: true, key, name: way.join('.'), text: this.text.slice(from, to), data: inner, kind: undefined };
  }

  private lineStart(offset: number): number {
    return this.text.lastIndexOf('\n', Math.max(0, offset - 1)) + 1;
  }
}

const isNode = (one: Node | Pair<Node, Node | null>): one is Node => !('key' in one && 'value' in one && !('range' in one));
