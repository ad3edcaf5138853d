import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { layStore } from '../../src/store/starter.js';
import { literalIo } from './literal-io.js';

const RECORDS = fileURLToPath(new URL('../../records/', import.meta.url));
let top: string;
beforeAll(() => {
  top = mkdtempSync(path.join(tmpdir(), 'shellbook-starter-'));
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

const filesIn = (dir: string): readonly string[] =>
  readdirSync(dir, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && !one.parentPath.includes('.git'))
    .map((one) => path.relative(dir, path.join(one.parentPath, one.name)))
    .sort();

describe('new-store', () => {
  it('lays down what records/ is, with a history of its own outside Git', async () => {
    const io = literalIo(top);
    expect(await runProgram(['new-store', 'mine'], io)).toBe(0);
    expect(existsSync(path.join(top, 'mine', '.git'))).toBe(true);
    expect(io.answer()).toContain('Started a store in mine');
    expect(io.messages()).toContain('new-shell');
    const mine = path.join(top, 'mine');
    for (const file of filesIn(mine))
      expect(readFileSync(path.join(RECORDS, file), 'utf8'), file).toBe(readFileSync(path.join(mine, file), 'utf8'));
  });

  it('comes whole or not at all: up to the last moment there is no folder of that name', async () => {
    const dir = path.join(top, 'strokes');
    const before = readdirSync(top).sort();
    let there: boolean | undefined;
    const broken = layStore(dir, async (folder) => {
      there = existsSync(dir);
      expect(existsSync(path.join(folder, '.git'))).toBe(true);
      throw new Error('the power went');
    });
    await expect(broken).rejects.toThrow('the power went');
    expect([there, readdirSync(top).sort()]).toEqual([false, before]);
  });

  it('touches no folder that has something in it', async () => {
    mkdirSync(path.join(top, 'full'));
    writeFileSync(path.join(top, 'full', 'letter.txt'), 'Dear');
    const io = literalIo(top);
    expect(await runProgram(['new-store', 'full'], io)).toBe(2);
    expect(io.answer()).toBe('');
    expect(io.messages()).toContain('letter.txt');
    expect(filesIn(path.join(top, 'full'))).toEqual(['letter.txt']);
  });
});

describe('new-shell', () => {
  it('makes a shell that passes check with notes at most', async () => {
    const io = literalIo(path.join(top, 'mine'));
    expect(await runProgram(['new-shell', 'QF-1'], io)).toBe(0);
    const check = literalIo(path.join(top, 'mine'));
    expect(await runProgram(['check', 'QF-1', '--json'], check)).toBe(0);
    const { findings, counts } = JSON.parse(check.answer());
    expect(counts).toMatchObject({ error: 0, warning: 0 });
    expect(findings.map((one: { rule: string }) => one.rule)).toContain('shell.vin-missing');
  });

  it('gives examples that pass too, once the # is taken away', async () => {
    const shell = path.join(top, 'mine', 'shells', 'QF-1');
    for (const file of filesIn(shell)) {
      const text = readFileSync(path.join(shell, file), 'utf8');
      // An example line is a comment that is YAML: it opens a record or a key, or goes on with one.
      const typed = text.replace(/^# (?=(-| {2,}|[a-z_]+: ?[^A-Z]*$|[a-z_]+:$))/gmu, '');
      writeFileSync(path.join(shell, file), typed);
    }
    const check = literalIo(path.join(top, 'mine'));
    await runProgram(['check', 'QF-1', '--json'], check);
    const findings: readonly { rule: string; message: string }[] = JSON.parse(check.answer()).findings;
    const format = findings.filter((one) => /^format\.(?!unknown-reference|missing-file)/u.test(one.rule));
    expect(format).toEqual([]);
  });

  it.each(['a/b', '..', '-x', 'x'.repeat(65), ''])('refuses the number %j', async (number) => {
    const io = literalIo(path.join(top, 'mine'));
    expect(await runProgram(['new-shell', '--', number], io)).toBe(2);
    expect(io.messages()).toContain('Found the shell number');
  });

  it('does not write over a shell', async () => {
    const io = literalIo(path.join(top, 'mine'));
    expect(await runProgram(['new-shell', 'QF-1'], io)).toBe(2);
    expect(io.messages()).toContain('there already');
  });
});
