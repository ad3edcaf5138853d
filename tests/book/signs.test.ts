/** Resistance is read in words where the typeface has no sign for it: a code in brackets is nothing to hold a meter's reading against. */
import { describe, expect, it } from 'vitest';
import { withGlyphs } from '../../src/book/signs.js';

describe('the sign of resistance', () => {
  it('is written out, as Greek letter or as a sign of its own', () => {
    expect(withGlyphs('<td>42 M\u03a9, 0.03 \u2126</td>')).toEqual({ text: '<td>42 Mohm, 0.03 ohm</td>', lacking: [] });
  });

  it('is a letter in a Greek word', () => {
    expect(withGlyphs('\u03a9\u03bc\u03ad\u03b3\u03b1').lacking).toContain('\u03a9');
  });
});
