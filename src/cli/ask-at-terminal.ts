import process from 'node:process';
import { confirm, input, search, select } from '@inquirer/prompts';
import type { Asker, MenuChoice } from '../entry/asker.js';
import { nearest } from '../source/nearest.js';
import { UserError } from '../user-error.js';
import { printable } from './report/printable.js';

/** More than this are searched by typing. */
const AT_A_GLANCE = 8;
/** Questions are messages: answers alone go to standard output. */
const STREAMS = { output: process.stderr };

/** Asks at the terminal of this process. */
export const asker: Asker = {
  text: ({ text, usual, wrong }) =>
    asked(
      input(
        {
          message: printable(text),
          ...(usual === undefined ? {} : { default: usual }),
          validate: (typed) => printable(wrong?.(typed) ?? '') || true,
        },
        STREAMS,
      ),
    ),
  choose({ text, choices, usual }) {
    const shown = choices.map(({ value, name }) => ({ value, name: printable(name ?? value) }));
    const message = printable(text);
    if (shown.length <= AT_A_GLANCE)
      return asked(select({ message, choices: shown, ...(usual === undefined ? {} : { default: usual }) }, STREAMS));
    const first = shown.filter(({ value }) => value === usual);
    const all = [...first, ...shown.filter(({ value }) => value !== usual)];
    return asked(search({ message, source: (typed) => (typed ? matching(typed, all) : all), pageSize: 10 }, STREAMS));
  },
  confirm: ({ text, usual }) => asked(confirm({ message: printable(text), default: usual }, STREAMS)),
};

function matching(typed: string, choices: readonly (MenuChoice & { readonly name: string })[]) {
  const word = typed.toLowerCase();
  const holding = choices.filter(({ name }) => name.toLowerCase().includes(word));
  if (holding.length > 0) return holding;
  const close = nearest(
    typed,
    choices.map(({ value }) => value),
  );
  return choices.filter(({ value }) => close.includes(value));
}

async function asked<T>(answer: Promise<T>): Promise<T> {
  try {
    return await answer;
  } catch (error) {
    if (error instanceof Error && error.name === 'ExitPromptError') throw new UserError('Given up: nothing was written.');
    throw error;
  }
}
