/**
 * Every command that writes, killed outright at a random moment of its work: each file of the store holds what it held or what the command
 * was to write, nothing else lies there, and the same command typed again brings the store to where one undisturbed run brings it. Some of
 * them once in every run, all 300 times with `npm run fuzz`.
 */
import { execFileSync, spawn } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CLOSABLE } from '../cli/closable.js';
import { shellbook } from '../cli/printed-book.js';
import { FILES, laySmallStore, type SmallStore } from '../cli/small-store.js';

const MAIN = fileURLToPath(new URL('../../dist/shellbook.cjs', import.meta.url));
const KILLS = Math.min(300, Number(process.env.SHELLBOOK_FUZZ ?? 1));
const ALL_NIGHT = 24 * 3600_000;

let away: string;
let model: SmallStore;
beforeAll(async () => {
  away = mkdtempSync(path.join(tmpdir(), 'shellbook-kills-'));
  model = await laySmallStore({ ...CLOSABLE, ...CROSSED, '.gitignore': 'books/\n' });
  for (const [name, text] of Object.entries(SHEETS)) writeFileSync(path.join(away, name), text);
  mkdirSync(path.join(away, 'phone'));
  for (let i = 0; i < 5; i++) {
    const one = sharp({ create: { width: 60, height: 40, channels: 3, background: { r: 40 * i, g: 90, b: 20 } } }).png();
    writeFileSync(path.join(away, `phone/IMG_${i}.png`), await one.toBuffer());
  }
  writeFileSync(path.join(away, 'floor.json'), JSON.stringify(handedOver()));
  await shellbook(model.root, 'backup', path.join(away, 'whole.tgz'), '--quiet');
}, ALL_NIGHT);
afterAll(() => {
  model.remove();
  rmSync(away, { recursive: true, force: true });
});

const CROSSED = {
  'shells/T-1/members.yaml': `${FILES['shells/T-1/members.yaml']}- {id: CB-1, stage: floor, section: RT2x2x1/8, alloy: 6061-T6, from: [85 in, -30 in, 0 in], to: [85 in, 30 in, 0 in]}
`,
};
const SHEETS = {
  'members.csv': `id,part,stage,section,alloy,from,to\n${Array.from({ length: 40 }, (_, i) => `M-${i},post,floor,RT2x2x1/8,6061-T6,"${20 + i} in, -30 in, 4 in","${20 + i} in, -30 in, 90 in"`).join('\n')}\n`,
  'wires.csv': 'wire,from,to,gauge,fuse,voltage\nDC-7,DCP,DC-1/L,14,5 A,12.8 V\n',
};

/** Hours of one phone: ten looks at the coach. */
function handedOver() {
  const entry = (i: number) => ({
    key: `AAAA/${String(i + 1).padStart(4, '0')}`,
    at: new Date(Date.UTC(2026, 4, 4, 8, i)).toISOString(),
    person: 'K7',
    kind: 'weld',
    does: 'add',
    id: `W-5${i}`,
    data: {
      joins: ['FL-1', 'FL-3'],
      type: 'fillet',
      size: '1/4 in',
      length: '2 in',
      process: 'GMAW',
      welder: 'K7',
      date: '2026-05-04',
    },
  });
  const entries = Array.from({ length: 10 }, (_, i) => entry(i));
  const device = { tag: 'AAAA', name: 'phone' };
  return {
    shellbook: 'floor',
    version: 1,
    shell: 'T-1',
    device,
    fingerprint: 'ab',
    at: '2026-05-04T17:00:00Z',
    entries,
    pictures: [],
  };
}

interface Writing {
  /** What is typed; `away` stands for a folder outside the store, `root` for the store. */
  readonly typed: (away: string, root: string) => readonly string[];
  /** Typed first, undisturbed. */
  readonly first?: (away: string) => readonly string[];
  /** Where it writes beside the store. */
  readonly out?: string;
  /** Typed again after it was done, it has nothing to do, and says so with one of these. */
  readonly again?: readonly number[];
  /** Succeeds only where what was written is whole. */
  readonly whole?: (away: string) => readonly string[];
}

const JOIN = ['--joins', 'FL-1, FL-3', '--type', 'fillet', '--size', '1/4 in', '--length', '2 in', '--process', 'GMAW'];
const GIVEN = ['--welder', 'K7', '--date', '2026-03-01'];

const WRITING: Readonly<Record<string, Writing>> = {
  add: { typed: () => ['add', 'weld', '--shell', 'T-1', '--id', 'W-9', ...JOIN, ...GIVEN], again: [2] },
  'import a sheet': { typed: (out) => ['import', 'members', `${out}/members.csv`, '--shell', 'T-1', '--yes', '--keep'] },
  'import wires': { typed: (out) => ['import', 'wires', `${out}/wires.csv`, '--shell', 'T-1', '--yes'] },
  'import floor': { typed: (out) => ['import', 'floor', `${out}/floor.json`, '--shell', 'T-1', '--yes'] },
  photos: { typed: (out) => ['photos', 'T-1', `${out}/phone`] },
  decide: {
    typed: () => ['decide', 'service.no-grommet', 'DC-1/1', '--as', 'use as is', '--by', 'J2', '--because', 'a sleeve is there'],
    again: [2],
  },
  mend: { typed: () => ['mend', 'T-1', 'service.no-grommet', '--yes'] },
  undo: {
    first: (out) => ['import', 'members', `${out}/members.csv`, '--shell', 'T-1', '--yes', '--keep'],
    typed: () => ['undo'],
    again: [2],
  },
  signoff: { typed: () => ['signoff', 'T-1', 'floor', '--by', 'J2', '--date', '2026-05-01'], again: [1] },
  'new-shell': { typed: () => ['new-shell', 'T-2', '--from', 'T-1'], again: [2] },
  'new-store': { typed: (out) => ['new-store', `${out}/made`], out: 'made', again: [2] },
  export: { typed: (out) => ['export', 'all', 'T-1', '--out', `${out}/made`], out: 'made' },
  backup: {
    typed: (out) => ['backup', `${out}/made.tgz`],
    out: 'made.tgz',
    again: [2],
    whole: (out) => ['recover', `${out}/made.tgz`, `${out}/back`],
  },
  recover: { typed: (out) => ['recover', `${out}/whole.tgz`, `${out}/made`], out: 'made', again: [2] },
  pocket: { typed: (out) => ['pocket', 'T-1', '--out', `${out}/made.html`], out: 'made.html' },
  floor: { typed: (out) => ['floor', 'T-1', '--out', `${out}/made.html`], out: 'made.html' },
};

/** A store of its own beside what it is given, and a user of its own. */
function laid() {
  const folder = mkdtempSync(path.join(away, 'one-'));
  const root = path.join(folder, 'store');
  cpSync(model.root, root, { recursive: true });
  for (const name of ['members.csv', 'wires.csv', 'phone', 'floor.json', 'whole.tgz'])
    cpSync(path.join(away, name), path.join(folder, name), { recursive: true });
  const env = { ...process.env, XDG_STATE_HOME: path.join(folder, 'state'), XDG_CACHE_HOME: path.join(away, 'cache') };
  return { folder, root, env };
}
type Laid = ReturnType<typeof laid>;

interface Ended {
  readonly status: number | null;
  readonly said: string;
}

/** Runs the built program; kills it outright after so long, where it has not ended by then. */
function run({ root, env }: Laid, args: readonly string[], afterMs?: number): Promise<Ended> {
  const child = spawn(process.execPath, [MAIN, ...args, '--quiet'], { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
  const heard: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (bytes: Buffer) => heard.push(bytes));
  const timer = afterMs === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), afterMs);
  return new Promise((done) =>
    child.on('close', (status) => {
      clearTimeout(timer);
      done({ status, said: Buffer.concat(heard).toString() });
    }),
  );
}

/** Every file below a folder but Git's own, name → bytes; times of writing in what is made anew are not its contents. */
function filesOf(folder: string): ReadonlyMap<string, string> {
  if (!existsSync(folder)) return new Map();
  const names = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => path.relative(folder, path.join(one.parentPath, one.name)))
    .filter((name) => !/^\.git(?:\/|$)/u.test(name));
  return new Map(names.sort().map((name) => [name, readFileSync(path.join(folder, name), 'latin1')]));
}

/** Names and sizes of what stands beside the store: what is packed holds the minute of its making. */
const madeIn = ({ folder }: Laid, out: string | undefined): readonly string[] => {
  if (out === undefined) return [];
  const made = path.join(folder, out);
  return existsSync(made) && !out.includes('.') ? [...filesOf(made).keys()] : [String(existsSync(made))];
};

/** What lies beside the store and is neither given nor made. */
const strays = ({ folder }: Laid, out: string | undefined): readonly string[] => {
  const expected = ['store', 'state', 'members.csv', 'wires.csv', 'phone', 'floor.json', 'whole.tgz', out];
  return readdirSync(folder).filter((name) => !expected.includes(name));
};

const seed = Number(process.env.SHELLBOOK_SEED) || randomInt(2 ** 31);
/** Milliseconds from the start: at the least Node itself has begun, at the most the longest of them has written. */
const aimed = (number: number): number => 80 + 900 * number ** 1.5;
/** Numbers from 0 to 1 that the same seed gives again (mulberry32, public domain). */
function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** By day those in which it found something; all of them at night. */
const BY_DAY = ['import wires', 'decide', 'undo', 'signoff', 'backup', 'recover'];
const TRIED = Object.entries(WRITING).filter(([name]) => KILLS > 1 || BY_DAY.includes(name));

describe.each(TRIED)('%s', (_name, { typed, first, out, again = [], whole: proof }) => {
  it(
    `killed at any moment ${KILLS} times, loses nothing and can be typed again`,
    async () => {
      const next = numbers(seed);
      const fresh = async (): Promise<Laid> => {
        const one = laid();
        if (first) expect((await run(one, first(one.folder))).status).toBe(0);
        return one;
      };
      const whole = await fresh();
      const before = filesOf(whole.root);
      const undisturbed = await run(whole, typed(whole.folder, whole.root));
      expect(undisturbed.status, undisturbed.said).toBe(0);
      const after = filesOf(whole.root);
      const made = madeIn(whole, out);
      for (let i = 0; i < KILLS; i++) {
        const one = await fresh();
        await run(one, typed(one.folder, one.root), aimed(next()));
        for (const [name, bytes] of filesOf(one.root)) {
          if (/\.new$|(?:^|\/)\./u.test(name)) continue;
          expect([before.get(name), after.get(name)], `${name} is as it was or as it should be`).toContain(bytes);
        }
        const second = await run(one, typed(one.folder, one.root));
        expect([0, ...again], second.said).toContain(second.status);
        expect(second.said).not.toMatch(/Unexpected fault|mistake in shellbook/u);
        expect([...filesOf(one.root)].filter(([name]) => name !== '.shellbook.lock')).toEqual([...after]);
        expect(madeIn(one, out)).toEqual(made);
        expect(strays(one, out)).toEqual([]);
        if (proof) expect((await run(one, proof(one.folder))).status).toBe(0);
        expect(execFileSync('git', ['fsck', '--no-progress'], { cwd: one.root, encoding: 'utf8' })).toBe('');
        rmSync(one.folder, { recursive: true, force: true });
      }
      rmSync(whole.folder, { recursive: true, force: true });
    },
    ALL_NIGHT,
  );
});
