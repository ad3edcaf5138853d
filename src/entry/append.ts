import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { UserError } from '../user-error.js';
import { endOf, isBlank, Splices, startOf, wireRootOf } from './splices.js';
import { type Data, flow, item, type Style } from './yaml-text.js';

/** The list that new records go to. */
export interface ListPlace {
  readonly file: string;
  /** Keys down to the list: `['chassis', 'axles']`. Of one key only, the file may also be the list itself. */
  readonly path: readonly string[];
  /** The file may be the list itself, as members.yaml: `path` is used where it opens with `units:`. */
  readonly bare: boolean;
  /** How a first record is laid out; others look like their neighbours. */
  readonly usual: Style;
}

/** What stands as a comment above some of the new records. */
export type Comments = ReadonlyMap<Data, string>;

/**
 * Text of a file with records added at the end of one of its lists. Nothing else changes: comments, blank lines and order stay.
 * `old` is null where there is no file yet. Throws {@link UserError} where the file has another form.
 */
export function appendRecords(
  place: ListPlace,
  old: string | null,
  records: readonly Data[],
  comments: Comments = new Map(),
  /** Of `old`, where it was read already. */
  root: Node | null = wireRootOf(place.file, old ?? ''),
): string {
  const splices = new Splices(old ?? '');
  if (records.length > 0) new Appender(place, splices, comments).append(root, records);
  return splices.apply();
}

class Appender {
  constructor(
    private readonly place: ListPlace,
    private readonly splices: Splices,
    private readonly comments: Comments,
  ) {}

  append(root: Node | null, records: readonly Data[]): void {
    const { path, bare } = this.place;
    if (bare && root === null) this.atEnd(this.items(records, this.place.usual, ''));
    else if (bare && isSeq(root)) this.toList(root, records);
    else this.under(root, path, records);
  }

  /** Follows the keys down; makes the list, and the blocks around it, where they are not there. */
  private under(root: Node | null, path: readonly string[], records: readonly Data[]): void {
    const [key, ...rest] = path as readonly [string, ...string[]];
    if (root === null) {
      this.atEnd(this.nested(path, records, ''));
      return;
    }
    const map = this.mapping(root);
    const pair = (map.items as Pair<Node, Node | null>[]).find((one) => isScalar(one.key) && one.key.value === key);
    const indent = ' '.repeat(this.splices.column(startOf((map.items[0] as Pair<Node>).key)));
    if (pair === undefined) {
      const text = this.nested(path, records, indent);
      if (indent === '') this.atEnd(text);
      else this.splices.insert(this.splices.lineEnd(endOf(map)), text);
    } else if (isBlank(pair.value)) {
      const text = this.nested(rest, records, `${indent}  `);
      this.splices.insert(this.splices.lineEnd(endOf(pair.key)), text);
    } else if (rest.length > 0) this.under(pair.value, rest, records);
    else if (isSeq(pair.value)) this.toList(pair.value, records);
    else throw new UserError(`\`${this.place.path.join('.')}\` in ${this.place.file} is not a list: correct it first`);
  }

  private mapping(node: Node): YAMLMap {
    if (isMap(node) && !node.flow && node.items.length > 0) return node;
    throw new UserError(
      `${this.place.file} has no block of keys for \`${this.place.path.join('.')}\`: write one there, a key a line, or add the record by hand`,
    );
  }

  private toList(list: YAMLSeq, records: readonly Data[]): void {
    const last = list.items.at(-1) as Node | undefined;
    if (list.flow) {
      const text = records.map(flow).join(', ');
      this.splices.insert(last ? this.splices.trimmed(endOf(last)) : startOf(list) + 1, last ? `, ${text}` : text);
      return;
    }
    const style: Style = isMap(last) ? (last.flow ? 'flow' : 'block') : this.place.usual;
    const indent = ' '.repeat(this.splices.column(startOf(list)));
    const text = this.items(records, style, indent, this.blankBetween(list));
    const end = this.splices.lineEnd(endOf(last ?? list));
    // Below the comments that end the file, where its list does.
    const onlyComments = /^(?:[ \t]*(?:#[^\n]*)?(?:\n|$))*$/u.test(this.splices.old.slice(end));
    if (onlyComments && indent === '') this.atEnd(text);
    else this.splices.insert(end, text);
  }

  private items(records: readonly Data[], style: Style, indent: string, apart = style === 'block'): string {
    return records
      .map((record, i) => (apart && (i > 0 || this.splices.old !== '') ? '\n' : '') + this.item(record, style, indent))
      .join('');
  }

  private item(record: Data, style: Style, indent: string): string {
    const comment = this.comments.get(record);
    return (comment === undefined ? '' : `${indent}# ${comment.replace(/\s+/gu, ' ')}\n`) + item(record, style, indent);
  }

  private nested(path: readonly string[], records: readonly Data[], indent: string): string {
    const heads = path.map((key, i) => `${indent}${'  '.repeat(i)}${key}:\n`);
    return (
      heads.join('') + records.map((record) => this.item(record, this.place.usual, indent + '  '.repeat(path.length))).join('')
    );
  }

  /** A blank line stands between the last two records. */
  private blankBetween(list: YAMLSeq): boolean {
    const [a, b] = list.items.slice(-2) as Node[];
    return !!a && !!b && /\n[ \t]*\n/u.test(this.splices.old.slice(this.splices.trimmed(endOf(a)), startOf(b)));
  }

  private atEnd(text: string): void {
    this.splices.insert(this.splices.old.length, text);
  }
}
