#!/usr/bin/env node
import { writeSync } from 'node:fs';
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';
import type { Sink } from './cli/io.js';
import { runProgram } from './cli/program.js';

// The environment is looked up in the process at every read, and the YAML reader reads it at every token: a copy is as good.
process.env = { ...process.env };
// Most of what is read lives to the end: let the young generation grow at once, instead of copying it again and again.
setFlagsFromString('--semi-space-growth-factor=8');

function sink(stream: NodeJS.WriteStream): Sink {
  // The reader of a pipe may go away (`shellbook check | head`): that is no fault of ours.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
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
/** What Node ends with where something is waited for that can never come, as an answer of a browser that was killed while it started. */
const NEVER = 13;

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

process.exitCode = await runProgram(process.argv.slice(2), {
  cwd: process.cwd(),
  env: process.env,
  out: sink(process.stdout),
  err: sink(process.stderr),
  ...(process.stdin.isTTY && process.stderr.isTTY ? { ask: async () => (await import('./cli/ask-at-terminal.js')).asker } : {}),
});
