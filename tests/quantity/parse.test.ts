import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { feetInches, number } from '../../src/quantity/format.js';
import { parseAnyQuantity, parseNumber, parseQuantity } from '../../src/quantity/parse.js';
import type { Dimension } from '../../src/quantity/units.js';

const IN = 25.4;

describe('as the format writes them', () => {
  // Inch, pound and gallon by FLU-01 to FLU-03.
  test.each([
    ['3 in', 'length', 3 * IN],
    ['1/2 in', 'length', IN / 2],
    ['5-1/4 in', 'length', 5.25 * IN],
    ['5 1/4 in', 'length', 5.25 * IN],
    ['6 ft 3-1/2 in', 'length', 75.5 * IN],
    ['6\' 3-1/2"', 'length', 75.5 * IN],
    ['-6 ft 3-1/2 in', 'length', -75.5 * IN],
    ['-1/4 in', 'length', -IN / 4],
    ['0.090 in', 'length', 0.09 * IN],
    ['1905 mm', 'length', 1905],
    ['1,905 mm', 'length', 1905],
    ['1.9 m', 'length', 1900],
    ['14,600 lb', 'mass', 14600 * 0.45359237],
    ['6622 kg', 'mass', 6622],
    ['110 psi', 'pressure', 110 * 6894.757293168],
    ['60 gal', 'volume', 60 * 3.785411784e-3],
    ['227 L', 'volume', 0.227],
    ['12.8 V', 'voltage', 12.8],
    ['15 A', 'current', 15],
    ['25 W', 'power', 25],
    ['12 %', 'fraction', 0.12],
    ['3/4', 'fraction', 0.75],
    [1, 'fraction', 1],
    [0, 'length', 0],
    ['0', 'mass', 0],
    ['90 deg', 'angle', 90],
    [45, 'angle', 45],
    ['6 mm2', 'conductorArea', 6],
    ['6 mm²', 'area', 6],
  ] as const)('%s', (typed, dimension, expected) => {
    const read = parseQuantity(typed, dimension);
    expect(read.ok && read.value).toBeCloseTo(expected, 6);
  });
});

test.each([
  [5.25, 'length', 'unit missing'],
  ['5.25', 'length', 'unit missing'],
  ['5-1/4', 'length', 'unit missing'],
  [0, 'temperature', 'unit missing'],
  ['5 kg', 'length', 'wrong unit'],
  ['5 inches', 'length', 'unknown unit'],
  ['5 LB', 'mass', 'unknown unit'],
  ['five in', 'length', 'not a quantity'],
  ['1/0 in', 'length', 'not a quantity'],
  ['14,60 lb', 'mass', 'unknown unit'],
  ['', 'length', 'not a quantity'],
  [null, 'length', 'not a quantity'],
  [['5 in'], 'length', 'not a quantity'],
  [Number.NaN, 'length', 'not a quantity'],
  ['1e999 in', 'length', 'not a quantity'],
] as const)('%s is refused as %s: %s', (typed, dimension, reason) => {
  const read = parseQuantity(typed, dimension as Dimension);
  expect(read.ok ? 'read' : read.reason).toBe(reason);
});

test('the message says what to write', () => {
  const read = parseQuantity('5.25', 'length');
  expect(!read.ok && read.message).toBe('Found the bare number `5.25`, expected a quantity with a unit, as `5.25 in`');
  const spoken = parseQuantity('5 inches', 'length');
  expect(!spoken.ok && spoken.message).toBe('Found the unit `inches` in `5 inches`, expected `5 in`');
});

test('bare numbers take the unit of the file', () => {
  expect(parseQuantity(5.25, 'length', { length: 'in' })).toEqual({ ok: true, value: 5.25 * IN });
  expect(parseQuantity('5-1/4', 'length', { length: 'in' })).toEqual({ ok: true, value: 5.25 * IN });
  expect(parseQuantity(70, 'temperature', { temperature: 'F' })).toMatchObject({ ok: true });
  expect(parseQuantity(5, 'mass', { length: 'in' }).ok).toBe(false);
  // A typed unit always wins.
  expect(parseQuantity('5 mm', 'length', { length: 'in' })).toEqual({ ok: true, value: 5 });
});

test('a quantity of any dimension says which it is', () => {
  expect(parseAnyQuantity('0.2 %')).toEqual({ value: 0.002, dimension: 'fraction' });
  expect(parseAnyQuantity('20 lb')).toEqual({ value: 20 * 0.45359237, dimension: 'mass' });
  expect(parseAnyQuantity('20 parsecs')).toBeUndefined();
});

describe('round trips', () => {
  test('whole sixteenths printed as feet and inches are read back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 20_000 }), (sixteenths) => {
        const mm = (sixteenths / 16) * IN;
        const read = parseQuantity(feetInches(mm).replace('−', '-'), 'length');
        expect(read.ok && read.value).toBeCloseTo(mm, 8);
      }),
    );
  });

  test('grouped numbers are read back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), (whole) => {
        expect(parseNumber(number(whole).replace('−', '-'))).toBe(whole);
      }),
    );
  });

  test('any decimal number with a unit is that number times its factor', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }), (typed) => {
        const read = parseQuantity(`${typed} mm`, 'length');
        // Written out, minus zero is `0`.
        expect(read.ok && read.value).toBe(typed + 0);
      }),
    );
  });

  test('no text makes it throw', () => {
    fc.assert(fc.property(fc.anything(), (typed) => void parseQuantity(typed, 'length')));
    fc.assert(fc.property(fc.string(), (typed) => void parseAnyQuantity(typed)));
  });
});
