import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { CLOSABLE } from './closable.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeEach(async () => {
  store = await laySmallStore({ ...CLOSABLE });
});
afterEach(() => store.remove());

const file = (name: string): string => path.join(store.root, name);
const git = (...args: readonly string[]): string => execFileSync('git', args, { cwd: store.root, encoding: 'utf8' });

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(args, io);
  return { status, out: io.answer(), err: io.messages() };
}

/** Every command of the ledger; none may fall over whatever the file says. */
const COMMANDS: readonly (readonly string[])[] = [
  ['check', 'T-1'],
  ['list'],
  ['trace', 'welder', 'K7'],
  ['signoff', 'T-1', 'floor', '--by', 'J2'],
  ['close', 'T-1', '--no-books'],
  ['history', 'T-1', 'W-1'],
];

const BOMB = `a: &a [x, x, x, x, x, x, x, x, x, x]\n${[...'bcdefghi'].map((name, i) => `${name}: &${name} [${Array(10).fill(`*${'abcdefgh'[i]}`).join(', ')}]`).join('\n')}\n`;

const FILES: readonly (readonly [string, string | Buffer, RegExp])[] = [
  ['an alias bomb', BOMB, /unfold without end/u],
  ['a tab as indentation', 'welds:\n\t- {id: W-1}\n', /tab at the start of a line/u],
  ['Latin-1', Buffer.from('- {id: W-1, note: Müller}\n', 'latin1'), /not UTF-8 text/u],
  ['a file of nothing but brackets', '['.repeat(50_000), /nested too deeply|not YAML/u],
  ['control signs', '- {id: "W-\u0007\u001b[2J"}\n', /W-/u],
];

describe('a hostile file', () => {
  it.each(FILES)('%s is told, and nothing is harmed', async (_what, text, message) => {
    writeFileSync(file('shells/T-1/welds-2.yaml'), text);
    const before = readFileSync(file('shells/T-1/welds-2.yaml'));
    for (const command of COMMANDS) {
      const { status, out, err } = await shellbook(...command);
      expect(err, command.join(' ')).not.toContain('Unexpected fault');
      expect([0, 1, 2], command.join(' ')).toContain(status);
      // biome-ignore lint/suspicious/noControlCharactersInRegex: what a record says must not steer the terminal
      expect(out + err).not.toMatch(/\u001b\[2J|\u0007/u);
    }
    expect((await shellbook('check', 'T-1', '--json')).out).toMatch(message);
    expect((await shellbook('close', 'T-1', '--no-books')).status).toBe(1);
    expect(readFileSync(file('shells/T-1/welds-2.yaml')).equals(before)).toBe(true);
    expect(git('tag', '--list')).toBe('');
  });

  it('of 300 MB is told without being read', async () => {
    writeFileSync(file('shells/T-1/welds-2.yaml'), '');
    truncateSync(file('shells/T-1/welds-2.yaml'), 300 * 1048576);
    expect((await shellbook('check', 'T-1')).out.replace(/\s+/gu, ' ')).toContain(
      'This file is 300 MB, expected 20 MB at most: split it',
    );
    expect((await shellbook('close', 'T-1', '--no-books')).status).toBe(1);
  });
});

describe('a hostile name', () => {
  it('of a shell is taken as a name, or told', async () => {
    for (const shell of ['-rf', '--exec=touch x', 'a b', '$(touch x)', "';", '*']) {
      mkdirSync(file(`shells/${shell}`), { recursive: true });
      writeFileSync(file(`shells/${shell}/shell.yaml`), `shell: "${shell}"\ntitle: Odd\n`);
    }
    git('add', '--all');
    git('commit', '--quiet', '-m', 'odd');
    const { out } = await shellbook('list', '--json');
    expect(JSON.parse(out).shells.map(({ shell }: { shell: string }) => shell)).toEqual(
      expect.arrayContaining(['-rf', '$(touch x)', '*']),
    );
    for (const shell of ['-rf', '--exec=touch x', '$(touch x)', '*', '../T-1', '../../etc']) {
      for (const command of [
        ['history', '--', shell],
        ['compare', '--', shell, 'HEAD', 'HEAD'],
        ['close', '--no-books', '--', shell],
        ['check', '--', shell],
      ]) {
        const { status, err } = await shellbook(...command);
        expect([0, 1, 2]).toContain(status);
        expect(err).not.toContain('Unexpected fault');
      }
    }
    expect((await shellbook('check', '--', '../T-1')).status).toBe(2);
    expect(git('status', '--porcelain')).toBe('');
    expect(git('tag', '--list')).toBe('');
  });

  it('of a record is no option of Git', async () => {
    for (const id of ['--all', '-p', '--output=x', ':(top)*'])
      expect((await shellbook('history', '--', 'T-1', id)).err).toContain('No record');
    expect(git('status', '--porcelain')).toBe('');
    rmSync(file('shells/T-1/welds.yaml'));
    expect((await shellbook('history', 'T-1', 'W-1')).status).toBe(0);
  });
});
