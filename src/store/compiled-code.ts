import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { cachedDataVersionTag } from 'node:v8';
import type { Script } from 'node:vm';
import { userCacheDir } from './cache-key.js';
import { digest, sealed, unsealed } from './sealed.js';

/** One of each command, and of a few starts after an update. */
const MOST_FILES = 40;

/** The first run of a command does other things than those that follow: what these run is compiled by then, too. */
const LEARNING_RUNS = 3;

const NEW_LINE = 10;

/** The line that a kept file begins with, behind its mark: the code of each source, by the digest of its text, lies after it. */
interface Head {
  readonly runs: number;
  readonly sources: Readonly<Record<string, readonly [from: number, to: number, sha256: string]>>;
}

/**
 * What V8 made of the program's files, in the user's own folder: of one question, of this V8 with its settings. Code is found by the
 * digest of the text that it was made of; what is damaged, or not marked with this user's key, is not there. A folder that cannot be
 * written to keeps nothing.
 */
export class CompiledCode {
  private readonly scripts = new Map<string, Script>();
  private fresh = false;

  private constructor(
    private readonly file: string,
    private readonly head: Head,
    private readonly bytes: Buffer,
  ) {}

  static open(question: readonly string[]): CompiledCode {
    const of = [...question, process.version, process.arch, String(cachedDataVersionTag())];
    const file = path.join(userCacheDir(), 'compiled', digest(of.join('\n')).slice(0, 24));
    try {
      const bytes = readFileSync(file);
      const end = bytes.indexOf(NEW_LINE);
      const head = unsealed(bytes.subarray(0, Math.max(end, 0)));
      if (head) return new CompiledCode(file, JSON.parse(head.toString('latin1')) as Head, bytes.subarray(end + 1));
    } catch {
      // Nothing was kept yet.
    }
    return new CompiledCode(file, { runs: 0, sources: {} }, Buffer.alloc(0));
  }

  /** The code of the text with this digest. */
  get(source: string): Buffer | undefined {
    const [from, to, sha256] = Object.hasOwn(this.head.sources, source) ? (this.head.sources[source] ?? []) : [];
    if (sha256 === undefined) return undefined;
    const code = this.bytes.subarray(from, to);
    return digest(code) === sha256 ? code : undefined;
  }

  /** That this script was made of that text, from kept code or without. */
  took(source: string, script: Script): void {
    this.scripts.set(source, script);
    // Undefined where no code was given.
    if (script.cachedDataRejected !== false) this.fresh = true;
  }

  /** Keeps what is compiled by now, where that is more than was kept. */
  keep(): void {
    if (!this.fresh && this.head.runs >= LEARNING_RUNS) return;
    try {
      this.write();
    } catch {
      // Compiled again next time.
    }
  }

  private write(): void {
    const parts: Buffer[] = [];
    const sources: Record<string, readonly [number, number, string]> = {};
    let from = 0;
    const add = (source: string, code: Buffer): void => {
      sources[source] = [from, from + code.length, digest(code)];
      from += code.length;
      parts.push(code);
    };
    for (const [source, script] of this.scripts) add(source, script.createCachedData());
    for (const source of Object.keys(this.head.sources)) {
      const code = this.scripts.has(source) ? undefined : this.get(source);
      if (code) add(source, code);
    }
    const head = sealed(JSON.stringify({ runs: this.head.runs + 1, sources } satisfies Head));
    if (!head) return;
    mkdirSync(path.dirname(this.file), { recursive: true, mode: 0o700 });
    const beside = `${this.file}.${process.pid}`;
    try {
      writeFileSync(beside, Buffer.concat([head, Buffer.from([NEW_LINE]), ...parts]), { flag: 'wx', mode: 0o600 });
      renameSync(beside, this.file);
    } finally {
      rmSync(beside, { force: true });
    }
    this.thin();
  }

  /** Takes the oldest away. */
  private thin(): void {
    const folder = path.dirname(this.file);
    const files = readdirSync(folder).map((name) => path.join(folder, name));
    if (files.length <= MOST_FILES) return;
    const dated = files.map((file) => ({ file, at: statSync(file).mtimeMs })).sort((a, b) => a.at - b.at);
    for (const { file } of dated.slice(0, files.length - MOST_FILES)) rmSync(file, { force: true });
  }
}
