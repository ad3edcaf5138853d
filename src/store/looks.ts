import { type BigIntStats, type Dirent, lstatSync, readdirSync, statSync } from 'node:fs';
import { DEEPEST_FOLDER, isTaken, takenAs } from './taken.js';

/** How files look from outside, without reading them. */
export interface Looks {
  /** One line a file, folder or link: its name, and what says that it is still the same. */
  readonly lines: readonly string[];
  /** When the youngest of them was last changed, ms. */
  readonly youngestMs: number;
}

/**
 * Looks at everything that a store is read from. Trusts what Git's own index trusts: a file of the same size, number and times, to the
 * nanosecond, has the same contents; the time of the last change of state is among them, which no program can set back. Throws where
 * the folder cannot be read.
 */
export function statSnapshot(root: string): Looks {
  const look = new Look();
  look.folder(root, '', 0);
  return look;
}

/** Looks at single files, there or not. */
export function looksOfFiles(files: readonly string[]): Looks {
  const look = new Look();
  for (const file of files) look.file(file, file);
  return look;
}

/** One after the other: a thread each takes longer than the look itself. Paths are put together as texts: to join them takes longer, too. */
class Look implements Looks {
  readonly lines: string[] = [];
  youngestMs = 0;

  folder(root: string, inside: string, depth: number): void {
    for (const entry of readdirSync(inside === '' ? root : `${root}/${inside}`, { withFileTypes: true }).sort(byName)) {
      if (entry.name.startsWith('.') || (depth === 0 && entry.isDirectory() && !isTaken(entry.name))) continue;
      const name = inside === '' ? entry.name : `${inside}/${entry.name}`;
      // That one is there at all can be a finding: of a link, of a folder that lies too deep.
      if (entry.isDirectory()) {
        this.lines.push(`${name}/`);
        if (depth < DEEPEST_FOLDER) this.folder(root, name, depth + 1);
      } else if (entry.isSymbolicLink()) this.link(`${root}/${name}`, name);
      else if (takenAs(name) !== undefined) this.file(`${root}/${name}`, name);
    }
  }

  /** The link itself, and what it leads to. */
  private link(file: string, name: string): void {
    this.add(`${name} link`, lstatSync(file, { bigint: true }));
    this.file(file, name);
  }

  file(file: string, name: string): void {
    let found: BigIntStats | undefined;
    try {
      found = statSync(file, { bigint: true, throwIfNoEntry: false });
    } catch {
      // As one that is not there: it cannot be read either.
    }
    this.add(name, found);
  }

  private add(name: string, found: BigIntStats | undefined): void {
    if (found === undefined) this.lines.push(`${name} -`);
    else {
      const { size, mode, mtimeNs, ctimeNs, ino } = found;
      this.lines.push(`${name} ${size} ${mode} ${mtimeNs} ${ctimeNs} ${ino}`);
      this.youngestMs = Math.max(this.youngestMs, Number(ctimeNs / 1_000_000n));
    }
  }
}

const byName = (a: Dirent, b: Dirent): number => (a.name < b.name ? -1 : 1);
