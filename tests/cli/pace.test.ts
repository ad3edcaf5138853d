import { expect, it } from 'vitest';
import { withTimeLeft } from '../../src/cli/pace.js';

function counting(total: number, eachMs: number): readonly string[] {
  let clock = 5000;
  const timed = withTimeLeft(() => clock);
  return Array.from({ length: total }, (_, i) => {
    const said = timed(`Reading picture ${i + 1} of ${total}`);
    clock += eachMs;
    return said;
  });
}

it('says how long the rest takes at the pace so far, once that can be told', () => {
  const said = counting(100, 500);
  // Half a second each: after four, two seconds have gone and 95 are left, 47.5 s.
  expect(said[0]).toBe('Reading picture 1 of 100');
  expect(said[3]).toBe('Reading picture 4 of 100');
  expect(said[4]).toBe('Reading picture 5 of 100, about 50 s left');
  expect(said[90]).toBe('Reading picture 91 of 100, about 5 s left');
  expect(said.at(-1)).toBe('Reading picture 100 of 100');
  expect(counting(1000, 1000)[10]).toBe('Reading picture 11 of 1000, about 17 min left');
});
it('says nothing of what is soon over, or of what does not count', () => {
  expect(counting(20, 50).some((one) => one.includes('left'))).toBe(false);
  expect(withTimeLeft(Date.now)('Taking the fingerprint')).toBe('Taking the fingerprint');
});
it('begins anew with each count', () => {
  let clock = 0;
  const timed = withTimeLeft(() => clock);
  timed('Commit 1 of 9: x');
  clock = 60_000;
  expect(timed('Reading picture 1 of 9')).toBe('Reading picture 1 of 9');
  clock = 70_000;
  expect(timed('Reading picture 2 of 9')).toBe('Reading picture 2 of 9, about 70 s left');
});
