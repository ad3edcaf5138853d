import { chmodSync, lstatSync, mkdirSync, readdirSync, renameSync, rmdirSync, statSync, utimesSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { UserError } from '../user-error.js';
import { atEnd } from './own/at-end.js';
import { hasEnded, isHere, numberOf, ownName } from './own/owner.js';
import { reason } from './read.js';

/** Fifty writers, each of whom may read the whole store, have their turn within it. */
const PATIENCE_MS = 120_000;
/** An owner on another machine shows that it lives so often. */
const BEAT_MS = 2000;
/** Looked at once a beat, so often in a row without a sign of life: it has ended. No clock is asked, only whether anything changed. */
const BEATS_MISSED = 15;

/** The store while its lock is held. */
export interface Held {
  /** Throws {@link UserError} where the lock was lost meanwhile: the machine slept, and another took it for dead. To be asked before a stroke. */
  still(): void;
}

/**
 * Runs `act` while no other shellbook writes to the store, on this machine or on another that shares the folder. Throws
 * {@link UserError} where the folder cannot be written to, where something else stands in the lock's place, and where another goes on
 * writing for two minutes.
 *
 * The lock is a folder that holds another, empty too, whose name says who has it; Git sees neither. It is put in its place whole, by
 * renaming, which no two can do at once, and an empty one is nobody's.
 */
export async function underLock<T>(root: string, act: (held: Held) => Promise<T>, patienceMs = PATIENCE_MS): Promise<T> {
  // Within one process they stand in a queue, and only the first of it looks at the folder.
  const before = queues.get(root);
  let leave = (): void => {};
  const turn = new Promise<void>((resolve) => {
    leave = resolve;
  });
  queues.set(root, turn);
  try {
    await before;
    return await withLock(root, act, patienceMs);
  } finally {
    if (queues.get(root) === turn) queues.delete(root);
    leave();
  }
}

const queues = new Map<string, Promise<void>>();

async function withLock<T>(root: string, act: (held: Held) => Promise<T>, patienceMs: number): Promise<T> {
  const lock = new Lock(root);
  await lock.take(patienceMs);
  const callOff = atEnd(() => lock.giveUp());
  const beating = setInterval(() => lock.beat(), BEAT_MS);
  beating.unref();
  try {
    return await act(lock);
  } finally {
    clearInterval(beating);
    callOff();
    lock.giveUp();
  }
}

let count = 0;

class Lock implements Held {
  private readonly folder: string;
  private readonly owner = ownName();
  /** Several in one process have a name each. */
  private readonly name = `${this.owner}-${++count}`;
  private readonly missed = new Map<string, { readonly mtimeMs: number; readonly count: number; readonly at: number }>();

  constructor(private readonly root: string) {
    this.folder = path.join(root, '.shellbook.lock');
  }

  async take(patienceMs: number): Promise<void> {
    const until = performance.now() + patienceMs;
    for (let pause = 10; !this.tryTake(); pause = Math.min(pause * 1.3, 200)) {
      if (performance.now() > until) throw new UserError(this.busy());
      await wait(pause * (0.5 + Math.random()));
    }
  }

  still(): void {
    if (isFolder(path.join(this.folder, this.name))) return;
    throw new UserError(
      `Another shellbook took over ${this.folder} while this one was stopped: nothing more was written. Look at the records, then try again.`,
    );
  }

  beat(): void {
    const now = new Date();
    attempt(() => utimesSync(path.join(this.folder, this.name), now, now));
  }

  giveUp(): void {
    if (attempt(() => rmdirSync(path.join(this.folder, this.name)))) attempt(() => rmdirSync(this.folder));
  }

  /** Throws {@link UserError} where waiting would not help. */
  private tryTake(): boolean {
    if (this.isHeld()) return false;
    const fresh = `${this.folder}.${this.name}`;
    try {
      mkdirSync(fresh);
      mkdirSync(path.join(fresh, this.name));
      // Whoever may write to the store may also take away what a dead one left.
      attempt(() => chmodSync(fresh, statSync(this.root).mode & 0o777));
      if (process.platform === 'win32') attempt(() => rmdirSync(this.folder));
      renameSync(fresh, this.folder);
      return true;
    } catch (error) {
      attempt(() => rmdirSync(path.join(fresh, this.name)));
      attempt(() => rmdirSync(fresh));
      const { code } = error as NodeJS.ErrnoException;
      const found = lstatSync(this.folder, { throwIfNoEntry: false });
      if (found && !found.isDirectory()) throw new UserError(this.inItsPlace(found.isSymbolicLink() ? 'a link' : 'a file'));
      if (code === 'ENOTEMPTY' || code === 'EEXIST' || (found && code === 'EPERM')) return false;
      throw new UserError(`The store at ${this.root} cannot be written to: ${reason(error)}. Nothing was written.`);
    }
  }

  /** Whether somebody has it; what owners left who have ended is taken away. */
  private isHeld(): boolean {
    const owners = namesIn(this.folder);
    for (const name of owners) if (!this.isDead(name) || !attempt(() => rmdirSync(path.join(this.folder, name)))) return true;
    if (!this.swept) this.sweep();
    return false;
  }

  private swept = false;

  /** Locks that were being made when their owners ended. */
  private sweep(): void {
    this.swept = true;
    for (const name of namesIn(this.root)) {
      const of = name.startsWith('.shellbook.lock.') ? name.slice('.shellbook.lock.'.length) : undefined;
      if (of === undefined || !hasEnded(ownerOf(of))) continue;
      attempt(() => rmdirSync(path.join(this.root, name, of)));
      attempt(() => rmdirSync(path.join(this.root, name)));
    }
  }

  private isDead(name: string): boolean {
    const owner = ownerOf(name);
    if (isHere(owner)) return hasEnded(owner);
    const mtimeMs = statSync(path.join(this.folder, name), { throwIfNoEntry: false })?.mtimeMs ?? 0;
    const was = this.missed.get(name);
    const now = performance.now();
    if (!was || was.mtimeMs !== mtimeMs) this.missed.set(name, { mtimeMs, count: 0, at: now });
    // Once a beat and no more, however long this machine slept.
    else if (now - was.at > BEAT_MS) this.missed.set(name, { mtimeMs, count: was.count + 1, at: now });
    return (this.missed.get(name)?.count ?? 0) >= BEATS_MISSED;
  }

  private busy(): string {
    const owners = namesIn(this.folder).map((name) => {
      const owner = ownerOf(name);
      return `process ${numberOf(owner) ?? 'unknown'} of ${isHere(owner) ? 'this machine' : 'another machine'}`;
    });
    return (
      `Another shellbook${owners.length > 0 ? ` (${owners.join(', ')})` : ''} has been writing to ${this.root} for two minutes: nothing was written. ` +
      `Try again when it has ended; if no such program is running, delete the folder ${this.folder}.`
    );
  }

  private inItsPlace(what: string): string {
    return `${this.folder} is ${what}, expected nothing or a folder there: nothing was written. Take it away, then try again.`;
  }
}

/** `machine.pid.began-3`: the third lock of that process. */
const ownerOf = (name: string): string => name.replace(/-\d+$/u, '');

const isFolder = (file: string): boolean => lstatSync(file, { throwIfNoEntry: false })?.isDirectory() ?? false;

function namesIn(folder: string): readonly string[] {
  try {
    return lstatSync(folder).isDirectory() ? readdirSync(folder) : [];
  } catch {
    return [];
  }
}

function attempt(act: () => void): boolean {
  try {
    act();
    return true;
  } catch {
    return false;
  }
}
