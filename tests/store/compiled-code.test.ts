/** What V8 made of the program's files: taken for the very text that it was made of, and with this user's key alone. */
import { createHmac } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Script } from 'node:vm';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { CompiledCode } from '../../src/store/compiled-code.js';
import { digest } from '../../src/store/sealed.js';

let home: string;
beforeEach(() => {
  home = mkdtempSync(path.join(tmpdir(), 'shellbook-compiled-'));
  vi.stubEnv('XDG_CACHE_HOME', home);
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(home, { recursive: true, force: true });
});

const TEXT = `(function(){ return ${'1 + '.repeat(40)}2; })`;
const KEY = digest(TEXT);
const open = (...question: readonly string[]): CompiledCode => CompiledCode.open(['main', ...question]);
const folder = (): string => path.join(home, 'shellbook', 'compiled');
const files = (): readonly string[] => {
  try {
    return readdirSync(folder()).map((name) => path.join(folder(), name));
  } catch {
    return [];
  }
};

/** One run of the program: whether what was kept was of use. */
function run(text = TEXT, question = 'weights'): boolean {
  const code = open(question);
  const cachedData = code.get(digest(text));
  const script = new Script(text, cachedData ? { cachedData } : {});
  code.took(digest(text), script);
  expect((script.runInThisContext() as () => number)()).toBe(text.includes('2;') ? 42 : 43);
  code.keep();
  return cachedData !== undefined && script.cachedDataRejected === false;
}

describe('compiled code', () => {
  it('is taken from the second run on, for the same question, and written no more once it has learnt what is asked', () => {
    expect([run(), run(), run(), run(TEXT, 'where')]).toEqual([false, true, true, false]);
    expect(files()).toHaveLength(2);
    const before = files().map((file) => readFileSync(file));
    expect(run()).toBe(true);
    expect(files().map((file) => readFileSync(file))).toEqual(before);
  });

  it('is of one text: another of the same length is compiled anew, and both are kept', () => {
    run();
    const other = TEXT.replace('2;', '3;');
    expect(other).toHaveLength(TEXT.length);
    expect([run(other), run(other), run()]).toEqual([false, true, true]);
  });

  it('is nothing where it is damaged, cut short, of another key, or no such file; and is then made anew', () => {
    run();
    const [file = ''] = files();
    const whole = readFileSync(file);
    const at = whole.indexOf(10);
    const flipped = (byte: number): Buffer => {
      const bytes = Buffer.from(whole);
      bytes[byte] = (bytes[byte] as number) ^ 1;
      return bytes;
    };
    const damaged = [
      ...[0, 70, at - 5, at + 1, whole.length - 1].map(flipped),
      // Marked with the key of another user.
      Buffer.concat([
        Buffer.from(createHmac('sha256', 'another').update(whole.subarray(65, at)).digest('hex')),
        whole.subarray(64),
      ]),
      ...[whole.subarray(0, 20), whole.subarray(0, at), whole.subarray(0, at + 30), Buffer.alloc(0), Buffer.from('\n{}')],
    ];
    for (const bytes of damaged) {
      writeFileSync(file, bytes);
      expect(open('weights').get(KEY)).toBeUndefined();
      expect([run(), run()]).toEqual([false, true]);
    }
    expect(open('weights').get('constructor')).toBeUndefined();
  });

  it('is not needed: a folder that cannot be written to keeps none', () => {
    writeFileSync(path.join(home, 'shellbook'), '');
    expect([run(), run()]).toEqual([false, false]);
  });
});
