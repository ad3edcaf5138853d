import type { Io } from '../../src/cli/io.js';

export interface LiteralIo extends Io {
  /** What went to standard output so far. */
  answer(): string;
  /** What went to standard error so far. */
  messages(): string;
}

/** A world for one command: streams that remember. Not a terminal unless asked. */
export function literalIo(cwd = '.', env: Io['env'] = {}, terminal = false): LiteralIo {
  const written = { out: '', err: '' };
  const sink = (name: 'out' | 'err') => ({
    terminal,
    write: (text: string) => {
      written[name] += text;
    },
  });
  return { cwd, env, out: sink('out'), err: sink('err'), answer: () => written.out, messages: () => written.err };
}
