import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { qrCode } from '../../src/book/labels/code.js';
import { sheetsOf } from '../../src/book/print/document.js';

const CSS = readFileSync(new URL('../../templates/book.css', import.meta.url), 'utf8');
const colourOf = (name: string): string => new RegExp(`--${name}: (#[0-9a-f]{6})`, 'u').exec(CSS)?.[1] ?? '';

/** WCAG 2.2, relative luminance and contrast ratio. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((from) => {
    const v = Number.parseInt(hex.slice(from, from + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

describe('the colours of the book’s text', () => {
  it('are measured as WCAG measures: black on white is 21:1, #777 on white 4.48:1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  it.each([
    ['ink', '#ffffff'],
    ['soft', '#ffffff'],
    ['spruce', '#ffffff'],
    ['red', '#ffffff'],
    ['red', '#fbeceb'],
    ['ink', '#fbeceb'],
    ['amber', 'amber-wash'],
    ['ink', 'amber-wash'],
    ['soft', 'wash'],
  ])('stand out enough: %s on %s', (text, ground) => {
    // WCAG 2.2, success criterion 1.4.3: text 4.5:1.
    expect(contrast(colourOf(text), ground.startsWith('#') ? ground : colourOf(ground))).toBeGreaterThanOrEqual(4.5);
  });

  it('never stand on a ground that the sheet does not name', () => {
    const grounds = [...CSS.matchAll(/background: ([^;}]+)/gu)].map(([, ground]) => ground?.trim());
    expect(new Set(grounds)).toEqual(new Set(['var(--wash)', 'var(--amber-wash)', '#fbeceb', 'var(--ink)']));
  });
});

describe('sheets', () => {
  it('are the standards’ own, turned ones too', () => {
    // DRW-05: ISO 216. DRW-06: ASME Y14.1, A size.
    const size = ({ widthMm, heightMm }: { widthMm: number; heightMm: number }) => [widthMm, heightMm];
    expect([size(sheetsOf('a4').portrait), size(sheetsOf('a4').landscape)]).toEqual([
      [210, 297],
      [297, 210],
    ]);
    expect(size(sheetsOf('letter').portrait).map((mm) => mm / 25.4)).toEqual([8.5, 11]);
  });
});

describe('a code', () => {
  it('has as many modules as its words need at medium correction, and four free ones around', () => {
    // QR-01, QR-04, QR-51: ISO/IEC 18004. 14 bytes fit version 1 at level M (21 modules), 26 version 2 (25), 42 version 3 (29).
    for (const [letters, modules] of [
      [14, 21],
      [15, 25],
      [26, 25],
      [27, 29],
      [42, 29],
    ] as const) {
      expect(qrCode('a'.repeat(letters), 26)).toContain(`viewBox="0 0 ${modules + 8} ${modules + 8}"`);
    }
  });
});
