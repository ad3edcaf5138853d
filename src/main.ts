#!/usr/bin/env node
import { writeSync } from 'node:fs';
import process from 'node:process';
import type { Sink, Status } from './cli/io.js';
import { runProgram } from './cli/program.js';

// The environment is looked up in the process at every read, and the YAML reader reads it at every token: a copy is as good.
process.env = { ...process.env };

function sink(stream: NodeJS.WriteStream): Sink {
  // The reader of a pipe may go away (`shellbook check | head`): that is no fault of ours.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(status);
    lost(error);
  });
  return { write: (text) => void stream.write(text), terminal: stream.isTTY === true };
}

/** Half an answer is none. */
function lost(error: NodeJS.ErrnoException): never {
  const why = error.code === 'ENOSPC' || error.code === 'EDQUOT' ? 'the disk is full' : (error.code ?? error.message);
  try {
    writeSync(2, `shellbook: The answer could not be written: ${why}.\n`);
  } catch {
    // Nor can that.
  }
  process.exit(2);
}

/** Ends at once: what runs `atEnd` takes along the browser and what was of this process alone. Files are whole, the old ones or the new. */
function endBy(signal: NodeJS.Signals): void {
  process.on(signal, () => {
    try {
      writeSync(2, `shellbook: Ended by ${signal}: what was not finished was not written.\n`);
    } catch {
      // The terminal is gone.
    }
    process.exit(2);
  });
}
/** Ended with where something is waited for that can never come, as an answer of a browser that was killed while it started. */
const NEVER = 13;

// Until there is an answer.
process.exitCode = NEVER;
let status: Status = 0;
process.on('exit', (code) => {
  if (code !== NEVER) return;
  process.exitCode = 2;
  try {
    writeSync(2, 'shellbook: What it waited for is gone: was the browser ended from outside? Nothing was written. Try again.\n');
  } catch {
    // The terminal is gone.
  }
});
for (const signal of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) endBy(signal);

void runProgram(process.argv.slice(2), {
  cwd: process.cwd(),
  env: process.env,
  out: sink(process.stdout),
  err: sink(process.stderr),
  ...(process.stdin.isTTY && process.stderr.isTTY ? { ask: async () => (await import('./cli/ask-at-terminal.js')).asker } : {}),
}).then((ended) => {
  status = ended;
  process.exitCode = ended;
});
