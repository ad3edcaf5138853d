/**
 * Spoiled stores through the whole program: no stack, no hang, no wrong status, whatever is typed. A sample in every run; all night with
 * `SHELLBOOK_FUZZ=10000 SHELLBOOK_SEED=random npx vitest run --config .vitest.config.ts tests/fuzz`. What it finds becomes a case in
 * tests/fuzz/found.test.ts.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import { smallStore } from '../book/small-store.js';
import { FILES } from '../cli/small-store.js';
import { assessmentOf } from './assessed.js';
import { draws, mutate } from './mutations.js';
import { complaints, ran } from './pipeline.js';

const COUNT = Number(process.env.SHELLBOOK_FUZZ ?? 30);
const BASES = [FILES, smallStore()];

let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'shellbook-fuzz-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

function lay(files: Readonly<Record<string, string>>): string {
  rmSync(root, { recursive: true, force: true });
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(root, name)), { recursive: true });
    writeFileSync(path.join(root, name), text);
  }
  return root;
}

describe('a spoiled store', () => {
  it(
    'is told about, and nothing breaks',
    async () => {
      let turn = 0;
      await fc.assert(
        fc.asyncProperty(draws, async (drawn) => {
          const files = mutate(BASES[(drawn[0] as number) % BASES.length] as Record<string, string>, drawn);
          const folder = lay(files);
          const typed = Object.values(files).join('\n');
          const store = ['--store', folder, '--quiet'];
          const asked = [
            ['check', '--json', ...store],
            ['check', 'T-1', '--all', ...store],
            // One of the others each time: together they take long.
            OTHERS[turn++ % OTHERS.length]?.concat(store) as string[],
          ];
          const said: string[] = [];
          for (const args of asked) said.push(...complaints(await ran(folder, ...args), typed));
          expect(said).toEqual([]);
        }),
        { numRuns: COUNT },
      );
    },
    24 * 3600_000,
  );

  it(
    'never puts its own markup into the book',
    async () => {
      await fc.assert(
        fc.asyncProperty(draws, async (drawn) => {
          const assessment = assessmentOf(mutate(BASES[1] as Record<string, string>, drawn));
          if (!assessment) return;
          const { html } = await bookDocument({
            assessment,
            edition: (['owner', 'service', 'shop'] as const)[(drawn[1] as number) % 3] as 'shop',
            fingerprint: '9d'.repeat(32),
            history: { revision: null, revisionDate: null, tag: null, commits: [] } as never,
            photoFile: async () => undefined,
          });
          const body = html.slice(html.indexOf('<body>'));
          expect(body).not.toMatch(/<script>alert|<img src=x|onerror=alert\(1\)>/u);
          expect(html).not.toMatch(/(?:src|href)=["']?https?:|url\(["']?https?:/u);
        }),
        { numRuns: Math.ceil(COUNT / 4) },
      );
    },
    24 * 3600_000,
  );
});

const OTHERS: readonly string[][] = [
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
  ['trace', 'welder', 'K7', '--json'],
  ['check', '--format', 'sarif'],
  ['check', '--format', 'junit'],
  ['export', 'members', 'T-1'],
];
