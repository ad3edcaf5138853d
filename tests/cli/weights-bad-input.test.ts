import { afterEach, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore | undefined;
afterEach(() => store?.remove());

const SHELL = (rear: string, front = 'gawr: 6000 lb, ') => `shell: T-1
title: Small test shell
chassis:
  gvwr: 14500 lb
  axles:
    - {id: front, x: 0 in, ${front}track: 68 in, tyres: {count: 2, load_index: 121}}
    - {id: rear, x: 160 in, ${rear}track: 66 in}
  bare:
    condition: {fuel: 1}
    readings: {front: 3300 lb, rear: 2400 lb}
tanks:
  - {id: FUEL, contents: diesel, capacity: 40 gal, at: [60 in, -30 in, 0 in]}
`;
const TICKET = (more: string) => `- {id: T-1/W, stage: belly, scale: SC-1, ${more}}\n`;
const READ = 'readings: {front: 3320 lb, rear: 2440 lb}';

/** What check says of one rule, and the answer of `weights`, from a store with these two files. */
async function told(rule: string, shell: string, ticket: string) {
  store = await laySmallStore({ 'shells/T-1/shell.yaml': shell, 'shells/T-1/weights.yaml': ticket });
  const check = literalIo(store.root);
  await runProgram(['check', 'T-1', '--json', '--quiet'], check);
  const weights = literalIo(store.root);
  await runProgram(['weights', 'T-1', '--json', '--quiet'], weights);
  const findings: { rule: string; message: string; file: string; line: number }[] = JSON.parse(check.answer()).findings;
  return { found: findings.filter((one) => one.rule === rule), answer: JSON.parse(weights.answer()) };
}
const unladen = (answer: { conditions: { name: string; axles: { load_kg: number; verdict: string }[] }[] }) =>
  answer.conditions.find((one) => one.name === 'unladen')?.axles ?? [];

describe('bad input is told plainly, and the rest computed', () => {
  it('an axle without a rating', async () => {
    const { found, answer } = await told(
      'weight.no-rating',
      SHELL(''),
      TICKET(`date: 2026-06-30, condition: {fuel: 1}, ${READ}`),
    );
    expect(found[0]).toMatchObject({ file: 'shells/T-1/shell.yaml', line: 7 });
    expect(found[0]?.message).toContain('axle rear');
    expect(unladen(answer).map((one) => one.verdict)).toEqual(['within', 'not verified']);
  });
  it('14,600 kg on two tyres', async () => {
    const shell = SHELL('gawr: 9000 lb, ', 'gawr: 14600 kg, ');
    const { found, answer } = await told(
      'weight.rating-improbable',
      shell,
      TICKET(`date: 2026-06-30, condition: {fuel: 1}, ${READ}`),
    );
    expect(found[0]?.message).toContain('type `gawr: 14,600 lb`');
    expect(unladen(answer)).toHaveLength(2);
  });
  it('left and right that do not add to their axle', async () => {
    const readings = 'readings: {front: {axle: 3320 lb, left: 1660 lb, right: 1360 lb}, rear: 2440 lb}';
    const shell = SHELL('gawr: 9000 lb, ');
    const { found, answer } = await told(
      'weight.ends-do-not-add',
      shell,
      TICKET(`date: 2026-06-30, condition: {fuel: 1}, ${readings}`),
    );
    expect(found[0]?.message).toMatch(/add to 3,020 lb .*expected 3,320 lb/u);
    expect(unladen(answer)).toHaveLength(2);
  });
  it('more fuel than the tank holds', async () => {
    const shell = SHELL('gawr: 9000 lb, ');
    const { found, answer } = await told(
      'format.wrong-value',
      shell,
      TICKET(`date: 2026-06-30, condition: {fuel: 1.5}, ${READ}`),
    );
    expect(found[0]?.message).toContain('Found `1.5` for `fuel`');
    // The ticket does not count; the bare chassis and the take-off still answer.
    expect(answer.basis).toBe('prediction');
    expect(unladen(answer)).toHaveLength(2);
  });
  it('a ticket dated before its stage began', async () => {
    const shell = SHELL('gawr: 9000 lb, ');
    const { found, answer } = await told(
      'weight.ticket-before-stage',
      shell,
      TICKET(`date: 2026-02-01, condition: {fuel: 1}, ${READ}`),
    );
    expect(found[0]?.message).toMatch(/T-1\/W of 2026-02-01 is of stage belly, but .* came later/u);
    expect(unladen(answer)).toHaveLength(2);
  });
});
