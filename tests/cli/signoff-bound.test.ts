import { execFileSync } from 'node:child_process';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CLOSABLE } from './closable.js';
import { shellbook } from './printed-book.js';
import { laySmallStore, type SmallStore } from './small-store.js';

const PEOPLE = CLOSABLE['library/people.yaml'] as string;
const SIGNING = PEOPLE.replace('{id: J2,', '{id: J2, signs: [floor, belly, close], git: [k@example.org],').replace(
  '{id: A1,',
  '{id: A1, signs: [belly], git: [a1@example.org],',
);

let store: SmallStore;
beforeEach(async () => {
  store = await laySmallStore(CLOSABLE);
});
afterEach(() => store.remove());

const sign = (stage: string, by: string, date = '2026-05-01') =>
  shellbook(store.root, 'signoff', 'T-1', stage, '--by', by, '--date', date);

async function bound(): Promise<readonly (readonly [severity: string, message: string])[]> {
  const { answer } = await shellbook(store.root, 'check', 'T-1', '--json', '--quiet');
  const { findings } = JSON.parse(answer) as {
    readonly findings: readonly { readonly rule: string; readonly severity: string; readonly message: string }[];
  };
  return findings.filter((one) => one.rule === 'signoff.not-bound').map((one) => [one.severity, one.message]);
}

describe('while nobody is named to sign', () => {
  it('a sign-off is bound to nobody: a note', async () => {
    await sign('floor', 'J2');
    await store.commit('Sign');
    expect(await bound()).toEqual([['note', expect.stringContaining('bound to nobody')]]);
  });
});

describe('once people.yaml says who signs', () => {
  it('what was signed before stands as it was', async () => {
    await sign('floor', 'J2');
    await store.commit('Sign');
    store.write('library/people.yaml', SIGNING);
    await new Promise((resolve) => setTimeout(resolve, 1100));
    await store.commit('Name the signers');
    expect(await bound()).toEqual([]);
  });
  it('the command refuses another, and a day before what is covered', async () => {
    store.write('library/people.yaml', SIGNING);
    await store.commit('Name the signers');
    const other = await sign('floor', 'A1');
    expect(other.status).toBe(1);
    expect(other.answer.replace(/\s+/gu, ' ')).toContain('A1 may not sign floor by library/people.yaml, expected J2');
    const early = await sign('belly', 'J2', '2026-03-01');
    expect(early.status).toBe(1);
    expect(early.answer.replace(/\s+/gu, ' ')).toContain('expected nothing newer than the sign-off of 2026-03-01');
    expect((await sign('floor', 'J2')).status).toBe(0);
  });
  it('their own commit binds it; late entry is told', async () => {
    store.write('library/people.yaml', SIGNING);
    await store.commit('Name the signers');
    await sign('floor', 'J2');
    await store.commit('Sign');
    expect(await bound()).toEqual([['note', expect.stringMatching(/came into Git on .* days later/u)]]);
  });
  it('an identity that is not theirs is an error, unless it says who typed it', async () => {
    store.write('library/people.yaml', SIGNING.replace('k@example.org', 'j2@example.org'));
    await store.commit('Name the signers');
    await sign('floor', 'J2');
    await store.commit('Sign');
    expect((await bound()).map(([severity]) => severity)).toEqual(['error', 'note']);
    const file = 'shells/T-1/signoffs.yaml';
    const text = execFileSync('git', ['show', `HEAD:${file}`], { cwd: store.root, encoding: 'utf8' });
    store.write(file, text.replace('by: J2,', 'by: J2, entered_by: A1,'));
    expect(await bound()).toEqual([
      ['note', expect.stringContaining('was entered by A1')],
      ['note', expect.stringContaining('days later')],
    ]);
  });
});
