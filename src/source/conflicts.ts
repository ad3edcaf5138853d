/** Two forms of some lines that a merge could not choose between, as Git marks them. */
export interface ConflictBlock {
  /** Line of `<<<<<<<`, from 1. */
  readonly line: number;
  /** Offsets of the first of its lines, and behind the last. */
  readonly from: number;
  readonly to: number;
  readonly ours: string;
  readonly theirs: string;
  readonly oursName: string;
  readonly theirsName: string;
}

/** The marked lines of a text, in order; a mark without its others counts as a block of its own with nothing in it. */
export function conflictsIn(text: string): readonly ConflictBlock[] {
  const blocks: ConflictBlock[] = [];
  let open:
    | { line: number; from: number; name: string; side: 'ours' | 'base' | 'theirs'; ours: string; theirs: string }
    | undefined;
  let [offset, number] = [0, 0];
  for (const line of text.split(/(?<=\n)/u)) {
    number++;
    const end = offset + line.length;
    const plain = line.replace(/\r?\n$/u, '');
    if (/^<{7}(?: |$)/u.test(plain)) {
      if (open) blocks.push(halfOf(open, offset));
      open = { line: number, from: offset, name: plain.slice(8), side: 'ours', ours: '', theirs: '' };
    } else if (open && /^\|{7}(?: |$)/u.test(plain)) open.side = 'base';
    else if (open && /^={7}$/u.test(plain)) open.side = 'theirs';
    else if (/^>{7}(?: |$)/u.test(plain)) {
      const { from = offset, line: first = number, name = '', ours = '', theirs = '' } = open ?? {};
      blocks.push({ line: first, from, to: end, ours, theirs, oursName: name, theirsName: plain.slice(8) });
      open = undefined;
    } else if (open && open.side !== 'base') open[open.side] += line;
    offset = end;
  }
  return open ? [...blocks, halfOf(open, text.length)] : blocks;
}

const halfOf = (open: { line: number; from: number; name: string; ours: string; theirs: string }, to: number): ConflictBlock => ({
  line: open.line,
  from: open.from,
  to,
  ours: open.ours,
  theirs: open.theirs,
  oursName: open.name,
  theirsName: '',
});

/** What a block is about: ids in its two forms. */
export const idsInConflict = ({ ours, theirs }: ConflictBlock): readonly string[] => [
  ...new Set(
    [...`${ours}\n${theirs}`.matchAll(/(?:^|[{,\s])id: *("?)([\p{L}\p{N}][\p{L}\p{N}._/-]*)\1/gmu)].map(([, , id = '']) => id),
  ),
];
