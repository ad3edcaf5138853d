import { isMap, isSeq, LineCounter, type Node, parseDocument, type YAMLSeq } from 'yaml';

/** A stretch of a record file: a record with the comments above it, or what stands between lists. */
export interface FilePiece {
  readonly text: string;
  /** Absent for what is no record: it stays while a record of its list does. */
  readonly record?: { readonly id?: string; readonly typed: Readonly<Record<string, unknown>> };
  /** Which list of the file the piece belongs to. */
  readonly list: number;
}

/**
 * Cuts a YAML file of records at their lines, so that joining the pieces gives the file back byte for byte. A file without lists of
 * records is one piece.
 */
export function cutRecords(text: string): readonly FilePiece[] {
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter });
  const lists = listsOf(document.contents as Node | null);
  if (lists.length === 0) return [{ text, list: -1 }];
  const lines = text.split(/(?<=\n)/u);
  const starts = lists.flatMap((list, number) =>
    list.items.map((item, i) => {
      const line = counter.linePos((item as Node).range?.[0] ?? 0).line - 1;
      return { line: i === 0 ? line : withComments(lines, line), record: recordOf(item as Node), list: number };
    }),
  );
  const pieces: FilePiece[] = [];
  let from = 0;
  starts.forEach((start, i) => {
    const head = lines.slice(from, start.line).join('');
    if (head !== '') pieces.push({ text: head, list: start.list });
    const next = starts[i + 1];
    // The head of the list that follows begins at its own key, with the blank line and the comments above it.
    from = next === undefined ? lines.length : next.list === start.list ? next.line : headLine(lines, next.line);
    pieces.push({ text: lines.slice(start.line, from).join(''), record: start.record, list: start.list });
  });
  return pieces;
}

/** The list itself, or every list of a mapping whose items are records. Lists within a record are not looked at. */
function listsOf(root: Node | null): readonly YAMLSeq[] {
  if (isSeq(root)) return root.items.length > 0 ? [root] : [];
  if (!isMap(root)) return [];
  const lists = root.items.flatMap(({ value }) =>
    isSeq(value) && value.items.length > 0 && value.items.every((item) => isMap(item)) ? [value] : [],
  );
  // shell.yaml has lists too (tanks, seats): it is one record, not a file of them.
  return root.has('shell') ? [] : lists;
}

function recordOf(item: Node): NonNullable<FilePiece['record']> {
  const typed = (item.toJSON() ?? {}) as Record<string, unknown>;
  return { ...(typed.id === undefined ? {} : { id: String(typed.id) }), typed };
}

const isQuiet = (line: string | undefined): boolean => line !== undefined && /^\s*(#.*)?\r?\n?$/u.test(line);

function withComments(lines: readonly string[], line: number): number {
  let first = line;
  while (first > 0 && isQuiet(lines[first - 1])) first -= 1;
  return first;
}

/** Where a list's key stands, above its first record. */
const headLine = (lines: readonly string[], line: number): number => withComments(lines, withComments(lines, line) - 1);
