/**
 * Whatever a record says, no cell of an exported table is a formula to a spreadsheet: OWASP, CSV Injection, for the signs that begin
 * one. Every field of text is tried, in the tables of every kind and in the hand-over sheets.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from '../cli/literal-io.js';
import { hostileStore } from './hostile-store.js';

let root: string;
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'shellbook-formulas-'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

/** Cells of every table that is written for a store whose fields of text all say this. */
async function cellsOf(words: string): Promise<readonly string[]> {
  for (const [file, text] of Object.entries(hostileStore(words).files)) {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
  const said: string[] = [];
  for (const [out, more] of [
    ['tables', []],
    ['handover', ['--cobie', '--with-customer']],
  ] as const) {
    const io = literalIo(root);
    expect(await runProgram(['export', 'all', 'T-1', '--out', out, ...more, '--store', root], io), io.messages()).toBe(0);
    const names = readdirSync(path.join(root, out));
    expect(names.length).toBeGreaterThan(8);
    for (const name of names) said.push(...parse(readFileSync(path.join(root, out, name)), { relax_column_count: true }).flat());
  }
  return said;
}

describe('a table for a spreadsheet', () => {
  it.each([
    `=HYPERLINK("https://example.org","x")`,
    `=cmd|' /C calc'!A0`,
    '+1+1',
    '-2+3+cmd|x',
    '@SUM(1+1)*cmd',
    '\t=1+1',
    '\r=1+1',
    '\n=1+1',
    '  =1+1',
    '\uff1d1+1',
    `'=1+1`,
    '"=1+1',
    '",=1+1,"',
    ';=1+1;',
  ])('runs nothing where a record says %j', async (words) => {
    const cells = await cellsOf(words);
    expect(cells.filter((cell) => cell.includes(words.trim().slice(-3))).length).toBeGreaterThan(40);
    const number = /^[+-]?\d+(?:\.\d+)?$/u;
    expect(cells.filter((cell) => /^(?:\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n])/u.test(cell) && !number.test(cell))).toEqual(
      [],
    );
  });
});
