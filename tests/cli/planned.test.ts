import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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
