import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Assessment, assess } from '../../src/assess.js';
import { projectDrawings } from '../../src/book/project-drawings.js';
import { buildProgress } from '../../src/closeout/build-progress.js';
import { loadStore } from '../../src/model/load.js';
import type { Model } from '../../src/model/shell.js';
import { readStoreText } from '../../src/store/read.js';
import { CLOSABLE } from './closable.js';
import { shellbook } from './printed-book.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore(CLOSABLE);
  await shellbook(store.root, 'new-shell', 'T-2', '--from', 'T-1');
  await store.commit('Start T-2');
});
afterAll(() => store.remove());

interface Answer {
  readonly findings: readonly { readonly rule: string; readonly severity: string; readonly ids: readonly string[] }[];
}
const loadedShell = async (shell: string) => {
  const found = loadStore(await readStoreText(store.root)).shells.get(shell);
  if (!found) throw new Error(`no ${shell}`);
  return found;
};
const modelOf = async (shell: string): Promise<Model> => (await loadedShell(shell)).model;
const assessed = async (shell: string): Promise<Assessment> => {
  const { model, findings } = await loadedShell(shell);
  return assess(model, findings);
};
const check = async (shell: string): Promise<Answer['findings']> =>
  (JSON.parse((await shellbook(store.root, 'check', shell, '--json', '--quiet')).answer) as Answer).findings;

describe('day one of the next coach', () => {
  it('asks for no evidence of what is only planned', async () => {
    const rules = new Set((await check('T-2')).filter((one) => one.severity !== 'note').map((one) => one.rule));
    // What is left is of the chassis, of which nothing has come yet.
    expect([...rules].sort()).toEqual(['shell.gvwr-missing', 'weight.no-rating', 'weight.not-verified']);
  });
  it('cannot be closed while anything is planned', async () => {
    const { status, answer } = await shellbook(store.root, 'close', 'T-2', '--no-books', '--json');
    expect(status).toBe(1);
    const { missing } = JSON.parse(answer) as { readonly missing: readonly { readonly message: string }[] };
    expect(missing.some(({ message }) => message.includes('planned, not built'))).toBe(true);
  });
});

describe('a stage with something planned', () => {
  it('is not signed, and meets none of its hold points', async () => {
    const { status, answer } = await shellbook(store.root, 'signoff', 'T-2', 'floor', '--by', 'J2', '--json');
    expect(status).toBe(1);
    const { missing } = JSON.parse(answer) as { readonly missing: readonly { readonly message: string }[] };
    const messages = missing.map(({ message }) => message);
    expect(messages).toContainEqual(expect.stringMatching(/^FL-3, FL-1, FL-2, W-1: planned, not built/u));
    expect(messages.filter((one) => one.startsWith('4 of 4 records of this stage are planned'))).toHaveLength(2);
  });
  it('is counted by planned and done', async () => {
    const model = await modelOf('T-1');
    const counts = (of: Model) => buildProgress(of).map(({ stage, planned, done }) => [stage, planned, done]);
    expect(counts(model)).toEqual([
      ['floor', 0, 4],
      ['belly', 0, 2],
      [null, 0, 9],
    ]);
    expect(counts(await modelOf('T-2'))).toEqual([
      ['floor', 4, 0],
      ['belly', 2, 0],
      [null, 9, 0],
    ]);
  });
});

describe('the drawings and the index of what is planned', () => {
  it('shows it in wide dashes, and says so; what is built has none', async () => {
    const wide = /stroke-dasharray="2\.4 2\.4"/u;
    const sheets = async (shell: string): Promise<string> => {
      const figures = projectDrawings.services(await assessed(shell), 'dc', { widthMm: 250, heightMm: 180 });
      return figures.map(({ svg }) => svg).join('');
    };
    expect(await sheets('T-1')).not.toMatch(wide);
    const planned = await sheets('T-2');
    expect(planned).toMatch(wide);
    // The note may break over lines.
    expect(planned.replace(/<[^>]+>/gu, ' ').replace(/\s+/gu, ' ')).toContain('Wide dashes: planned, not in the coach yet.');
  });
});

describe('what was planned and is built', () => {
  it('is asked for its day until it has one', async () => {
    const file = 'shells/T-2/members.yaml';
    const text = readFileSync(`${store.root}/${file}`, 'utf8');
    store.write(file, text.replace(/, planned: yes/u, ''));
    await store.commit('The left floor rail is in');
    const undated = (await check('T-2')).filter((one) => one.rule === 'record.built-undated');
    expect(undated.map(({ ids }) => ids)).toEqual([['FL-1']]);
    store.write(file, text.replace(/, planned: yes/u, ', date: 2026-05-04'));
    expect((await check('T-2')).map((one) => one.rule)).not.toContain('record.built-undated');
    store.write(file, text);
    await store.commit('Not yet');
  });
});

describe('a planned record', () => {
  it('counts in the forecast, not in unladen', async () => {
    const weights = async () => JSON.parse((await shellbook(store.root, 'weights', 'T-1', '--json', '--quiet')).answer);
    const before = await weights();
    store.write(
      'shells/T-1/components.yaml',
      '- {id: CMP-9, name: awning, mass: 100 kg, at: [90 in, 0 in, 90 in], basis: weighed, planned: yes}\n',
    );
    const after = await weights();
    expect(after.uvw_kg).toBeCloseTo(before.uvw_kg, 6);
    expect(after.planned_kg).toBe(100);
    expect(after.forecast.total_kg - before.forecast.total_kg).toBeCloseTo(100, 6);
  });
});
