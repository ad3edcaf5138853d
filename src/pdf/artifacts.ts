/**
 * Marks what a page shows beside its tagged content as ornament (ISO 32000-2, 14.8.2.2), so that a screen reader is not told of it:
 * running heads and feet by their kind, rules and fills as plain ornament. Chromium tags words and pictures, and leaves the rest bare.
 */

/** Where the text of a page begins and ends, in points from its foot: what is drawn above or below is its running head or foot. */
export interface TextBand {
  readonly headPt: number;
  readonly footPt: number;
}

const HEAD = '/Artifact <</Type /Pagination /Subtype /Header>> BDC\n';
const FOOT = '/Artifact <</Type /Pagination /Subtype /Footer>> BDC\n';
const PLAIN = '/Artifact BMC\n';
const END = 'EMC\n';

/** A page's instructions with everything marked. Undefined where they are not written line by line as Chromium does. */
export function markArtifacts(content: Buffer, band: TextBand): Buffer | undefined {
  const marks = new Marks(content, band);
  for (let from = 0; from < content.length; ) {
    const stop = content.indexOf(NEW_LINE, from);
    const to = stop < 0 ? content.length : stop;
    if (!marks.line(from, to)) return undefined;
    from = to + 1;
  }
  return marks.whole();
}

const NEW_LINE = 0x0a;
/** Its operator follows a dictionary without a space. */
const GREATER = 0x3e;
const PAINTING = new Set(['f', 'f*', 'F', 'S', 's', 'B', 'B*', 'b', 'b*', 'sh', 'Do']);
const PATH = new Set(['m', 're']);

/** Where instructions are put in between, found line by line. */
class Marks {
  private readonly parts: (Buffer | string)[] = [];
  private copied = 0;
  /** Marked content that the browser opened, and ours. */
  private depth = 0;
  private open: string | undefined;
  /** Where the text or path that is being drawn began, and how high it stands. */
  private begun: { readonly at: number; y: number } | undefined;
  private inText = false;
  /** Height of a point on the page: `y × scale + shift`; pushed by `q`. */
  private scale = 1;
  private shift = 0;
  private readonly kept: (readonly [number, number])[] = [];

  constructor(
    private readonly content: Buffer,
    private readonly band: TextBand,
  ) {}

  /** False for what is not known here. */
  line(from: number, to: number): boolean {
    const operator = this.operator(from, to);
    if (operator === 'Tj' || operator === 'l' || operator === 'c') return true;
    if (operator === 'BDC' || operator === 'BMC') {
      if (this.inText) return false;
      this.close(from);
      this.depth++;
      return true;
    }
    if (operator === 'EMC') return --this.depth >= 0;
    if (operator === 'q') this.push(from);
    else if (operator === 'Q') this.pop(from);
    else if (operator === 'cm') this.turn(this.numbers(from, to));
    else if (operator === 'BI' || operator === 'ID') return false;
    else if (this.depth === 0) this.draw(operator, from, to);
    return true;
  }

  whole(): Buffer | undefined {
    if (this.depth !== 0 || this.inText) return undefined;
    this.close(this.content.length);
    const rest = this.content.subarray(this.copied);
    return Buffer.concat([...this.parts, rest].map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : part)));
  }

  private draw(operator: string, from: number, to: number): void {
    if (operator === 'BT') {
      this.inText = true;
      this.begun = { at: from, y: Number.NaN };
    } else if (operator === 'Tm' && this.begun) {
      if (Number.isNaN(this.begun.y)) this.begun.y = this.numbers(from, to)[5] ?? Number.NaN;
    } else if (operator === 'ET') {
      this.inText = false;
      this.paint();
    } else if (PATH.has(operator)) {
      this.begun ??= { at: from, y: this.numbers(from, to)[1] ?? Number.NaN };
    } else if (PAINTING.has(operator)) {
      this.begun ??= { at: from, y: Number.NaN };
      this.paint();
    } else if (operator === 'n') this.begun = undefined;
  }

  /** What was begun is shown: it belongs to a stretch of ornament, of the kind of its place. */
  private paint(): void {
    const { at, y } = this.begun as { at: number; y: number };
    this.begun = undefined;
    const kind = this.kindAt(y * this.scale + this.shift);
    if (this.open === kind) return;
    this.close(at);
    this.put(at, kind);
    this.open = kind;
  }

  private kindAt(heightPt: number): string {
    if (heightPt > this.band.headPt) return HEAD;
    return heightPt < this.band.footPt ? FOOT : PLAIN;
  }

  private close(at: number): void {
    if (this.open !== undefined) this.put(at, at > 0 && this.content[at - 1] !== NEW_LINE ? `\n${END}` : END);
    this.open = undefined;
  }

  private put(at: number, words: string): void {
    this.parts.push(this.content.subarray(this.copied, at), words);
    this.copied = at;
  }

  private push(at: number): void {
    if (this.depth === 0) this.close(at);
    this.kept.push([this.scale, this.shift]);
  }

  private pop(at: number): void {
    if (this.depth === 0) this.close(at);
    [this.scale, this.shift] = this.kept.pop() ?? [this.scale, this.shift];
  }

  /** What is turned is no running head. */
  private turn([, b = 0, , d = 1, , f = 0]: readonly number[]): void {
    this.shift += f * this.scale;
    this.scale *= b === 0 ? d : Number.NaN;
  }

  private operator(from: number, to: number): string {
    let end = to;
    while (end > from && (this.content[end - 1] as number) <= 0x20) end--;
    let start = end;
    while (start > from && (this.content[start - 1] as number) > 0x20 && this.content[start - 1] !== GREATER) start--;
    return this.content.toString('latin1', start, end);
  }

  private numbers(from: number, to: number): readonly number[] {
    return this.content.toString('latin1', from, to).trim().split(' ').map(Number);
  }
}
