/** Look-ups from what was kept of a state of the records: the same answers, from nothing but that. */
import { readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { CacheDir } from '../../src/store/kept.js';
import { Sections } from '../../src/store/sections.js';
import { CLOSABLE } from './closable.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

const QUESTIONS = [
  'where T-1 DC-1',
  'where T-1 dc1s1',
  'where T-1 light rear right',
  'where T-1 fuses',
  'where T-1 torque',
  'where T-1 frost',
  'where T-1 repairs',
  'where T-1 behind',
  'where T-1 nothing so called',
  'behind T-1 AP-1',
  'near T-1 100,0,0in --within 6in',
  'isolate T-1 DC-1',
  'load T-1 DC-1/S1 --add 24W',
  'weights T-1 --all',
  'takeoff T-1 --each',
  'release T-1 --all',
  'progress T-1 --all',
];

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore(CLOSABLE);
  const files = readdirSync(store.root, { recursive: true, encoding: 'utf8' }).filter((name) => !name.startsWith('.git'));
  for (const file of files) utimesSync(path.join(store.root, file), 1_700_000_000, 1_700_000_000);
  vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + 3_600_000 });
});
afterAll(() => {
  vi.useRealTimers();
  store.remove();
});

const room = () => path.join(store.root, '.git/shellbook/figures');
const forget = () => rmSync(room(), { recursive: true, force: true });

async function answer(line: string) {
  const io = literalIo(store.root);
  const status = await runProgram(line.split(' '), io);
  return { status, text: io.answer(), messages: io.messages() };
}

/** Changes what is kept, so that it shows where an answer comes from. */
async function mark(): Promise<void> {
  for (const name of readdirSync(room())) {
    const [head = ''] = readFileSync(path.join(room(), name), 'latin1').split('\n');
    const { stamp } = JSON.parse(head.slice(65)) as { readonly stamp: string };
    const kept = await Sections.open({ room: CacheDir.in(path.join(store.root, '.git'), 'figures'), name, stamp, settled: true });
    kept.put('head', { revision: 'from what was kept' });
    await kept.save();
  }
}

describe('a look-up', () => {
  it.each(QUESTIONS)('answers from what was kept as it does without: %s', async (line) => {
    for (const form of [line, `${line} --json`]) {
      forget();
      const fresh = await answer(form);
      expect(await answer(form), form).toEqual(fresh);
    }
  });

  it('is the same where another question was asked first', async () => {
    for (const line of ['progress T-1 --all', 'release T-1 --all', 'load T-1 DC-1/S1']) {
      forget();
      const fresh = await answer(line);
      forget();
      await answer('near T-1 100,0,0in');
      expect(await answer(line), line).toEqual(fresh);
      expect(await answer(line), line).toEqual(fresh);
    }
  });

  it('of any kind is answered from what the first one kept', async () => {
    forget();
    await answer('near T-1 100,0,0in');
    await mark();
    for (const line of QUESTIONS)
      expect(JSON.parse((await answer(`${line} --json`)).text).revision, line).toBe('from what was kept');
  });

  it('is computed anew once a record has changed', async () => {
    forget();
    const before = await answer('where T-1 DC-1 --json');
    await mark();
    const file = path.join(store.root, 'shells/T-1/panels.yaml');
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, `${text}# a line more\n`);
    expect((await answer('where T-1 DC-1 --json')).text).toBe(before.text);
    writeFileSync(file, text);
  });

  it('finds nothing in what was kept that the store does not have', async () => {
    forget();
    await answer('where T-1 DC-1');
    const texts = readdirSync(store.root, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.yaml'))
      .map((name) => readFileSync(path.join(store.root, name), 'utf8'));
    const kept = readdirSync(room())
      .map((name) => readFileSync(path.join(room(), name), 'latin1'))
      .join('');
    expect(kept).toContain('T-1');
    // Where the store lies, whose it is, and anything of the machine.
    for (const word of [store.root, process.env.HOME, process.env.USER, 'secret'].filter(
      (one): one is string => (one?.length ?? 0) > 3,
    ))
      if (!texts.some((text) => text.includes(word))) expect(kept).not.toContain(word);
  });
});
