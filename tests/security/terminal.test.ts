/**
 * What a record says is never obeyed by the terminal that shows it, nor by what reads the JSON: control characters (ECMA-48: C0, C1
 * and the sequences that ESC begins), and the marks of direction of UAX #9.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { paint } from '../../src/cli/report/paint.js';
import { printable, repainted } from '../../src/cli/report/printable.js';
import { literalIo } from '../cli/literal-io.js';
import { hostileStore } from './hostile-store.js';

const STEERING =
  'K\u001b[2J\u001b[31mRED\u001b[8m\u001b]0;title\u0007\u001b]8;;https://example.org\u001b\\link\u001b]8;;\u001b\\ \u009b31m\u009d0;x\u009c \b\b\r\u007f\u0000 \u202eedoc\u202c\u2066\u2069\u200e\u200f\u061c';
// biome-ignore lint/suspicious/noControlCharactersInRegex: that none is sent is what is tested
const STEERS = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
/** Colours of our own, which begin and end about words of ours. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the same
const OURS = /\u001b\[(?:31|33|32|39|1|2|22)m/gu;

const COMMANDS: readonly (readonly string[])[] = [
  ['check'],
  ['check', 'T-1', '--all'],
  ['check', '--format', 'sarif'],
  ['check', '--format', 'junit'],
  ['weights', 'T-1', '--all'],
  ['takeoff', 'T-1', '--each'],
  ['where', 'T-1', 'DC-12'],
  ['where', 'T-1', 'gen'],
  ['behind', 'T-1', 'AP-11'],
  ['near', 'T-1', '150in,0in,0in', '--within', '60in'],
  ['isolate', 'T-1', 'DC-12'],
  ['release', 'T-1'],
  ['list'],
  ['trace', 'heat', 'H-4471'],
  ['trace', 'welder', 'K7'],
  ['signoff', 'T-1', 'subframe', '--by', 'J2', '--dry-run'],
  ['close', 'T-1', '--dry-run'],
  ['export', 'components', 'T-1'],
  ['add', 'component', 'T-1', '--dry-run', '--set', `name=${STEERING}`],
  ['where', 'T-1', STEERING],
  ['check', STEERING],
  ['trace', STEERING, STEERING],
  [STEERING],
];

let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'shellbook-terminal-'));
  for (const [file, text] of Object.entries(hostileStore(STEERING).files)) {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

async function said(args: readonly string[], terminal: boolean) {
  const io = literalIo(root, {}, terminal);
  const status = await runProgram(args, io);
  expect(io.messages(), args.join(' ')).not.toContain('Unexpected fault');
  return { status, answer: io.answer(), all: io.answer() + io.messages() };
}

const named = (commands: typeof COMMANDS) =>
  commands.map((args): readonly [string, readonly string[]] => [args.map((one) => one.replace(STEERING, '…')).join(' '), args]);

describe('a terminal', () => {
  it.each(named(COMMANDS))('is steered by no record: %s', async (_name, args) => {
    // A table goes to a file as it is.
    if (args[0] !== 'export') expect((await said(args, false)).all).not.toMatch(STEERS);
    const shown = (await said([...args, '--quiet'], true)).all;
    expect(shown.replace(OURS, '')).not.toMatch(STEERS);
    expect(shown).not.toContain('\u001b[31mRED');
  });
});

describe('a colour', () => {
  it('of our own passes, and passes again from what was kept; one of a record does not', () => {
    const red = '\u001b[31mx\u001b[39m';
    const printed = printable(`${paint(true).error('x')} ${red}`);
    expect(printed).toBe(`${red} \\u{1b}[31mx\\u{1b}[39m`);
    expect(printable(repainted(printed))).toBe(printed);
  });
});

describe('JSON', () => {
  const answers = COMMANDS.filter((args) => args[0] !== 'export' && !args.includes('--format'));
  it.each(named(answers))('says what was typed, with all that steers escaped: %s', async (_name, args) => {
    const { status, answer } = await said([...args, '--json'], true);
    expect(answer).not.toMatch(STEERS);
    if (status !== 2) expect(JSON.parse(answer).shellbook).toBe(1);
    else expect(answer).toBe('');
  });
});
