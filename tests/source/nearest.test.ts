import { expect, test } from 'vitest';
import { nearest, slipsBetween } from '../../src/source/nearest.js';

test('Damerau-Levenshtein distance', () => {
  // kitten → sitting is the textbook case (Wagner and Fischer 1974 and every text since); the swap is Damerau's 1964 fourth slip.
  expect(slipsBetween('kitten', 'sitting')).toBe(3);
  expect(slipsBetween('gvrw', 'gvwr')).toBe(1);
  expect(slipsBetween('', 'abc')).toBe(3);
  expect(slipsBetween('abc', 'abc')).toBe(0);
  // Optimal string alignment: no letter is edited twice, so this is 3 and not 2.
  expect(slipsBetween('ca', 'abc')).toBe(3);
});

test('close names only, closest first', () => {
  expect(nearest('cut_lenght', ['cut_length', 'length', 'heat'])).toEqual(['cut_length']);
  expect(nearest('tires', ['tyres', 'track'])).toEqual(['tyres']);
  expect(nearest('Corner-Radius', ['corner_radius'])).toEqual(['corner_radius']);
  expect(nearest('colour', ['count', 'note', 'photos'])).toEqual([]);
  expect(nearest('x', ['y', 'z'])).toEqual([]);
  expect(nearest('CB-05', ['CB-04', 'CB-50', 'SF-L'])).toEqual(['CB-04', 'CB-50']);
});
