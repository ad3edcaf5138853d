/**
 * Spoiled stores through the whole program: no stack, no hang, no wrong status, whatever is typed. A sample in every run; all night with
 * `npm run fuzz`, which takes other stores each time and says by which number they can be had again. What it finds becomes a case in
 * tests/fuzz/found.test.ts.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { History } from '../../src/store/history.js';
import { smallStore } from '../book/small-store.js';
import { FILES } from '../cli/small-store.js';
import { assessmentOf } from './assessed.js';
import { draws, mutate } from './mutations.js';
import { complaints, pageComplaints, ran } from './pipeline.js';

const COUNT = Number(process.env.SHELLBOOK_FUZZ ?? 40);
/** One case in so many is printed to HTML as well, which takes as long as all the rest. */
const PRINTED = 4;
const ALL_NIGHT = 24 * 3600_000;

const BASES: readonly Readonly<Record<string, string>>[] = [FILES, shortened(smallStore())];

/** Six members say as much as forty-six. */
function shortened(files: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const name = 'shells/T-1/members.yaml';
  return { ...files, [name]: `${(files[name] as string).split('\n').slice(0, 6).join('\n')}\n` };
}

let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'shellbook-fuzz-'));
  // Nothing that is spoiled here comes from Git, and asking it takes longer than the check of a small store.
  vi.spyOn(History, 'open').mockResolvedValue(null);
});
afterAll(() => {
  vi.restoreAllMocks();
  rmSync(root, { recursive: true, force: true });
});

let lying: Readonly<Record<string, string>> = {};

/** Makes the folder hold these files; what lies there already is left. */
function lay(files: Readonly<Record<string, string>>): void {
  for (const name of Object.keys(lying)) if (files[name] === undefined) rmSync(path.join(root, name));
  for (const [name, text] of Object.entries(files)) {
    if (lying[name] === text) continue;
    mkdirSync(path.dirname(path.join(root, name)), { recursive: true });
    writeFileSync(path.join(root, name), text);
  }
  lying = files;
}

const baseOf = (drawn: readonly number[]) => BASES[(drawn[0] as number) % BASES.length] as Readonly<Record<string, string>>;

describe('a spoiled store', () => {
  it(
    'is told about, and nothing breaks',
    async () => {
      await fc.assert(
        fc.asyncProperty(draws, async (drawn) => {
          const files = mutate(baseOf(drawn), drawn);
          lay(files);
          const typed = Object.values(files).join('\n');
          const store = ['--store', root, '--quiet'];
          const other = OTHERS[(drawn[2] as number) % OTHERS.length] as readonly string[];
          const said: string[] = [];
          for (const args of [['check', '--json', ...store], other.concat(store)]) {
            said.push(...complaints(await ran(root, ...args), typed));
          }
          expect(said).toEqual([]);
        }),
        { numRuns: COUNT },
      );
    },
    ALL_NIGHT,
  );

  it(
    'never puts its own markup into the book or on a label',
    async () => {
      await fc.assert(
        fc.asyncProperty(draws, async (drawn) => {
          const files = mutate(baseOf(drawn), drawn);
          const assessment = assessmentOf(files);
          const typed = Object.values(files).join('\n');
          if (assessment) expect(await pageComplaints(assessment, drawn[1] as number, typed)).toEqual([]);
        }),
        { numRuns: Math.ceil(COUNT / PRINTED) },
      );
    },
    ALL_NIGHT,
  );
});

const OTHERS: readonly (readonly string[])[] = [
  ['check', 'T-1', '--all'],
  ['check', '--all'],
  ['check', 'T-1', '--json'],
  ['weights', 'T-1', '--json'],
  ['weights', 'T-1', '--all'],
  ['takeoff', 'T-1', '--json'],
  ['takeoff', 'T-1', '--each'],
  ['where', 'T-1', 'DC', '--json'],
  ['where', 'T-1', 'fuses'],
  ['behind', 'T-1', 'AP-1', '--json'],
  ['near', 'T-1', '100in,0in,0in', '--within', '40in', '--json'],
  ['isolate', 'T-1', 'DC-1', '--json'],
  ['isolate', 'T-1', 'DC-12'],
  ['release', 'T-1', '--json'],
  ['release', 'T-1'],
  ['list', '--json'],
  ['list'],
  ['trace', 'welder', 'K7', '--json'],
  ['check', '--format', 'sarif'],
  ['check', '--format', 'junit'],
  ['export', 'members', 'T-1'],
  ['export', 'components', 'T-1'],
];
