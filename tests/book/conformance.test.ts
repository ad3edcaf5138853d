import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { printedDemo } from '../support/printed-demo.js';
import { CLAUSES } from './clauses.js';
import { TaggedFile } from './tagged-file.js';

/** One after the other: the tags of a long book are a hundred thousand objects. */
describe.each(['owner', 'service', 'shop'])('the %s edition keeps to', (edition) => {
  let file: TaggedFile | undefined;
  beforeAll(async () => {
    file = await TaggedFile.read(readFileSync(path.join((await printedDemo()).top, 'demo', 'books', `OV-021-${edition}.pdf`)));
  });
  afterAll(() => {
    file = undefined;
  });

  it.each(CLAUSES)('$standard, $clause: $asks', ({ test }) => {
    const { looked, faults } = test(file as TaggedFile);
    expect(faults.slice(0, 5)).toEqual([]);
    expect(looked).toBeGreaterThan(0);
  });
});
