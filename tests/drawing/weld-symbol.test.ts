import { describe, expect, it } from 'vitest';
import type { Mark, Point, TextMark } from '../../src/drawing/scene.js';
import { basicSymbol, SYMBOL_MM } from '../../src/drawing/weld-symbol/elements.js';
import { letterFor, symbolKinds } from '../../src/drawing/weld-symbol/kinds.js';
import { processNumber } from '../../src/drawing/weld-symbol/process-number.js';
import { DASHED_MM, symbolSizeMm, towards, weldSymbol } from '../../src/drawing/weld-symbol/symbol.js';
import { type SymbolWeld, sizeWords, symbolInWords, tailWords } from '../../src/drawing/weld-symbol/words.js';
import { WELD_TYPES, type Weld } from '../../src/records/index.js';
import { record } from '../support/build.js';
import { loadOne } from '../support/store.js';

const AWS = { standard: 'aws', units: 'us' } as const;
const ISO = { standard: 'iso', units: 'metric' } as const;
const JOINT: Point = [20, 0];
const TIP: Point = [14, 8];

const fillet: SymbolWeld = {
  type: 'fillet',
  sizeMm: 6,
  lengthMm: 101.6,
  sides: 'arrow',
  allRound: false,
  process: 'GMAW',
  procedure: 'WPS-11',
  filler: 'ER5356',
};
const draw = (weld: SymbolWeld, style: typeof AWS | typeof ISO, runs: 'right' | 'left' = 'right'): readonly Mark[] =>
  weldSymbol(weld, style, { joint: JOINT, runs, tips: [TIP] });

const texts = (marks: readonly Mark[]): readonly TextMark[] => marks.filter((mark) => mark.kind === 'text');
const lines = (marks: readonly Mark[]): readonly (readonly Point[])[] =>
  marks.flatMap((mark) => (mark.kind === 'shape' && !mark.closed && mark.pen === 'weld-symbol' ? mark.rings : []));
const dashed = (marks: readonly Mark[]) => marks.filter((mark) => mark.kind === 'shape' && mark.pen === 'weld-symbol-dashed');
/** Corners of the fillet's triangle: the one open line of three points that turns. */
const triangles = (marks: readonly Mark[]): readonly (readonly Point[])[] => lines(marks).filter((ring) => ring.length === 3);

describe('AWS A2.4', () => {
  // WLD-01: symbol below the reference line is arrow side, above other side, both on both (AWS A2.4:2020).
  it('puts the arrow side below the reference line, the other side above, both on both', () => {
    const heights = (sides: Weld['sides']): readonly number[] =>
      triangles(draw({ ...fillet, sides }, AWS)).map(
        (ring) => Math.max(...ring.map(([, y]) => y)) + Math.min(...ring.map(([, y]) => y)),
      );
    expect(heights('arrow')).toEqual([SYMBOL_MM]);
    expect(heights('other')).toEqual([-SYMBOL_MM]);
    expect(heights('both')).toEqual([SYMBOL_MM, -SYMBOL_MM]);
  });

  // WLD-02: the reference line is always horizontal (AWS A2.4:2020 4.5).
  it('keeps the reference line level, and starts it at the arrow', () => {
    for (const runs of ['right', 'left'] as const) {
      const reference = lines(draw(fillet, AWS, runs)).find(
        ([a, b]) => a?.[0] === JOINT[0] && a[1] === JOINT[1] && b?.[1] === JOINT[1],
      );
      expect(reference).toBeDefined();
      expect(Math.sign((reference?.[1]?.[0] ?? 0) - JOINT[0])).toBe(runs === 'right' ? 1 : -1);
    }
  });

  // WLD-03: size left of the weld symbol, length right of it, read from left to right whichever way the line runs.
  it.each(['right', 'left'] as const)('writes the size left of the symbol and the length right of it, line to the %s', (runs) => {
    const marks = draw({ ...fillet, sizeMm: 4.7625 }, AWS, runs);
    const [size, length] = texts(marks);
    const symbol = triangles(marks)[0] as readonly Point[];
    expect([size?.text, length?.text]).toEqual(['3/16', '4']);
    expect(size?.at[0]).toBeLessThan(Math.min(...symbol.map(([x]) => x)));
    expect(length?.at[0]).toBeGreaterThan(Math.max(...symbol.map(([x]) => x)));
  });

  // The upright leg of a fillet stands left whichever side it is on: AWS A2.4, from memory.
  it('stands the upright leg of a fillet to the left', () => {
    for (const ring of triangles(draw({ ...fillet, sides: 'both' }, AWS))) {
      const left = Math.min(...ring.map(([x]) => x));
      expect(ring.filter(([x]) => x === left)).toHaveLength(2);
    }
  });

  // WLD-04: circle all around, flag field weld, tail process and procedure.
  it('rings the corner for all round, flags it for the site, and writes process and procedure in the tail', () => {
    const ring = (weld: SymbolWeld) => draw(weld, AWS).find((mark) => mark.kind === 'circle' && mark.pen === 'weld-ring');
    expect(ring(fillet)).toBeUndefined();
    expect(ring({ ...fillet, allRound: true })).toMatchObject({ center: JOINT });
    const flag = (weld: SymbolWeld) => draw(weld, AWS).find((mark) => mark.kind === 'shape' && mark.pen === 'mark-filled');
    expect(flag(fillet)).toBeUndefined();
    const flown = flag({ ...fillet, site: true });
    expect(flown?.kind === 'shape' && flown.rings[0]?.every(([, y]) => y < JOINT[1])).toBe(true);
    expect(tailWords(fillet, AWS, 1)).toBe('GMAW / WPS-11');
    const end = Math.max(
      ...lines(draw(fillet, AWS))
        .flat()
        .map(([x]) => x),
    );
    expect(texts(draw(fillet, AWS)).at(-1)?.at[0]).toBeGreaterThan(end);
  });

  // WLD-06: the groove's own size in parentheses; a bevel's depth plain (the latter from memory).
  it('sets a size without preparation in parentheses', () => {
    expect(sizeWords({ ...fillet, type: 'square groove', sizeMm: 3.175 }, AWS)).toBe('(1/8)');
    expect(sizeWords({ ...fillet, type: 'V groove', sizeMm: 3.175 }, AWS)).toBe('1/8');
    expect(sizeWords({ ...fillet, sizeMm: 6 }, { standard: 'aws', units: 'metric' })).toBe('6');
  });

  it('never draws the dashed line', () => {
    for (const sides of ['arrow', 'other', 'both'] as const) expect(dashed(draw({ ...fillet, sides }, AWS))).toHaveLength(0);
  });
});

describe('ISO 2553, system A', () => {
  // WLD-07: two lines; a symbol on the solid one is arrow side, on the dashed one other side.
  it('stands the arrow side on the solid line and the other side on the dashed line', () => {
    const arrow = draw(fillet, ISO);
    const other = draw({ ...fillet, sides: 'other' }, ISO);
    const base = (marks: readonly Mark[]): readonly number[] =>
      (triangles(marks)[0] as readonly Point[]).map(([, y]) => y - JOINT[1]).filter((y) => Math.abs(y) < SYMBOL_MM / 2);
    expect(base(arrow)).toEqual([0, 0]);
    for (const y of base(other)) expect(y).toBeCloseTo(DASHED_MM, 9);
    for (const marks of [arrow, other]) {
      const [line] = dashed(marks);
      expect(line?.kind === 'shape' && line.rings[0]?.map(([, y]) => y - JOINT[1])).toEqual([DASHED_MM, DASHED_MM]);
    }
  });

  // The dashed line is left out for welds alike on both sides: ISO 2553, from memory.
  it('leaves the dashed line out where both sides are alike', () => {
    const marks = draw({ ...fillet, sides: 'both' }, ISO);
    expect(dashed(marks)).toHaveLength(0);
    expect(triangles(marks)).toHaveLength(2);
  });

  // WLD-08: z leg (ISO 2553, from memory). WLD-23: 131 MIG, 135 MAG, 141 TIG, 111, 121, 136, 15. WLD-24: 21, 43, 52 from memory, 311.
  it('writes the leg as z in mm and the process by its number of ISO 4063', () => {
    expect(sizeWords(fillet, ISO)).toBe('z6');
    expect(sizeWords({ ...fillet, sizeMm: 4.7625 }, { standard: 'iso', units: 'us' })).toBe('z4.8');
    expect(tailWords(fillet, ISO, 3)).toBe('131 / WPS-11 / 3 joints');
    const numbers = {
      GTAW: '141',
      SMAW: '111',
      SAW: '121',
      FCAW: '136',
      PAW: '15',
      RSW: '21',
      FSW: '43',
      LBW: '52',
      OAW: '311',
      TIG: '141',
      MAG: '135',
    };
    for (const [typed, number] of Object.entries(numbers)) expect(processNumber(typed)).toBe(number);
    expect(processNumber('135')).toBe('135');
    expect(processNumber('GMAW', 'ER70S-6')).toBe('135');
    expect(processNumber('GMAW', 'ER4043')).toBe('131');
    expect(processNumber('house braze')).toBe('HOUSE BRAZE');
  });
});

describe('every weld of the format', () => {
  it.each(WELD_TYPES)('draws a %s on its side of the line, within the size that it claims', (type) => {
    for (const style of [AWS, ISO]) {
      for (const sides of ['arrow', 'other', 'both'] as const) {
        const weld = { ...fillet, type, sides, allRound: true };
        const size = symbolSizeMm(weld, style);
        const marks = weldSymbol(weld, style, { joint: JOINT, runs: 'right', tips: [] });
        expect(lines(marks).length).toBeGreaterThan(0);
        for (const [x, y] of lines(marks).flat()) {
          expect(x).toBeLessThanOrEqual(JOINT[0] + size.widthMm);
          expect(x).toBeGreaterThanOrEqual(JOINT[0] - 1);
          expect(Math.abs(y - JOINT[1])).toBeLessThanOrEqual(size.heightMm / 2 + DASHED_MM);
        }
      }
    }
  });

  it.each(WELD_TYPES.filter((type) => type !== 'seam'))('draws a %s as a mirror image on the other side', (type) => {
    const points = (side: 1 | -1) =>
      basicSymbol(type, [0, 0], side).flatMap((mark) => (mark.kind === 'shape' ? mark.rings.flat() : []));
    expect(points(-1)).toEqual(points(1).map(([x, y]) => [x, -y + 0]));
    expect(Math.max(...points(1).map(([, y]) => y))).toBeGreaterThan(1.5);
  });

  // A resistance seam has no side: its circle lies across the line (AWS A2.4, ISO 2553, from memory).
  it('lays a resistance seam across its line, and stands a fused one on its side', () => {
    const middle = (process: string) => {
      const marks = draw({ ...fillet, type: 'seam', process, allRound: false }, AWS);
      const found = marks.find((mark) => mark.kind === 'circle');
      return found?.kind === 'circle' ? found.center[1] - JOINT[1] : undefined;
    };
    expect(middle('22')).toBe(0);
    expect(middle('GMAW')).toBeCloseTo(SYMBOL_MM / 2, 9);
  });

  it('says the same in words', () => {
    expect(symbolInWords({ ...fillet, sizeMm: 4.7625, allRound: true }, AWS)).toBe('fillet, leg 3/16 in, all round, 4 in long');
    expect(symbolInWords({ ...fillet, type: 'plug', sizeMm: 10, sides: 'other', site: true }, ISO)).toBe(
      'plug, diameter 10 mm, other side, welded on site',
    );
  });
});

describe('places and kinds', () => {
  it('runs its line away from the weld, and refuses a place from where the arrow would cross it', () => {
    const box = { x0: 20, y0: 27, x1: 60, y1: 33 };
    expect(towards(box, [14, 38])).toEqual({ joint: [20, 30], runs: 'right' });
    expect(towards(box, [66, 38])).toEqual({ joint: [60, 30], runs: 'left' });
    expect(towards(box, [40, 40])).toBeUndefined();
    expect(towards(box, [14, 30.5])).toBeUndefined();
  });

  it('gives like welds one letter and unlike ones another', () => {
    const weld = (id: string, more: Partial<Weld> = {}): Weld => ({
      ...record(id),
      ...fillet,
      joins: [['A', 'B']],
      inspections: [],
      ...more,
    });
    const kinds = symbolKinds([
      weld('W-1'),
      weld('W-2', { sizeMm: 6.0001 }),
      weld('W-3', { sides: 'both' }),
      weld('W-4', { welder: 'K7' }),
    ]);
    expect(kinds.map(({ key, welds }) => [key, welds.map(({ id }) => id)])).toEqual([
      ['A', ['W-1', 'W-2', 'W-4']],
      ['B', ['W-3']],
    ]);
    expect([0, 25, 26, 27, 701, 702].map(letterFor)).toEqual(['A', 'Z', 'AA', 'AB', 'ZZ', 'AAA']);
  });
});

describe('the shop chooses', () => {
  const shopOf = (lines: string) => loadOne({ 'shop.yaml': `shop: {name: Test shop}\n${lines}` }).model.shop.weldSymbols;

  it('AWS A2.4 where it works in inches alone, ISO 2553 elsewhere, unless it says which', () => {
    expect(shopOf('units: us\n')).toBe('aws');
    expect(shopOf('units: metric\n')).toBe('iso');
    expect(shopOf('')).toBe('iso');
    expect(shopOf('units: us\nweld_symbols: iso\n')).toBe('iso');
    expect(shopOf('units: metric\nweld_symbols: aws\n')).toBe('aws');
  });

  it('and a weld away from the shop is recorded as such', () => {
    const weld = 'joins: [A, B], type: fillet, size: 1/4 in, length: 2 in, process: GMAW';
    const { model, findings } = loadOne({ 'shells/T-1/welds.yaml': `- {id: W-1, ${weld}, site: yes}\n- {id: W-2, ${weld}}\n` });
    expect(model.shell.welds.map(({ site }) => site ?? false)).toEqual([true, false]);
    expect(findings.filter(({ rule }) => rule.startsWith('format.unknown-key'))).toEqual([]);
  });
});
