import { describe, expect, it } from 'vitest';
import { smallLength } from '../../src/quantity/format.js';

describe('small lengths', () => {
  it.each([
    [2.38125, '3/32 in'],
    [1.5875, '1/16 in'],
    [0, '0 in'],
    [0.1, '0 in'],
    [0.396875, '1/64 in'],
    [25.4, '1 in'],
    [31.75, '1-1/4 in'],
    [-3.175, '−1/8 in'],
    [12.7, '1/2 in'],
  ])('%d mm is %s', (mm, shown) => expect(smallLength(mm, 'us')).toBe(shown));

  it('shows tenths of a millimetre, and feet where it is not small', () => {
    expect(smallLength(2.38125, 'metric')).toBe('2.4 mm');
    expect(smallLength(1905, 'both')).toBe('6 ft 3 in (1,905 mm)');
  });
});
