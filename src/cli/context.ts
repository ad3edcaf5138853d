import type { Io, Status } from './io.js';
import { withTimeLeft } from './pace.js';
import { paint, type TerminalPaint } from './report/paint.js';
import { printable } from './report/printable.js';

/** What every command takes. */
export interface Settings {
  readonly store?: string;
  /** A printed book to answer from instead. */
  readonly book?: string;
  /** Status 1 where that book is not signed with a known key. */
  readonly proved?: boolean;
  readonly json: boolean;
  readonly quiet: boolean;
  readonly color: boolean;
}

/** What a command's act works with: where to write, and how. */
export interface Context {
  readonly settings: Settings;
  readonly io: Io;
  /** For the answer; plain where the answer does not go to a terminal. */
  readonly paint: TerminalPaint;
  /** A line (or several) of the answer, to standard output. */
  print(text: string): void;
  /** A message to standard error; `--quiet` drops it. */
  tell(text: string): void;
  /** What is being done now: a passing line on a terminal, elsewhere at most a line a second. `12 of 340` in it gets the time left. */
  progress(text: string): void;
  /** Takes the passing line away. */
  done(): void;
  /** The command ends with this status at least, whatever its answer. */
  endAtLeast(status: Status): void;
  /** What {@link Context.endAtLeast} was last told; 0 where nothing was. */
  readonly least: () => Status;
  /** Does this once the answer is out: what makes the next one quicker. */
  later(act: () => Promise<void>): void;
  /** Everything that was left for later. */
  finish(): Promise<void>;
}

/** Beyond this a person wants to know what is going on. */
const SLOW_MS = 1000;

export function makeContext(settings: Settings, io: Io): Context {
  const noColour = io.env.NO_COLOR !== undefined && io.env.NO_COLOR !== '';
  const coloured = settings.color && !noColour && io.env.TERM !== 'dumb';
  let told = Date.now();
  let passing = false;
  let least: Status = 0;
  const postponed: (() => Promise<void>)[] = [];
  const timed = withTimeLeft(Date.now);
  const done = (): void => {
    if (passing) io.err.write('\r\u001b[K');
    passing = false;
  };
  return {
    settings,
    io,
    paint: paint(coloured && io.out.terminal),
    print(text) {
      done();
      io.out.write(`${printable(text)}\n`);
    },
    tell(text) {
      done();
      if (!settings.quiet) io.err.write(`${printable(text)}\n`);
    },
    progress(what) {
      if (settings.quiet) return;
      const text = timed(what);
      if (io.err.terminal) {
        io.err.write(`\r\u001b[K${printable(text).slice(0, 78)}…`);
        passing = true;
      } else if (Date.now() - told > SLOW_MS) {
        told = Date.now();
        io.err.write(`${printable(text)} …\n`);
      }
    },
    done,
    endAtLeast(status) {
      least = status > least ? status : least;
    },
    least: () => least,
    later: (act) => void postponed.push(act),
    async finish() {
      for (const act of postponed.splice(0)) await act();
    },
  };
}
