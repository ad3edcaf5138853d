/** What a person waits for who asks again: answers that are kept, and the start of the program, against a bare start of Node. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { git } from './ledger-store.js';
import { measure } from './measure.js';
import { BUILT, node, ratio, say, tell } from './tell.js';

const ROUNDS = 9;
const DEMO = fileURLToPath(new URL('../../demo-data', import.meta.url));
const SHELL = 'OV-021';
/** Answers are kept once no file is as young as this. */
const SETTLED_MS = 4500;

export function benchWarm(): void {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-warm-'));
  try {
    cpSync(DEMO, folder, { recursive: true });
    git(folder, ['init', '--quiet', '--initial-branch=main']);
    git(folder, ['add', '.']);
    git(folder, ['-c', 'user.name=Bench', '-c', 'user.email=bench@example.org', 'commit', '--quiet', '-m', 'Record']);
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, SETTLED_MS);
    const shellbook = (...args: readonly string[]): string => node([BUILT, ...args, '--quiet'], folder);
    const [check, where] = [() => shellbook('check', SHELL), () => shellbook('where', SHELL, 'DC-12')];
    say('');
    const started = performance.now();
    check();
    const coldMs = performance.now() - started;
    where();
    const times = measure(
      {
        'node -e 0': () => node(['-e', '0']),
        'check, warm': check,
        'where, warm': where,
        '--help': () => node([BUILT, '--help']),
      },
      ROUNDS,
    );
    tell(
      `${SHELL} of the demo, each in a process of its own, median of ${ROUNDS}; check, cold, once: ${coldMs.toFixed(0)} ms`,
      times,
    );
    ratio(times, 'check, warm', 'node -e 0', 4);
    ratio(times, 'where, warm', 'node -e 0', 3);
    ratio(times, '--help', 'node -e 0');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
