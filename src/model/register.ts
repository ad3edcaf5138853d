import type { Finding } from '../finding.js';
import type { Source } from '../records/index.js';

/** Which ids exist, of what kind: those of records that failed their form too, so that one fault is told once. */
export class Register<Kind extends string = string> {
  private readonly known = new Map<string, { kind: Kind; source: Source }>();
  /** Ids seen in files whose syntax is broken: their kind is not known. */
  private readonly loose = new Set<string>();

  /** False, and a finding, where the id is taken. */
  claim(id: string, kind: Kind, source: Source, say: (finding: Finding) => void): boolean {
    const first = this.known.get(id);
    if (first === undefined) {
      this.known.set(id, { kind, source });
      return true;
    }
    const other = first.kind === kind ? `another ${kind}` : `a ${first.kind}`;
    say({
      rule: 'format.duplicate-id',
      severity: 'error',
      message: `Id \`${id}\` is used twice, expected one record per ID: ${other} already has it. Give this one another ID`,
      ids: [id],
      place: source.place(),
      related: [{ message: 'First use', place: first.source.place() }],
    });
    return false;
  }

  /** Ids of a file that cannot be read, taken from its text. */
  claimLoosely(text: string): void {
    for (const match of text.matchAll(/(?:^|[\s{,])id:\s*["']?([^\s,}"'#]+)/gu)) this.loose.add(match[1] as string);
  }

  /** Ids of a list that stands under a key which nobody reads. */
  claimLooseList(list: readonly unknown[]): void {
    for (const record of list) {
      const id = typeof record === 'object' && record !== null ? (record as { id?: unknown }).id : undefined;
      if (typeof id === 'string' || typeof id === 'number') this.loose.add(String(id));
    }
  }

  kindOf(id: string): Kind | 'any' | undefined {
    return this.known.get(id)?.kind ?? (this.loose.has(id) ? 'any' : undefined);
  }

  ids(): Iterable<string> {
    return this.known.keys();
  }

  *idsOf(kinds: readonly Kind[]): Iterable<string> {
    for (const [id, { kind }] of this.known) if (kinds.includes(kind)) yield id;
  }
}
