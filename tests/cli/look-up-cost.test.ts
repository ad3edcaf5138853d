/** What a look-up on unchanged records opens, counted: no reader of YAML, no form of a record, no Git, no library of pictures; and few bytes. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CLOSABLE } from './closable.js';
import { laySmallStore, type SmallStore } from './small-store.js';

const MAIN = fileURLToPath(new URL('../../dist/main.js', import.meta.url));

/** Notes every file that is read and everything of Node and of packages that is opened; an hour later, when no file is young any more. */
const WATCH = `const fs = require('node:fs');
const later = Date.now;
Date.now = () => later() + 3600000;
const read = fs.readFileSync;
const files = [];
fs.readFileSync = (file, ...more) => {
  const found = read(file, ...more);
  files.push([String(file), found.length]);
  return found;
};
process.on('exit', () => {
  const parts = process.moduleLoadList.filter((name) => name.startsWith('NativeModule ')).map((name) => name.slice(13));
  const packages = Object.keys(require.cache).filter((name) => name.includes('node_modules'));
  fs.writeFileSync(process.env.WATCHED, JSON.stringify({ files, parts, packages }));
});`;

interface Watched {
  readonly files: readonly (readonly [string, number])[];
  /** Of Node itself. */
  readonly parts: readonly string[];
  /** Files of packages. */
  readonly packages: readonly string[];
}

let store: SmallStore;
let home: string;
beforeAll(async () => {
  store = await laySmallStore(CLOSABLE);
  home = mkdtempSync(path.join(tmpdir(), 'shellbook-cost-'));
  writeFileSync(path.join(home, 'watch.cjs'), WATCH);
  ask('where T-1 DC-1');
});
afterAll(() => {
  store.remove();
  rmSync(home, { recursive: true, force: true });
});

function ask(line: string): { readonly text: string; readonly watched: Watched } {
  const watched = path.join(home, 'watched.json');
  const env = { ...process.env, XDG_CACHE_HOME: home, WATCHED: watched };
  const args = ['--require', path.join(home, 'watch.cjs'), MAIN, ...line.split(' '), '--quiet'];
  const { stdout } = spawnSync(process.execPath, args, { cwd: store.root, env, encoding: 'utf8' });
  return { text: stdout, watched: JSON.parse(readFileSync(watched, 'utf8')) as Watched };
}

/** Files of the program, all of which a look-up could open. */
const MOST_PROGRAM_FILES = 110;
const MOST_PROGRAM_BYTES = 800_000;

describe('a look-up on unchanged records', () => {
  it.each([
    'where T-1 DC-1',
    'where T-1 fuses',
    'behind T-1 AP-1',
    'near T-1 100,0,0in --within 6in',
    'isolate T-1 DC-1',
    'load T-1 DC-1/S1 --add 24W',
    'weights T-1',
    'takeoff T-1',
    'release T-1 --all',
    'progress T-1',
  ])('opens what it needs: %s', (line) => {
    // What it alone asks for is made, and V8 learns what it runs.
    ask(line);
    const { watched } = ask(line);
    expect(watched.packages).toEqual([]);
    expect(watched.parts.filter((name) => ['child_process', 'worker_threads', 'readline'].includes(name))).toEqual([]);
    expect(watched.files.filter(([file]) => /\.ya?ml$/u.test(file))).toEqual([]);
    const program = watched.files.filter(([file]) => file.includes(`${path.sep}dist${path.sep}program${path.sep}`));
    expect(program.filter(([file]) => /[\\/](?:document|schema|load-store|rules)-/u.test(file))).toEqual([]);
    expect(program.length).toBeLessThanOrEqual(MOST_PROGRAM_FILES);
    expect(program.reduce((sum, [, bytes]) => sum + bytes, 0)).toBeLessThanOrEqual(MOST_PROGRAM_BYTES);
  });

  it('says the same where what V8 made of the program is damaged', () => {
    const before = ask('weights T-1').text;
    const compiled = path.join(home, 'shellbook', 'compiled');
    for (const name of readdirSync(compiled)) {
      const file = path.join(compiled, name);
      const bytes = readFileSync(file);
      bytes.fill(0x5a, bytes.indexOf(10) + 1);
      writeFileSync(file, bytes);
    }
    expect(ask('weights T-1').text).toBe(before);
  });
});
