import { Composer, type Document, isSeq, type Node, Parser, YAMLSeq } from 'yaml';
import { NOT_PLAIN, quickItem } from './quick.js';

/** Failsafe: every scalar is text until a field says what it should be. Told to be silent, the parser would drop a second document without a word. */
export const OPTIONS = { schema: 'failsafe', uniqueKeys: false, prettyErrors: false, logLevel: 'error' } as const;

/** Signs of a piece; one record may make a piece longer. */
const PIECE = 16 * 1024;

/**
 * Parses a long list of records piece by piece, so that the parser's tokens of one piece are gone before the next: a fifth less time
 * than the whole at once, and memory that does not grow with the file. Pieces end before a line that starts with `- `, which in a block
 * list is always a new item. Each piece is given to `take` while it is at hand; an item is parsed again where somebody asks for it
 * later: few are asked for, and thousands of nodes would only be carried along.
 * Undefined, perhaps after some pieces, where the text is no such list, or something could reach over such a line: an anchor, a second
 * document, any error at all. Throws where the text is nested deeper than the parser's stack.
 */
export function parseInPieces(text: string, take: (piece: YAMLSeq<Node>) => void): YAMLSeq<Node> | undefined {
  if (text.length < 2 * PIECE) return undefined;
  const cuts = cutsOf(text, PIECE);
  if (cuts === undefined || cuts.length < 3) return undefined;
  const items = new LaterItems(text);
  let first: YAMLSeq<Node> | undefined;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from, to] = [cuts[i] as number, cuts[i + 1] as number];
    const contents = listOf(text.slice(from, to), from);
    if (contents === undefined) return undefined;
    take(contents);
    items.add(contents.items, from, to);
    first ??= contents;
  }
  if (!first?.range) return undefined;
  first.items = items.asArray();
  first.range = [first.range[0], text.length, text.length];
  return first;
}

/**
 * A list of records that are mostly written the plain way: those are read at once, the others one by one by the reader of all YAML, which
 * gives them to `take` in their order. Every item's node is made when somebody asks for it. Undefined where anything may reach beyond its item.
 */
export function quickList(
  text: string,
  take: (item: { readonly plain: unknown } | { readonly node: YAMLSeq<Node> }) => void,
): YAMLSeq<Node> | undefined {
  const starts = startsOf(text);
  if (starts === undefined) return undefined;
  const items = new LaterItems(text);
  for (let i = 0; i < starts.length; i++) {
    const [from, to] = [starts[i] as number, starts[i + 1] ?? text.length];
    const plain = quickItem(text, from, to);
    const node = plain === NOT_PLAIN ? listOf(text.slice(from, to), from) : undefined;
    if (plain === NOT_PLAIN && node?.items.length !== 1) return undefined;
    take(node ? { node } : { plain });
    items.addOne(from, to);
  }
  const list = new YAMLSeq<Node>();
  list.items = items.asArray();
  list.range = [starts[0] as number, text.length, text.length];
  return list;
}

/** Where the items of a list begin that starts at the margin, with nothing but notes before it. */
function startsOf(text: string): readonly number[] | undefined {
  const starts = text.startsWith('- ') ? [0] : [];
  for (let at = text.indexOf('\n- '); at >= 0; at = text.indexOf('\n- ', at + 1)) starts.push(at + 1);
  const [first] = starts;
  if (first === undefined || !/^(?: *(?:#[^\n]*)?\n)*$/u.test(text.slice(0, first))) return undefined;
  return /(?:^|\n)(?:---|\.\.\.|%)/u.test(text) ? undefined : starts;
}

/** Items of a list by where they stand in the text, parsed when they are asked for. */
class LaterItems {
  private readonly made: Node[] = [];
  /** Where each item begins and ends; nothing for one that is there already. */
  private readonly spans: (readonly [number, number] | undefined)[] = [];

  constructor(private readonly text: string) {}

  /** Those of one piece. Kept as they are where it does not show in the lines where each begins. */
  add(items: readonly Node[], from: number, to: number): void {
    const starts = this.text.startsWith('- ', from) ? [from] : [];
    for (let at = this.text.indexOf('\n- ', from); at >= 0 && at + 1 < to; at = this.text.indexOf('\n- ', at + 1))
      starts.push(at + 1);
    const plain = starts.length === items.length;
    items.forEach((item, i) => {
      if (!plain) this.made[this.spans.length] = item;
      this.spans.push(plain ? [starts[i] as number, starts[i + 1] ?? to] : undefined);
    });
  }

  addOne(from: number, to: number): void {
    this.spans.push([from, to]);
  }

  asArray(): Node[] {
    this.made.length = this.spans.length;
    const index = (key: string | symbol): number => (typeof key === 'string' && /^\d+$/u.test(key) ? Number(key) : -1);
    return new Proxy(this.made, {
      get: (made, key) => (this.spans[index(key)] ? this.at(index(key)) : Reflect.get(made, key)),
      has: (made, key) => this.spans[index(key)] !== undefined || Reflect.has(made, key),
    });
  }

  private at(i: number): Node {
    const [from, to] = this.spans[i] as readonly [number, number];
    this.made[i] ??= listOf(this.text.slice(from, to), from)?.items[0] as Node;
    return this.made[i] as Node;
  }
}

/** Where pieces of at least so many signs start, and the end of the text. Undefined where something could reach over a cut. */
function cutsOf(text: string, piece: number): readonly number[] | undefined {
  if (/[&*]/u.test(text) || /(?:^|\n)(?:---|\.\.\.|%)/u.test(text)) return undefined;
  const cuts = [0];
  for (let at = text.indexOf('\n- ', piece); at >= 0; at = text.indexOf('\n- ', at + piece)) cuts.push(at + 1);
  cuts.push(text.length);
  return cuts;
}

/**
 * The same lines, with the items of a list that are not wanted left blank: to look for few records in many files. Where the text is
 * not surely a list of items that stand by themselves, all of it.
 */
export function onlyItems(text: string, wanted: (item: string) => boolean): string {
  const cuts = cutsOf(text, 1);
  // A line that begins with anything else is no part of an item: a key with a list of its own.
  if (cuts === undefined || /\n[^\s#-]/u.test(text.slice(cuts[1]))) return text;
  return cuts
    .slice(0, -1)
    .map((from, i) => {
      const item = text.slice(from, cuts[i + 1]);
      return (i === 0 && !item.startsWith('- ')) || wanted(item) ? item : item.replace(/[^\n]+/gu, '');
    })
    .join('');
}

/** The block list in a piece that begins at an offset; nothing where it is not one, or not without fault. */
function listOf(piece: string, offset: number): YAMLSeq<Node> | undefined {
  const parser = new Parser();
  parser.offset = offset;
  const found: Document.Parsed[] = [...new Composer(OPTIONS).compose(parser.parse(piece), true, offset + piece.length)];
  const [only] = found;
  if (found.length !== 1 || !only || only.errors.length > 0) return undefined;
  return isSeq(only.contents) && !only.contents.flow ? (only.contents as YAMLSeq<Node>) : undefined;
}
