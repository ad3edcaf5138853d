import { defineConfig } from 'vitest/config';
import { nearTests } from './.stryker.config.mjs';

/** The tests that a mutation run takes, in one thread that keeps what it has loaded. */
export default defineConfig({
  test: {
    include: nearTests,
    isolate: false,
    // A run that was held up is not a change found out.
    testTimeout: 300_000,
    setupFiles: ['tests/support/seed.ts', 'tests/support/mutation.ts'],
  },
});
