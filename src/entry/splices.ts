import { isScalar, type Node, parseDocument } from 'yaml';
import { UserError } from '../user-error.js';

/** Changes to a text, gathered and made at once: all that they do not touch stays as it was typed, sign for sign. */
export class Splices {
  private readonly replaced: { start: number; end: number; text: string }[] = [];
  private readonly inserted = new Map<number, string>();

  constructor(readonly old: string) {}

  replace(start: number, end: number, text: string): void {
    this.replaced.push({ start, end, text });
  }

  /** After what was inserted there before. Whole lines begin on a line of their own. */
  insert(at: number, text: string): void {
    const before = this.insertedAt(at);
    const lead = text.endsWith('\n') && at > 0 && before === '' && this.old[at - 1] !== '\n' ? '\n' : '';
    this.inserted.set(at, before + lead + text);
  }

  insertedAt(at: number): string {
    return this.inserted.get(at) ?? '';
  }

  get any(): boolean {
    return this.replaced.length > 0 || this.inserted.size > 0;
  }

  /** The new text. */
  apply(): string {
    const all = [...this.replaced, ...[...this.inserted].map(([at, text]) => ({ start: at, end: at, text }))];
    const parts: string[] = [];
    let from = 0;
    for (const { start, end, text } of all.sort((a, b) => a.start - b.start || a.end - b.end)) {
      parts.push(this.old.slice(from, start), text);
      from = end;
    }
    return parts.join('') + this.old.slice(from);
  }

  /** Offset after the end of the line that the last sign before `end` is in. */
  lineEnd(end: number): number {
    const next = this.old.indexOf('\n', this.trimmed(end));
    return next === -1 ? this.old.length : next + 1;
  }

  /** `end` moved back over blanks. */
  trimmed(end: number): number {
    let at = end;
    while (at > 0 && /\s/u.test(this.old[at - 1] as string)) at--;
    return at;
  }

  /** Signs before it on its line. */
  column(offset: number): number {
    return offset - (this.old.lastIndexOf('\n', offset - 1) + 1);
  }
}

/** The file's outermost node; null where it holds comments only. Throws {@link UserError} where it is not whole YAML. */
export function wireRootOf(file: string, text: string): Node | null {
  const parsed = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, prettyErrors: false, logLevel: 'silent' });
  if (parsed.errors.length > 0)
    throw new UserError(`${file} is not whole YAML, so nothing was written to it. See: shellbook check`);
  const root = parsed.contents as Node | null;
  return root === null || isBlank(root) ? null : root;
}

export const isBlank = (node: Node | null): boolean =>
  node === null || (isScalar(node) && (node.value === '' || node.value === null) && node.type === 'PLAIN');

export const startOf = (node: Node): number => node.range?.[0] ?? 0;
export const endOf = (node: Node): number => node.range?.[1] ?? 0;
