import type { Place } from '../finding.js';

/** From an offset in a text to line and column. The table of lines is made at the first question only: a clean file never asks. */
export class Lines {
  private starts: readonly number[] | undefined;

  constructor(
    private readonly file: string,
    private readonly text: string,
  ) {}

  /** The place from offset `start` up to offset `end` (not included); at least one sign wide. */
  place(start: number, end: number): Place {
    const from = this.at(start);
    const to = this.at(Math.max(end, start + 1));
    return { file: this.file, line: from.line, column: from.column, endLine: to.line, endColumn: to.column };
  }

  private at(offset: number): { line: number; column: number } {
    this.starts ??= lineStarts(this.text);
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (this.starts[low] as number) + 1 };
  }
}

function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}
