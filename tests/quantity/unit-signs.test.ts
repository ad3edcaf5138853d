import { describe, expect, it } from 'vitest';
import { unitSigns } from '../../src/quantity/format.js';

/** Symbols: SI Brochure, 9th edition, Tables 4 and 7 (Ω; products by a half-high dot or a space: 5.4.1). */
describe('units as print has them', () => {
  it.each([
    ['1 Mohm', '1 MΩ'],
    ['0.8 ohm', '0.8 Ω'],
    ['47 kohm', '47 kΩ'],
    ['150 ft.lb', '150 ft·lb'],
    ['22 in.lbf', '22 in·lbf'],
    ['2.5 N.m', '2.5 N·m'],
    ['11.2 in w.c.', '11.2 in w.c.'],
    ['ohm’s shop', 'ohm’s shop'],
  ])('%s is %s', (typed, printed) => expect(unitSigns(typed)).toBe(printed));
});
