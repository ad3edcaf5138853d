import { describe, expect, it } from 'vitest';
import { dayOf, daysBetween } from '../../src/quantity/day.js';

describe('a day', () => {
  it('is that of a date with a time, by its own calendar', () => {
    expect(dayOf('2026-02-11T23:59:00-06:00')).toBe('2026-02-11');
    expect(dayOf('2026-02-11')).toBe('2026-02-11');
    expect(dayOf(undefined)).toBeUndefined();
  });

  it('is counted over months, leap years and the change of clocks', () => {
    // 2024 is a leap year (Gregorian calendar)
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
    expect(daysBetween('2026-02-28', '2026-03-01')).toBe(1);
    expect(daysBetween('2026-03-30T01:00', '2026-03-28')).toBe(-2);
    expect(daysBetween('someday', '2026-03-28')).toBeNaN();
  });
});
