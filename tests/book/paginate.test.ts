import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Block, type PlannedPage, paginate } from '../../src/book/print/paginate.js';

const CAPACITY = { portrait: 200, landscape: 150 };

const solid = (heightMm: number, more: Partial<Block> = {}): Block => ({
  chapter: 'a',
  heightMm,
  gapBeforeMm: 4,
  kind: 'solid',
  sheet: 'portrait',
  ...more,
});
const tableOf = (headMm: number, rows: readonly number[], more: Partial<Block> = {}): Block => ({
  ...solid(headMm + rows.reduce((sum, one) => sum + one, 0), more),
  kind: 'table',
  headMm,
  rows: rows.map((heightMm) => ({ heightMm })),
});
const heading = (more: Partial<Block> = {}): Block => solid(8, { keepWithNext: true, ...more });

const anyBlock: fc.Arbitrary<Block> = fc
  .record({
    chapter: fc.constantFrom('a', 'b'),
    sheet: fc.constantFrom('portrait' as const, 'landscape' as const),
    gapBeforeMm: fc.double({ min: 0, max: 8, noNaN: true }),
    breakBefore: fc.boolean(),
    heading: fc.integer({ min: 0, max: 3 }),
    height: fc.double({ min: 1, max: 260, noNaN: true }),
    head: fc.double({ min: 2, max: 12, noNaN: true }),
    rows: fc.array(fc.record({ heightMm: fc.double({ min: 2, max: 60, noNaN: true }), keepWithNext: fc.boolean() }), {
      maxLength: 40,
    }),
    table: fc.boolean(),
  })
  .map((one): Block => {
    const base = { chapter: one.chapter, sheet: one.sheet, gapBeforeMm: one.gapBeforeMm, breakBefore: one.breakBefore };
    if (one.heading === 0) return { ...base, kind: 'solid', heightMm: 8, keepWithNext: true };
    if (!one.table) return { ...base, kind: 'solid', heightMm: one.height };
    // A long chain of rows that keep together is no table of ours: at most two in a row.
    const rows = one.rows.map((row, at) => ({ heightMm: row.heightMm, keepWithNext: row.keepWithNext && at % 2 === 0 }));
    const heightMm = rows.reduce((sum, row) => sum + row.heightMm, one.head);
    const side = one.rows.length % 3 === 0 ? ({ columns: 2 } as const) : {};
    return { ...base, ...side, kind: 'table', heightMm, headMm: one.head, rows };
  });

/** What a page holds, in order: a block, or rows of one. */
const placed = (pages: readonly PlannedPage[]) => pages.flatMap((page) => page.pieces);

describe('paginate', () => {
  it('opens a spread on the left, behind a page for notes where it must', () => {
    const chapters = (before: number) => [
      ...Array.from({ length: before }, () => solid(150, { breakBefore: true })),
      solid(150, { breakBefore: true, side: 'left' }),
      solid(150),
    ];
    for (const before of [1, 2, 3, 4]) {
      const pages = paginate(chapters(before), CAPACITY);
      const left = pages.findIndex((page) => page.pieces.some((piece) => piece.block === before)) + 1;
      expect(left % 2).toBe(0);
      expect(pages.filter((page) => page.pieces.length === 0).length).toBe(before % 2 === 0 ? 1 : 0);
    }
  });

  it('loses nothing, doubles nothing and keeps the order', () => {
    fc.assert(
      fc.property(fc.array(anyBlock, { maxLength: 30 }), (blocks) => {
        const seen = placed(paginate(blocks, CAPACITY)).flatMap((piece) => {
          const rows = (blocks[piece.block] as Block).rows ?? [];
          if (!piece.rows) return rows.length > 0 ? rows.map((_, row) => `${piece.block}.${row}`) : [`${piece.block}`];
          const [from, to] = piece.rows;
          return rows.slice(from, to).map((_, row) => `${piece.block}.${from + row}`);
        });
        const wanted = blocks.flatMap((block, at) =>
          block.rows?.length ? block.rows.map((_, row) => `${at}.${row}`) : [`${at}`],
        );
        expect(seen).toEqual(wanted);
      }),
    );
  });

  it('overfills no page, and puts the head on each page of a table', () => {
    fc.assert(
      fc.property(fc.array(anyBlock, { maxLength: 30 }), (blocks) => {
        for (const page of paginate(blocks, CAPACITY)) {
          const sum = page.pieces.reduce((all, piece) => all + piece.gapMm + piece.heightMm, 0);
          expect(page.usedMm).toBeCloseTo(sum, 6);
          expect(sum).toBeLessThanOrEqual(CAPACITY[page.sheet] + 1e-3);
          for (const piece of page.pieces) {
            const block = blocks[piece.block] as Block;
            expect([block.chapter, block.sheet]).toEqual([page.chapter, page.sheet]);
            if (!piece.rows || piece.shrink) continue;
            const [from, to] = piece.rows;
            const high = (first: number, last: number): number =>
              (block.rows ?? []).slice(first, last).reduce((all, row) => all + row.heightMm, 0);
            const column = Math.max(high(from, piece.split ?? to), high(piece.split ?? to, to));
            expect(piece.heightMm).toBeCloseTo(column + (block.headMm ?? 0), 6);
          }
        }
      }),
    );
  });

  it('leaves no heading at the foot of a page while what follows may stand on that page', () => {
    fc.assert(
      fc.property(fc.array(anyBlock, { maxLength: 30 }), (blocks) => {
        for (const page of paginate(blocks, CAPACITY)) {
          const last = page.pieces.at(-1);
          const block = blocks[last?.block ?? -1];
          const next = blocks[(last?.block ?? -1) + 1];
          if (!block?.keepWithNext || !next || next.breakBefore) continue;
          const together = next.chapter === block.chapter && next.sheet === block.sheet;
          // Only a long run of headings (more than half a page of them) may be torn from what they head.
          const run = page.pieces.filter((piece) => blocks[piece.block]?.keepWithNext).length * 16;
          expect(together && run < CAPACITY[page.sheet] / 2).toBe(false);
        }
      }),
    );
  });

  it('keeps a row heading with the row after it', () => {
    const rows = [60, 60, 60, 60, 60].map((heightMm, at) => ({ heightMm, keepWithNext: at === 2 }));
    const pages = paginate([{ ...tableOf(10, []), heightMm: 310, rows }], CAPACITY);
    expect(pages.map((page) => page.pieces[0]?.rows)).toEqual([
      [0, 2],
      [2, 5],
    ]);
  });

  it('takes a heading over with its table, and with two rows at least', () => {
    const pages = paginate([solid(151), heading(), tableOf(10, [12, 12, 12])], CAPACITY);
    expect(pages.map((page) => page.pieces.map((piece) => piece.block))).toEqual([[0], [1, 2]]);
  });

  it('carries no single row over where two can go', () => {
    const [first] = paginate([tableOf(10, [38, 38, 38, 38, 38, 38])], CAPACITY);
    expect(first?.pieces[0]?.rows).toEqual([0, 4]);
    const pages = paginate([tableOf(10, [38, 38, 38, 38, 38, 38].slice(1))], CAPACITY);
    expect(pages.length).toBe(1);
    const five = paginate([tableOf(10, [47, 47, 47, 47, 47])], CAPACITY);
    expect(five.map((page) => page.pieces[0]?.rows)).toEqual([
      [0, 3],
      [3, 5],
    ]);
  });

  it('makes smaller what is taller than a page, beside its own heading', () => {
    const [page, ...rest] = paginate([heading(), solid(400)], CAPACITY);
    expect(rest).toEqual([]);
    expect(page?.usedMm).toBeCloseTo(200, 9);
    expect(page?.pieces[1]?.shrink).toBeCloseTo((200 - 12) / 400, 9);
  });

  it('fills a table of two columns down the left and then down the right, and evens out its last page', () => {
    // 190 mm beside the head: 38 lines of 5 mm a column, 76 a page; 24 remain.
    const pages = paginate([tableOf(10, Array(100).fill(5), { columns: 2 })], CAPACITY);
    expect(pages.map(({ pieces: [piece], usedMm }) => [piece?.rows, piece?.split, usedMm])).toEqual([
      [[0, 76], 38, 200],
      [[76, 100], 88, 70],
    ]);
  });

  it('begins a page for each chapter and each turn of the sheet', () => {
    const pages = paginate([solid(10), solid(10, { sheet: 'landscape' }), solid(10), solid(10, { chapter: 'b' })], CAPACITY);
    expect(pages.map((page) => `${page.chapter} ${page.sheet}`)).toEqual([
      'a portrait',
      'a landscape',
      'a portrait',
      'b portrait',
    ]);
  });

  it('drops the gap at the top of a page', () => {
    const pages = paginate([solid(100), solid(96), solid(50)], CAPACITY);
    expect(pages.map((page) => page.pieces.map((piece) => piece.gapMm))).toEqual([[0, 4], [0]]);
  });

  it('keeps a small table whole where it would leave a few rows to the next page', () => {
    const pages = paginate([solid(170), tableOf(5, Array(8).fill(5), { gapBeforeMm: 4 })], CAPACITY);
    expect(pages.map((page) => page.pieces.map(({ block, rows }) => [block, rows]))).toEqual([
      [[0, undefined]],
      [[1, undefined]],
    ]);
  });
});
