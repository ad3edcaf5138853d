#!/usr/bin/env node
import process from 'node:process';
import type { Sink } from './cli/io.js';
import { run } from './cli/program.js';

function sink(stream: NodeJS.WriteStream): Sink {
  // The reader of a pipe may go away (`shellbook check | head`): that is no fault of ours.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(process.exitCode ?? 0);
  });
  return { write: (text) => void stream.write(text), terminal: stream.isTTY === true };
}

process.exitCode = await run(process.argv.slice(2), {
  cwd: process.cwd(),
  env: process.env,
  out: sink(process.stdout),
  err: sink(process.stderr),
});
