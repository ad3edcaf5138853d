import type { Asker } from '../entry/asker.js';

/** The world as a command sees it: main.ts hands in the process, a test hands in a literal. */

export interface Sink {
  write(text: string): void;
  /** True where a person looks at it: colours and passing progress lines are for terminals only. */
  readonly terminal: boolean;
}

export interface Io {
  /** Folder that relative paths start from. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Answers. */
  readonly out: Sink;
  /** Progress and messages. */
  readonly err: Sink;
  /** Asks the person at the terminal; absent where there is none. */
  readonly ask?: () => Promise<Asker>;
  /** Ends what would go on for ever, as watching; absent: only the end of the process does. */
  readonly signal?: AbortSignal;
}

/** 0: done and clean. 1: done, and the answer is "no". 2: could not be done. */
export type Status = 0 | 1 | 2;
