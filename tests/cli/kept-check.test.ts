import { execFileSync } from 'node:child_process';
import { createHmac } from 'node:crypto';
import {
  chmodSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { makeContext } from '../../src/cli/context.js';
import { cachePlaceOf } from '../../src/cli/kept-check.js';
import { runProgram } from '../../src/cli/program.js';
import { CacheDir } from '../../src/store/kept.js';
import { Sections } from '../../src/store/sections.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

/** Whole seconds, so that the time can be set back to what it was. */
const LONG_AGO = 1_700_000_000;
let store: SmallStore;
beforeEach(async () => {
  store = await laySmallStore({
    'shells/T-1/findings.yaml':
      '- {id: NC-1, raised: 2026-04-11, of: [DC-1/1], description: "loose \\\\0 clip"}\n- {id: NC-1, raised: 2026-04-12, of: [FL-1], description: twice}\n',
    'shells/T-1/photos/photos.yaml': '- {id: P-1, file: a.jpg, of: [FL-1], date: 2026-04-08}\n',
    'shells/T-1/photos/a.jpg': 'no picture',
    'shells/T-2/shell.yaml': 'shell: T-2\ntitle: Another\n',
  });
  const files = readdirSync(store.root, { recursive: true, encoding: 'utf8' }).filter((name) => !name.startsWith('.git'));
  for (const file of files) utimesSync(path.join(store.root, file), LONG_AGO, LONG_AGO);
  // An hour later, when no file is young any more, however long the test takes.
  vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + 3_600_000 });
});
afterEach(() => {
  vi.useRealTimers();
  store.remove();
});

const room = () => path.join(store.root, '.git/shellbook/check');
const names = (): string[] => {
  try {
    return readdirSync(room()).sort();
  } catch {
    return [];
  }
};
/** What is kept looks like this: a text that no check says. */
const MARK = 'told from what was kept';

async function check(args: readonly string[] = [], { cwd = store.root, env = {}, terminal = false } = {}) {
  const io = literalIo(cwd, env, terminal);
  const status = await runProgram(['check', ...args], io);
  return { status, text: io.answer(), messages: io.messages() };
}

async function cold(...args: Parameters<typeof check>) {
  rmSync(room(), { recursive: true, force: true });
  return check(...args);
}

/** The entry of that name, as whoever has this user's key would write it. */
async function entry(name: string, stamp?: string): Promise<Sections> {
  const [head = ''] = readFileSync(path.join(room(), name), 'latin1').split('\n');
  const of = (JSON.parse(head.slice(65)) as { readonly stamp: string }).stamp;
  return Sections.open({ room: CacheDir.in(path.join(store.root, '.git'), 'check'), name, stamp: stamp ?? of, settled: true });
}

/** Puts a mark into what is kept, so that it shows where an answer comes from. */
async function mark(): Promise<void> {
  for (const name of names()) {
    const kept = await entry(name);
    kept.put('answer', { text: MARK, status: 0 });
    await kept.save();
  }
}
const isWarm = async (...args: Parameters<typeof check>): Promise<boolean> => (await check(...args)).text.includes(MARK);

describe('an answer of check that is kept', () => {
  it('is the same, cold and warm, in every form', async () => {
    const format = fc.constantFrom([], ['--json'], ...['text', 'json', 'sarif', 'junit'].map((one) => ['--format', one]));
    const asked = fc.record({
      shells: fc.subarray(['T-1', 'T-2'], { minLength: 0 }),
      more: fc.subarray(['--all', '--quiet', '--no-color', '--share=1/2']),
      format,
      terminal: fc.boolean(),
      away: fc.boolean(),
    });
    await fc.assert(
      fc.asyncProperty(asked, async ({ shells, more, format, terminal, away }) => {
        const cwd = away ? path.dirname(store.root) : store.root;
        const args = [...shells, ...more, ...format, ...(away ? ['--store', store.root] : [])];
        const first = await cold(args, { cwd, terminal });
        expect(names()).toHaveLength(1);
        const again = await check(args, { cwd, terminal });
        // On a terminal a passing line says what is done now.
        expect({ ...again, messages: '' }).toEqual({ ...first, messages: '' });
        if (!terminal) expect(again.messages).toBe(first.messages);
        await mark();
        expect(await isWarm(args, { cwd, terminal })).toBe(true);
      }),
      { numRuns: 12 },
    );
  });

  it('is told again by no other question', async () => {
    await check(['T-1']);
    await mark();
    const others = [[], ['T-2'], ['T-1', 'T-2'], ['T-1', '--all'], ['T-1', '--json'], ['T-1', '--share', '1/3']];
    for (const other of others) expect(await isWarm(other), other.join(' ')).toBe(false);
    expect(await isWarm(['T-1'], { terminal: true })).toBe(false);
    expect(await isWarm(['T-1'], { env: { GIT_INDEX_FILE: 'another' } })).toBe(false);
    expect(await isWarm(['T-1', '--since', 'HEAD'])).toBe(false);
    await check(['T-1', '--format', 'sarif']);
    await mark();
    const inside = path.join(store.root, 'shells');
    expect(await isWarm(['T-1', '--format', 'sarif'], { cwd: inside })).toBe(false);
    expect(await isWarm(['T-1'])).toBe(true);
  });

  it('is no answer of a printed book, which is asked anew', async () => {
    const settings = { json: false, quiet: true, color: false, store: store.root };
    const context = (more: object) => makeContext({ ...settings, ...more }, literalIo(store.root));
    expect(await cachePlaceOf([], context({}))).toBeDefined();
    expect(await cachePlaceOf([], context({ book: 'book.pdf' }))).toBeUndefined();
  });

  it('says in a JUnit report when it is told, and leaves the signs of records alone', async () => {
    store.write(
      'shells/T-1/members-more.yaml',
      '- {id: FL-9, section: <now>, alloy: 6061-T6, from: [20 in, 0, 0], to: [90 in, 0, 0]}\n',
    );
    vi.setSystemTime(Date.now() + 60_000);
    const args = ['T-1', '--format', 'junit'];
    const first = await check(args);
    vi.setSystemTime(Date.now() + 3_600_000);
    const again = await check(args);
    const stamps = (text: string) => new Set([...text.matchAll(/timestamp="([^"]*)"/gu)].map((one) => one[1]));
    expect([stamps(first.text).size, stamps(again.text).size]).toEqual([1, 1]);
    expect([...stamps(again.text)]).toEqual([new Date().toISOString().slice(0, 19)]);
    expect(stamps(again.text)).not.toEqual(stamps(first.text));
    expect(again.text).toContain('&lt;now&gt;');
  });

  const zones = () => path.join(store.root, 'shells/T-1/zones.yaml');
  const git = (...args: readonly string[]) => execFileSync('git', args, { cwd: store.root, stdio: 'pipe' }).toString();
  /** In place, the same size, the time of the last write set back. */
  const slip = (file: string, from: string, to: string): void => {
    const { size, ino, mtimeMs } = statSync(file);
    const text = readFileSync(file, 'utf8');
    expect(text).toContain(from);
    writeFileSync(file, text.replace(from, to));
    utimesSync(file, LONG_AGO, LONG_AGO);
    expect(statSync(file)).toMatchObject({ size, ino, mtimeMs });
  };
  const CHANGES: Readonly<Record<string, () => void>> = {
    'one byte of a record, its size and time as before': () => slip(zones(), 'belly', 'bally'),
    'a record of the library': () => slip(path.join(store.root, 'library/stages.yaml'), 'Floor', 'Flour'),
    'the shop file': () => slip(path.join(store.root, 'shop.yaml'), 'Test', 'Text'),
    'a record of another shell': () => slip(path.join(store.root, 'shells/T-2/shell.yaml'), 'Another', 'Anather'),
    'a picture': () => slip(path.join(store.root, 'shells/T-1/photos/a.jpg'), 'no', 'on'),
    'a new picture': () => store.write('shells/T-1/photos/b.jpg', 'x'),
    'a picture that is gone': () => rmSync(path.join(store.root, 'shells/T-1/photos/a.jpg')),
    'a new record file': () => store.write('shells/T-1/clamps.yaml', ''),
    'a name that is not read': () => renameSync(zones(), path.join(store.root, 'shells/T-1/zoness.yaml')),
    'a new shell': () => store.write('shells/T-3/shell.yaml', 'shell: T-3\n'),
    'a folder that lies too deep': () => mkdirSync(path.join(store.root, 'shells/T-1/a/b/c/d/e/f'), { recursive: true }),
    'a link that leads out': () => symlinkSync(tmpdir(), path.join(store.root, 'shells/T-1/out')),
    'a link in the place of a file': () => {
      const kept = path.join(store.root, 'library/kept.txt');
      renameSync(zones(), kept);
      symlinkSync(kept, zones());
    },
    'a file that nobody may read': () => chmodSync(zones(), 0o000),
    'a commit': () => git('commit', '--quiet', '--allow-empty', '-m', 'Nothing'),
  };
  it('holds whatever Git is told to leave alone: its index and its lists of what to ignore have no say', async () => {
    store.write('shells/T-1/clamps-new.yaml', '');
    vi.setSystemTime(Date.now() + 60_000);
    const before = await check(['T-1']);
    git('rm', '--quiet', '--cached', 'shells/T-2/shell.yaml');
    store.write('.git/info/exclude', 'clamps-new.yaml\n');
    expect(await cold(['T-1'])).toEqual(before);
    await mark();
    expect(await isWarm(['T-1'])).toBe(true);
  });
  it.each(Object.keys(CHANGES))('holds no longer after: %s', async (name) => {
    store.write('shells/T-1/clamps-new.yaml', '');
    vi.setSystemTime(Date.now() + 60_000);
    const before = await check(['T-1']);
    await mark();
    expect(await isWarm(['T-1'])).toBe(true);
    (CHANGES[name] as () => void)();
    const after = await check(['T-1']);
    expect(after.text).not.toContain(MARK);
    expect(after).toEqual(await cold(['T-1']));
    expect(before.text).not.toContain(MARK);
  });

  it('holds while nothing has changed but what no record is read from', async () => {
    await check(['T-1']);
    await mark();
    store.write('notes.txt', 'nothing');
    store.write('out/check.sarif', '{}');
    store.write('.hidden/notes.yaml', 'nothing');
    expect(await isWarm(['T-1'])).toBe(true);
  });

  it('is not kept while a file is young, nor where the answer is that it cannot be done', async () => {
    vi.useRealTimers();
    store.write('shells/T-1/zones.yaml', readFileSync(zones(), 'utf8'));
    await check(['T-1']);
    expect(names()).toEqual([]);
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + 3_600_000 });
    expect((await check(['NOPE'])).status).toBe(2);
    expect(names()).toEqual([]);
  });

  it('is nothing where it is damaged, forged in another form, or of another time', async () => {
    const whole = await check(['T-1', '--all']);
    const name = names()[0] as string;
    const file = path.join(room(), name);
    const answers = [
      null,
      7,
      [],
      {},
      { text: 'fine' },
      { text: 7, status: 0 },
      { text: 'fine', status: 2 },
      { text: 'fine', status: '0' },
    ];
    for (const answer of answers) {
      const kept = await entry(name);
      kept.put('answer', answer);
      await kept.save();
      expect(await check(['T-1', '--all']), JSON.stringify(answer)).toEqual(whole);
    }
    const earlier = await entry(name, 'x');
    earlier.put('answer', { text: 'fine', status: 0 });
    await earlier.save();
    expect(await check(['T-1', '--all'])).toEqual(whole);
    const bytes = readFileSync(file);
    const text = bytes.toString('latin1');
    const damaged = [
      `${'0'.repeat(64)} ${text.slice(65)}`,
      text.replace('status', 'stotus'),
      text.slice(0, 300),
      text.slice(0, -20) + '\0'.repeat(20),
      // Marked by the key of another user.
      text.replace(
        /^\w+/u,
        createHmac('sha256', 'another')
          .update(text.slice(65, text.indexOf('\n')))
          .digest('hex'),
      ),
      '',
      '\n',
    ];
    for (const one of damaged) {
      writeFileSync(file, Buffer.from(one, 'latin1'));
      expect(await check(['T-1', '--all']), one.slice(0, 80)).toEqual(whole);
      // And is kept anew.
      expect((await entry(name)).get('answer')).toMatchObject({ status: 1 });
    }
  });

  it('is not needed: a repository that cannot be written to gives the same answer, and so does none', async () => {
    const whole = await cold(['T-1']);
    rmSync(path.join(store.root, '.git/shellbook'), { recursive: true });
    // A file in the folder's place: nobody can write there, whoever runs this.
    writeFileSync(path.join(store.root, '.git/shellbook'), '');
    for (let i = 0; i < 2; i++) expect(await check(['T-1'])).toEqual(whole);
    rmSync(path.join(store.root, '.git'), { recursive: true });
    const [first, again] = [await check(['T-1']), await check(['T-1'])];
    expect(again).toEqual(first);
    expect(first.status).toBe(whole.status);
  });
});
