import { Composer, type Document, isSeq, type Node, Parser, parseDocument, type YAMLError } from 'yaml';

/** What one file holds, with offsets into its text. */
export interface Parsed {
  readonly contents: Node | null;
  readonly errors: readonly YAMLError[];
}

/** Failsafe: every scalar is text until a field says what it should be. Told to be silent, the parser would drop a second document without a word. */
const OPTIONS = { schema: 'failsafe', uniqueKeys: false, prettyErrors: false, logLevel: 'error' } as const;

/** Signs of a piece; one record may make a piece longer. */
const PIECE = 16 * 1024;

/**
 * Parses one YAML document. A long list of records is parsed piece by piece, so that the parser's tokens of one piece are gone before
 * the next: a fifth less time than the whole at once, and memory that does not grow with the file. Pieces end before a line that
 * starts with `- `, which in a block list is always a new item; whatever could reach over such a line (an anchor, a second document, any
 * error at all) is left to the parser as a whole.
 * Throws where the text is nested deeper than the parser's stack.
 */
export function parseYaml(text: string): Parsed {
  return inPieces(text) ?? parseDocument(text, OPTIONS);
}

function inPieces(text: string): Parsed | undefined {
  if (text.length < 2 * PIECE) return undefined;
  const cuts = cutsOf(text, PIECE);
  if (cuts === undefined || cuts.length < 3) return undefined;
  const items: Node[] = [];
  let first: Node | undefined;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const contents = listOf(text.slice(cuts[i], cuts[i + 1]), cuts[i] as number);
    if (contents === undefined) return undefined;
    first ??= contents;
    for (const item of contents.items) items.push(item as Node);
  }
  if (!isSeq(first) || !first.range) return undefined;
  first.items = items;
  first.range = [first.range[0], text.length, text.length];
  return { contents: first, errors: [] };
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
function listOf(piece: string, offset: number) {
  const parser = new Parser();
  parser.offset = offset;
  const found: Document.Parsed[] = [...new Composer(OPTIONS).compose(parser.parse(piece), true, offset + piece.length)];
  const [only] = found;
  if (found.length !== 1 || !only || only.errors.length > 0) return undefined;
  return isSeq(only.contents) && !only.contents.flow ? only.contents : undefined;
}
