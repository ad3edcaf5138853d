import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { APART } from '../support/order.js';

const TESTS = fileURLToPath(new URL('../', import.meta.url));
const CHANGES_ITS_PROCESS =
  /\bvi\.(?:mock|stub\w+|spyOn|useFakeTimers)\(|\bprocess\.env\.\w+ = |\bprocess\.env = |assign\(process\.env|\bprocess\.chdir\(/u;

describe('tests that change their process', () => {
  it('have one of their own, and no others do', () => {
    const files = readdirSync(TESTS, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.test.ts'));
    const changing = files.filter((file) => CHANGES_ITS_PROCESS.test(readFileSync(path.join(TESTS, file), 'utf8')));
    expect(changing.sort(), 'the list is APART in tests/support/order.ts').toEqual([...APART].sort());
  });
});
