import { defineConfig } from 'vitest/config';
import { APART, LongFirst } from './tests/support/order.js';

export default defineConfig({
  test: {
    dir: 'tests',
    maxWorkers: 2,
    // No clock decides: this only ends a run in which something hangs.
    testTimeout: 900_000,
    hookTimeout: 900_000,
    setupFiles: ['tests/support/seed.ts'],
    sequence: { sequencer: LongFirst },
    projects: [
      // A process for each.
      { extends: true, test: { name: 'apart', include: APART } },
      // One process for many, which keeps what it has loaded: half of a short test's time went into loading.
      { extends: true, test: { name: 'together', include: ['**/*.test.ts'], exclude: APART, isolate: false } },
    ],
  },
});
