import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    dir: 'tests',
    maxWorkers: 2,
    // No clock decides: this only ends a run in which something hangs.
    testTimeout: 900_000,
    hookTimeout: 900_000,
    setupFiles: ['tests/support/seed.ts'],
  },
});
