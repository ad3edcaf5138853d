import { describe, expect, test } from 'vitest';
import { lookUp, parseQuantity } from '../../src/quantity/parse.js';
import { type Dimension, EXAMPLES, SPOKEN, UNITS } from '../../src/quantity/units.js';

const value = (typed: unknown, dimension: Dimension): number => {
  const read = parseQuantity(typed, dimension);
  if (!read.ok) throw new Error(read.message);
  return read.value;
};

describe('exact definitions', () => {
  test.each([
    // FLU-01: NIST SP 811 B.8; NIST Handbook 44 Appendix C
    ['1 lb', 'mass', 0.45359237],
    // FLU-02: the same
    ['1 in', 'length', 25.4],
    ['1 ft', 'length', 304.8],
    ['1 mi', 'length', 1609344],
    // FLU-03: US gallon, 231 in³
    ['1 gal', 'volume', 3.785411784e-3],
    // FLU-04: imperial gallon
    ['1 imp gal', 'volume', 4.54609e-3],
    // FLU-05: pound-force from standard gravity
    ['1 lbf', 'force', 4.4482216152605],
    // FLU-06: pound-force over square inch
    ['1 psi', 'pressure', 6894.757293168],
    // FLU-07
    ['1 oz', 'mass', 0.028349523125],
    // FLU-08: in³ is 16.387064 cm³, ft³ 28.316846592 L
    ['1 in3', 'volume', 16.387064e-6],
    ['1 ft3', 'volume', 28.316846592e-3],
    // FLU-10: lbf·ft and lbf·in
    ['1 ft.lb', 'torque', 1.3558179483],
    ['1 in.lb', 'torque', 0.112984829],
    // NIST SP 811 B.8: conventional inch of water 249.0889 Pa
    ['1 inH2O', 'pressure', 249.0889],
    // MAT-27: 0.0975 lb/in³ is 2698.8 kg/m³
    ['0.0975 lb/in3', 'density', 2698.8],
    // FLU-13: water of 1 kg/L is 8.34540 lb per US gallon
    ['8.34540 lb/gal', 'density', 1000],
    // FLU-11: 1 kg/m is 0.6719689751 lb/ft
    ['0.6719689751 lb/ft', 'lineMass', 1],
    // SI Brochure, 9th edition: minute, hour, day, litre, tonne
    ['1 min', 'time', 60],
    ['1 h', 'time', 3600],
    ['1 d', 'time', 86400],
    ['1 L', 'volume', 1e-3],
    ['1 t', 'mass', 1000],
    ['1 bar', 'pressure', 1e5],
  ] as const)('%s', (typed, dimension, expected) => {
    const digits = Math.max(6, String(expected).replace(/[^\d]/gu, '').replace(/^0+/u, '').length);
    const tolerance = ['lb/in3', 'lb/gal', 'inH2O'].some((unit) => typed.endsWith(unit)) ? 2e-5 : 10 ** -Math.min(digits - 1, 12);
    expect(Math.abs(value(typed, dimension) / expected - 1)).toBeLessThan(tolerance);
  });

  test('temperatures', () => {
    // FLU-09: NIST SP 811 B.9, K = (°F + 459.67)/1.8
    expect(value('70 F', 'temperature')).toBeCloseTo((70 + 459.67) / 1.8, 10);
    expect(value('32 F', 'temperature')).toBeCloseTo(273.15, 10);
    expect(value('-40 °F', 'temperature')).toBeCloseTo(value('-40 C', 'temperature'), 10);
    expect(value('21 C', 'temperature')).toBeCloseTo(294.15, 10);
  });
});

test('every example of a dimension is read in that dimension', () => {
  for (const [dimension, example] of Object.entries(EXAMPLES))
    expect(value(example, dimension as Dimension), example).toBeGreaterThan(0);
});

test('every spoken name points to a unit that is read, and is itself none', () => {
  for (const [spoken, unit] of Object.entries(SPOKEN)) {
    expect(lookUp(unit), spoken).toBeDefined();
    expect(UNITS[spoken], spoken).toBeUndefined();
  }
});
