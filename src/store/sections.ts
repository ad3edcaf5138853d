import { deserialize, serialize } from 'node:v8';
import { getOwn } from '../get-own.js';
import type { KeptAt } from './kept-answers.js';
import { plainOf } from './plain-of.js';
import { digest, sealed, unsealed } from './sealed.js';

/** Entries of one kind; the model and the figures of a shell of two thousand records take about three megabytes. */
const MOST_KEPT = 40;

/** What is larger is computed again. */
const LARGEST_BYTES = 64 * 1024 * 1024;

/** The line that a kept file begins with, behind its mark: what it is of, and of each section where it lies after this line. */
interface Contents {
  readonly stamp: string;
  readonly sections: Readonly<Record<string, readonly [from: number, to: number, sha256: string]>>;
}

const NEW_LINE = 10;

/**
 * What was computed once of one state of the records, by name: any value of plain data, maps and sets. A section is read when it is asked
 * for. What is damaged, of another state, or not marked with this user's key is not there.
 */
export class Sections {
  private readonly fresh = new Map<string, Uint8Array>();
  private readonly values = new Map<string, unknown>();
  private readonly whole = new Map<string, Buffer>();

  private constructor(
    private readonly at: KeptAt,
    private readonly contents: Contents['sections'],
    private readonly bytes: Buffer,
  ) {}

  /** Empty where nothing of this state is kept. */
  static open(at: KeptAt): Sections {
    const none = new Sections(at, {}, Buffer.alloc(0));
    const bytes = at.room.read(at.name);
    const end = bytes?.indexOf(NEW_LINE) ?? -1;
    const head = bytes && end > 0 ? unsealed(bytes.subarray(0, end)) : undefined;
    if (!bytes || !head) return none;
    const { stamp, sections } = (JSON.parse(head.toString('utf8')) ?? {}) as Partial<Contents>;
    return stamp === at.stamp && sections ? new Sections(at, sections, bytes.subarray(end + 1)) : none;
  }

  has(name: string): boolean {
    return this.values.has(name) || this.stored(name) !== undefined;
  }

  /** Undefined where nothing of that name is kept; the same object each time. */
  get(name: string): unknown {
    if (!this.values.has(name)) {
      const bytes = this.stored(name);
      if (bytes === undefined) return undefined;
      this.values.set(name, deserialize(bytes));
    }
    return this.values.get(name);
  }

  /** Keeps it for the next time; what cannot be written down is computed then, too. */
  put(name: string, value: unknown): void {
    this.values.set(name, value);
    try {
      this.fresh.set(name, serialize(plainOf(value)));
    } catch {
      // Something that only works while the program runs.
    }
  }

  /** Writes what came in, beside what was there. Nothing is kept while a file is so young that it could be changed again unseen. */
  async save(): Promise<void> {
    if (this.fresh.size === 0 || !this.at.settled) return;
    const parts: Uint8Array[] = [];
    const sections: Record<string, readonly [number, number, string]> = {};
    let from = 0;
    const add = (name: string, bytes: Uint8Array): void => {
      sections[name] = [from, from + bytes.length, digest(bytes)];
      from += bytes.length;
      parts.push(bytes);
    };
    for (const name of Object.keys(this.contents)) {
      const bytes = this.fresh.has(name) ? undefined : this.stored(name);
      if (bytes) add(name, bytes);
    }
    for (const [name, bytes] of this.fresh) add(name, bytes);
    this.fresh.clear();
    const head = sealed(JSON.stringify({ stamp: this.at.stamp, sections } satisfies Contents));
    if (!head || from > LARGEST_BYTES) return;
    await this.at.room.write(this.at.name, Buffer.concat([head, Buffer.from([NEW_LINE]), ...parts]));
    await this.at.room.thin(this.at.most ?? MOST_KEPT);
  }

  /** Its bytes; undefined where it is not there or damaged. */
  private stored(name: string): Buffer | undefined {
    const known = this.whole.get(name);
    if (known) return known;
    const [from, to, sha256] = getOwn(this.contents, name) ?? [0, 0, ''];
    const bytes = this.bytes.subarray(from, to);
    if (sha256 === '' || digest(bytes) !== sha256) return undefined;
    this.whole.set(name, bytes);
    return bytes;
  }
}
