import { describe, expect, it } from 'vitest';
import { fieldText } from '../../src/history/words.js';

describe('what became of a field, in words', () => {
  it.each([
    ['a figure', { path: ['size'], from: '3/16 in', to: '1/4 in' }, 'size 3/16 in → 1/4 in'],
    ['a list that came', { path: ['photos'], from: undefined, to: ['P-1', 'P-2'] }, 'photos P-1, P-2 added'],
    [
      'a list of looks that came',
      { path: ['checks'], from: undefined, to: [{ date: '2026-10-14', after: '640 mi', by: 'F6' }] },
      'checks (2026-10-14, 640 mi, F6) added',
    ],
    ['a place that went', { path: ['at'], from: ['1 in', '-2 in', '0 in'], to: undefined }, 'at [1 in, -2 in, 0 in] taken out'],
    ['one more of a list', { path: ['photos'], from: ['P-1'], to: ['P-1', 'P-2'] }, 'photos P-2 added'],
    [
      'an item of a list',
      { path: ['inspections', 1, 'result'], from: 'reject', to: 'accept' },
      'inspection 2 result reject → accept',
    ],
  ])('%s', (_what, change, text) => {
    expect(fieldText(change)).toBe(text);
  });
});
