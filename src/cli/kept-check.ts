import { findStore } from '../store/find.js';
import { NOT_PASSED } from '../store/git/not-passed.js';
import { type KeptAt, keptAt } from '../store/kept-answers.js';
import { Sections } from '../store/sections.js';
import type { Context } from './context.js';
import type { Status } from './io.js';
import { programFiles } from './program-files.js';
import { printable, repainted } from './report/printable.js';

/** What `check` answers. */
export interface CheckAnswer {
  /** As it is printed, but for the time of the run. */
  readonly text: string;
  readonly status: Status;
}

/**
 * Where the answer to this question is kept. Undefined outside Git, for a book, and in a hook of Git, whose index is another.
 * @param question Everything of the command line and the terminal that makes the answer another.
 */
export async function cachePlaceOf(question: unknown, { io, settings }: Context): Promise<KeptAt | undefined> {
  if (settings.book !== undefined || NOT_PASSED.some((name) => io.env[name] !== undefined)) return undefined;
  return keptAt(findStore(io.cwd, settings.store), {
    room: 'check',
    question: JSON.stringify(question),
    program: programFiles(),
    inGit: [],
    standing: true,
  });
}

/** The answer of the last time; undefined where anything has changed since that it depends on. */
export async function keptAnswer(place: KeptAt): Promise<CheckAnswer | undefined> {
  const found = Sections.open(place).get('answer');
  return isAnswer(found) ? { ...found, text: repainted(found.text) } : undefined;
}

const isAnswer = (found: unknown): found is CheckAnswer => {
  const { text, status } = (found ?? {}) as Partial<CheckAnswer>;
  return typeof text === 'string' && (status === 0 || status === 1);
};

/** As it goes to a terminal: how a colour is marked until then is of this run alone. */
export async function keepAnswer(place: KeptAt, { text, status }: CheckAnswer): Promise<void> {
  const kept = Sections.open(place);
  kept.put('answer', { text: printable(text), status });
  await kept.save();
}
