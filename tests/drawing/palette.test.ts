import { describe, expect, it } from 'vitest';
import { MEDIUM_STYLES } from '../../src/drawing/index.js';
import { LINE_WIDTHS_MM, PENS, TEXT_STYLES } from '../../src/drawing/styles.js';
import { MEDIA, type Medium } from '../../src/records/index.js';

type Rgb = readonly [number, number, number];

/** sRGB to linear light, IEC 61966-2-1. */
function linear(hex: string): Rgb {
  const part = (from: number): number => {
    const v = Number.parseInt(hex.slice(from, from + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** CIE 1976 L*a*b* from linear sRGB, white point D65 (CIE 015). */
function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

// Machado, Oliveira, Fernandes 2009, "A physiologically-based model for simulation of color vision deficiency",
// matrices of severity 1.0; recalled: from memory. Each row sums to 1, which keeps greys grey.
const SIGHT: Readonly<Record<string, readonly Rgb[]>> = {
  'full colour': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
};

const seen = (matrix: readonly Rgb[], c: Rgb): Rgb => {
  const [r, g, b] = matrix.map((row) => Math.min(1, Math.max(0, row[0] * c[0] + row[1] * c[1] + row[2] * c[2])));
  return [r as number, g as number, b as number];
};

const pairs = (): readonly (readonly [Medium, Medium])[] =>
  MEDIA.flatMap((a, i) => MEDIA.slice(i + 1).map((b) => [a, b] as const));

describe('media on paper', () => {
  it.each(Object.entries(SIGHT))('are told apart by colour with %s', (_name, matrix) => {
    for (const row of matrix) expect(row[0] + row[1] + row[2]).toBeCloseTo(1, 4);
    for (const [a, b] of pairs()) {
      const [p, q] = [MEDIUM_STYLES[a], MEDIUM_STYLES[b]].map(({ colour }) => lab(seen(matrix, linear(colour)))) as [Rgb, Rgb];
      // A just noticeable difference is about 2.3 (Mahy, Van Eycken, Oosterlinck 1994; from memory): eight times that.
      expect(Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]), `${a} and ${b}`).toBeGreaterThan(18);
    }
  });

  it('stand out from white paper', () => {
    // WCAG 2.2, success criterion 1.4.11: graphics 3:1.
    for (const medium of MEDIA)
      expect(1.05 / (luminance(linear(MEDIUM_STYLES[medium].colour)) + 0.05), medium).toBeGreaterThan(3);
  });

  it('differ in letter, and in pattern of line', () => {
    const styles = MEDIA.map((medium) => MEDIUM_STYLES[medium]);
    expect(new Set(styles.map(({ letter }) => letter)).size).toBe(MEDIA.length);
    expect(new Set(styles.map(({ pen }) => JSON.stringify([pen.dash ?? [], pen.core !== undefined]))).size).toBe(MEDIA.length);
  });
});

describe('lines and letters', () => {
  it('have the widths of ISO 128-2 and no other', () => {
    // DRW-01: ISO 128-2:2020, ratio 1 : √2.
    expect(LINE_WIDTHS_MM).toEqual([0.13, 0.18, 0.25, 0.35, 0.5, 0.7]);
    LINE_WIDTHS_MM.slice(1).forEach((width, index) => {
      expect(width / (LINE_WIDTHS_MM[index] as number)).toBeCloseTo(Math.SQRT2, 1);
    });
    for (const pen of Object.values(PENS)) expect(LINE_WIDTHS_MM).toContain(pen.widthMm);
  });

  it('are never smaller than 5 points', () => {
    // DRW-07: 1 pt = 1/72 in.
    for (const style of Object.values(TEXT_STYLES)) expect(style.sizeMm).toBeGreaterThanOrEqual((5 * 25.4) / 72);
  });

  it('stand out from white paper', () => {
    // WCAG 2.2, success criterion 1.4.3: text 4.5:1.
    for (const style of Object.values(TEXT_STYLES)) expect(1.05 / (luminance(linear(style.colour)) + 0.05)).toBeGreaterThan(4.5);
  });
});
