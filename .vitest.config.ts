import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    dir: 'tests',
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 120_000,
    setupFiles: ['tests/support/seed.ts'],
  },
});
