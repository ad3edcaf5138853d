import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeWord, placeWords } from '../../src/query/place-words.js';

const bounds = { min: [0, -1250, -100], max: [9000, 1250, 2500] } as const;
const words = (y: number) => placeWords({ length: (mm) => `${mm} mm` }, [1000, y, 100]);

describe('words for a place', () => {
  it('are found by the side that they print, whatever the distance', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1250, max: 1250 }), (y) => {
        const printed = words(y);
        for (const side of ['left', 'right'])
          expect(placeWord(side)?.([1000, y, 100], bounds), printed).toBe(printed.includes(` ${side}`));
        if (printed.includes('on the center line')) expect(placeWord('centre')?.([1000, y, 100], bounds)).toBe(true);
      }),
    );
  });

  it('say ahead, aft, below and above from the datum', () => {
    expect(placeWords({ length: (mm) => `${mm} mm` }, [-300, 51, -20])).toBe('300 mm ahead, 51 mm right, 20 mm below\u00a0rail');
    expect(words(0)).toBe('1000 mm aft, on the center line, 100 mm above\u00a0rail');
  });
});
