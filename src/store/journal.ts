import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, realpath, rm, stat } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';
import { replaceFile } from './replace.js';
import type { WrittenFile } from './write.js';

/** What one command of this user wrote, so that it can be taken back. */
export interface JournalEntry {
  /** As a person would say it: `add weld W-0112`. */
  readonly what: string;
  /** ISO 8601. */
  readonly time: string;
  readonly files: readonly JournalFile[];
}

export interface JournalFile {
  /** From the store, with forward slashes. */
  readonly file: string;
  /** The bytes that stood there before, Base64; null where there was no file. */
  readonly before: string | null;
  /** SHA-256 of what was written, hex. */
  readonly after: string;
}

/** So many entries of a store are kept. */
const KEPT = 20;
/** What is larger was no entry by hand, and Git has what stood there before. */
const MOST_BYTES = 64 * 1024 * 1024;

/** The user's own folder for what the program must remember (XDG Base Directory Specification; %LOCALAPPDATA%; ~/Library). */
function userStateDir({ XDG_STATE_HOME, LOCALAPPDATA }: NodeJS.ProcessEnv = process.env): string {
  if (XDG_STATE_HOME && path.isAbsolute(XDG_STATE_HOME)) return path.join(XDG_STATE_HOME, 'shellbook');
  if (process.platform === 'win32' && LOCALAPPDATA) return path.join(LOCALAPPDATA, 'shellbook');
  const own = process.platform === 'darwin' ? path.join('Library', 'Application Support') : path.join('.local', 'state');
  return path.join(homedir(), own, 'shellbook');
}

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** What this user entered into one store with this program, newest last. It lies with the user: a store from elsewhere brings none along. */
export class Journal {
  private constructor(private readonly folder: string) {}

  static async of(root: string): Promise<Journal> {
    return new Journal(path.join(userStateDir(), 'undo', sha256Of(Buffer.from(await realpath(root))).slice(0, 32)));
  }

  /** Keeps an entry, and drops the oldest beyond the number kept. What cannot be kept cannot be undone, and stops nothing. */
  async put(what: string, time: string, written: readonly WrittenFile[]): Promise<void> {
    if (written.length === 0 || written.reduce((sum, { before }) => sum + (before?.length ?? 0), 0) > MOST_BYTES) return;
    const entry: JournalEntry = {
      what,
      time,
      files: written.map(({ file, before, after }) => ({
        file,
        before: before === null ? null : before.toString('base64'),
        after: sha256Of(after),
      })),
    };
    try {
      await mkdir(this.folder, { recursive: true, mode: 0o700 });
      const names = await this.names();
      const next = Number(names.at(-1)?.slice(0, -JSON_END.length) ?? 0) + 1;
      await replaceFile(
        path.join(this.folder, `${String(next).padStart(DIGITS, '0')}${JSON_END}`),
        Buffer.from(JSON.stringify(entry)),
      );
      for (const name of names.slice(0, Math.max(0, names.length + 1 - KEPT)))
        await rm(path.join(this.folder, name), { force: true });
    } catch {
      // A full disk or a read-only home: the entry itself is written and safe.
    }
  }

  /** The newest entry, and how to strike it out; undefined where there is none that can be read. */
  async last(): Promise<{ readonly entry: JournalEntry; drop(): Promise<void> } | undefined> {
    const name = (await this.names()).at(-1);
    if (name === undefined) return undefined;
    const file = path.join(this.folder, name);
    const entry = await entryIn(file);
    return entry && { entry, drop: () => rm(file, { force: true }) };
  }

  /** What every entry that is kept wrote, the newest first. */
  async entered(): Promise<readonly string[]> {
    const names = [...(await this.names())].reverse();
    const entries = await Promise.all(names.map((name) => entryIn(path.join(this.folder, name))));
    return entries.flatMap((entry) => entry?.what ?? []);
  }

  private async names(): Promise<readonly string[]> {
    const found = await readdir(this.folder).catch(() => []);
    return found.filter((name) => NAME.test(name)).sort();
  }
}

const JSON_END = '.json';
const DIGITS = 9;
const NAME = /^\d{9}\.json$/u;

async function entryIn(file: string): Promise<JournalEntry | undefined> {
  try {
    if ((await stat(file)).size > 2 * MOST_BYTES) return undefined;
    const read: unknown = JSON.parse(await readFile(file, 'utf8'));
    return isEntry(read) ? read : undefined;
  } catch {
    return undefined;
  }
}

const isEntry = (read: unknown): read is JournalEntry =>
  isData(read) &&
  typeof read.what === 'string' &&
  typeof read.time === 'string' &&
  Array.isArray(read.files) &&
  read.files.every(
    (one: unknown) =>
      isData(one) &&
      typeof one.file === 'string' &&
      typeof one.after === 'string' &&
      (one.before === null || typeof one.before === 'string'),
  );

const isData = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;
