import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

const MAIN = fileURLToPath(new URL('../../dist/main.js', import.meta.url));
let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore();
  // Folders are named by whoever has the store; a command shell would run the first of these.
  mkdirSync(path.join(store.root, 'shells', '$(touch caught)'));
  mkdirSync(path.join(store.root, 'shells', '-rf'));
});
afterAll(() => store.remove());

async function complete(...words: readonly string[]): Promise<readonly string[]> {
  const io = literalIo(store.root);
  expect(await runProgram(['--complete', ...words], io)).toBe(0);
  expect(io.messages()).toBe('');
  return io.answer().split('\n').filter(Boolean);
}

describe('completion', () => {
  it('offers commands, options, and the choices of an option', async () => {
    expect(await complete('')).toEqual(expect.arrayContaining(['check', 'where', 'book', 'help']));
    expect(await complete('wei')).toEqual(['weights']);
    expect(await complete('check', '--fo')).toEqual(['--format']);
    expect(await complete('check', '--format', '')).toEqual(['text', 'json', 'sarif']);
    expect(await complete('help', 'clo')).toEqual(['close']);
    expect(await complete('weights', '--st')).toEqual(['--store']);
  });
  it('offers shells, panels, ids, kinds and stages of the store', async () => {
    expect(await complete('where', '')).toEqual(['T-1']);
    expect(await complete('check', 'T-1', '')).toEqual(['T-1']);
    expect(await complete('behind', 'T-1', '')).toEqual(['AP-1']);
    expect(await complete('isolate', 'T-1', 'DC-1/S')).toEqual(['DC-1/S1']);
    expect(await complete('signoff', 'T-1', '')).toEqual(expect.arrayContaining(['floor', 'belly']));
    expect(await complete('schema', 'memb')).toEqual(['member']);
  });
  it('leaves files to the command shell, and says nothing where nothing fits', async () => {
    expect(await complete('check', '--store', '')).toEqual([]);
    expect(await complete('nonsense', 'T-1', '')).not.toContain('T-1');
    expect(await complete('behind', 'NONE', '')).toEqual([]);
  });
  it('hands no name to a command shell that it would run or take for an option', async () => {
    const offered = await complete('where', '');
    expect(offered.some((one) => /[$()\s]|^-/u.test(one))).toBe(false);
  });
  it('works in bash: the script asks this program, and completes', () => {
    const script = `shopt -s expand_aliases
      shellbook() { "${process.execPath}" "${MAIN}" "$@"; }
      source <(shellbook completion bash)
      ask() { COMP_WORDS=(shellbook "$@"); COMP_CWORD=$#; COMPREPLY=(); _shellbook; printf '%s;' "\${COMPREPLY[@]}"; echo; }
      ask wei; ask where ''; ask behind T-1 A`;
    const said = execFileSync('bash', ['-c', script], { cwd: store.root, encoding: 'utf8' });
    expect(said.trim().split('\n')).toEqual(['weights;', 'T-1;', 'AP-1;']);
  });
  it('has a script for each of the three', async () => {
    for (const shell of ['bash', 'zsh', 'fish']) {
      const io = literalIo(store.root);
      expect(await runProgram(['completion', shell], io)).toBe(0);
      expect(io.answer()).toContain('shellbook --complete');
    }
    const io = literalIo(store.root);
    expect(await runProgram(['completion', 'tcsh'], io)).toBe(2);
    expect(io.messages()).toContain('bash, zsh, fish');
  });
});
