import { vi } from 'vitest';

/**
 * For mutation runs only (`.stryker.config.mjs`): a changed program needs no smallest example of what is wrong with it, and few
 * examples find it out.
 */
const FEW = 100;

vi.mock('fast-check', async (original) => {
  const real = await original<typeof import('fast-check')>();
  const assert = ((property: Parameters<typeof real.assert>[0], parameters?: { readonly numRuns?: number }) =>
    real.assert(property, {
      ...parameters,
      numRuns: Math.min(parameters?.numRuns ?? FEW, FEW),
      endOnFailure: true,
    })) as typeof real.assert;
  return { ...real, assert, default: { ...real.default, assert } };
});
