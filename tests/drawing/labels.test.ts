import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Ink } from '../../src/drawing/ink.js';
import { grouped } from '../../src/drawing/label-groups.js';
import { type LabelWish, placeLabels } from '../../src/drawing/labels.js';
import { clipSegment } from '../../src/drawing/outline.js';
import { isWithinRect, overlaps, type Rect } from '../../src/drawing/scene.js';

const ROOM: Rect = { x0: 1, y0: 1, x1: 176, y1: 106 };
/** A landscape sheet of a book. */
const SHEET: Rect = { x0: 1, y0: 1, x1: 246, y1: 150 };
const NO_INK = new Ink(177, 107, []);

const wish = (text: string, x: number, y: number, more: Partial<LabelWish> = {}): LabelWish => ({
  text,
  anchor: [x, y],
  style: 'id',
  priority: 1,
  ...more,
});

const wishes = fc
  .array(
    fc.record({
      x: fc.double({ min: 0, max: 151, noNaN: true }),
      y: fc.double({ min: 0, max: 91, noNaN: true }),
      text: fc.string({ minLength: 1, maxLength: 24 }),
      priority: fc.integer({ min: 0, max: 3 }),
      centred: fc.boolean(),
      repeat: fc.boolean(),
    }),
    { maxLength: 70 },
  )
  .map((list) => list.map(({ text, x, y, ...more }) => wish(text, x, y, more)));

describe('placing labels', () => {
  it('never lets two overlap, leave the room, or lie on what is taken', () => {
    const taken: Rect[] = [{ x0: 40, y0: 30, x1: 70, y1: 36 }];
    fc.assert(
      fc.property(wishes, (list) => {
        const { placed } = placeLabels(list, ROOM, taken, NO_INK);
        placed.forEach(({ box }, index) => {
          expect(isWithinRect(box, ROOM)).toBe(true);
          for (const other of [...placed.slice(index + 1).map((one) => one.box), ...taken])
            expect(overlaps(box, other)).toBe(false);
        });
      }),
      { numRuns: 40 },
    );
  });

  it('keeps leaders off the labels placed before them', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { placed } = placeLabels(list, ROOM, [], NO_INK);
        placed.forEach(({ leader }, index) => {
          for (const { box } of placed.slice(0, index))
            if (leader) expect(clipSegment(leader[0], leader[1], box)).toBeUndefined();
        });
      }),
      { numRuns: 25 },
    );
  });

  it('accounts for every wish: placed, or given back', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        const { placed, leftOut } = placeLabels(list, ROOM, [], NO_INK);
        const first = list.filter((one) => !one.repeat);
        const texts = [...placed.map((one) => one.wish), ...leftOut]
          .filter((one) => !one.repeat)
          .flatMap((one) => one.lines ?? [one]);
        expect(texts.map((one) => one.text).sort()).toEqual(first.map((one) => one.text).sort());
      }),
      { numRuns: 25 },
    );
  });

  it('gives the same places for the same wishes', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        expect(placeLabels(list, ROOM, [], NO_INK)).toEqual(placeLabels(list, ROOM, [], NO_INK));
      }),
      { numRuns: 15 },
    );
  });

  it('drops the least important where there is room for one', () => {
    const small: Rect = { x0: 0, y0: 0, x1: 12, y1: 4 };
    const { placed, leftOut } = placeLabels(
      [wish('AAAA', 6, 1, { priority: 1 }), wish('BBBB', 6, 1, { priority: 2 })],
      small,
      [],
      NO_INK,
    );
    expect(placed.map((one) => one.wish.text)).toEqual(['BBBB']);
    expect(leftOut.map((one) => one.text)).toEqual(['AAAA']);
  });

  it.each([2, 3.5, 9.4])('puts sixty labels %d mm apart somewhere, in lists where they are shut in', (apart) => {
    const crowd = Array.from({ length: 60 }, (_, k) => wish(`DC-${k}/S1`, 90 + (k % 8) * apart, 60 + Math.floor(k / 8) * apart));
    const { placed, leftOut } = placeLabels(crowd, SHEET, [], NO_INK);
    expect(leftOut).toEqual([]);
    expect(placed.some((one) => one.wish.lines !== undefined)).toBe(apart < 9);
  });

  it('sets numbers that share a place beside each other, not over each other in one disc', () => {
    const numbers = [wish('12', 10, 10, { disc: true, style: 'numeral' }), wish('15', 11, 10, { disc: true, style: 'numeral' })];
    const [one, ...more] = grouped(numbers, [numbers[1] as LabelWish]);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ text: '12, 15', style: 'numeral' });
    expect([one?.lines, one?.disc]).toEqual([undefined, undefined]);
  });
});
