import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const TESTS = fileURLToPath(new URL('../', import.meta.url));

/** How long things take is measured in bench/. Processor time, which others on the machine do not spend, may bound what hostile input costs. */
const TIMED = new Set(['bench', path.join('shape', 'clocks.test.ts')]);

const FILES = readdirSync(TESTS, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .filter((file) => !TIMED.has(file) && !TIMED.has(file.split(path.sep)[0] as string));

/** Reading a clock, or a limit of its own for one test: on a busy machine either decides by what else runs there. */
const CLOCKS = [/performance\.now|hrtime/u, /^\s*\}, (?:\{ timeout: )?\d[\d_]{3,}/mu, /^\s*\},\n\s*\d[\d_]{3,},\n\s*\);$/mu];

describe('no test', () => {
  it('is decided by a clock on the wall', () => {
    expect(FILES.length).toBeGreaterThan(100);
    const timed = FILES.filter((file) => CLOCKS.some((clock) => clock.test(readFileSync(path.join(TESTS, file), 'utf8'))));
    expect(timed).toEqual([]);
  });
});
