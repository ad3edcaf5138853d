/**
 * The finished sheets of the demo, in all three editions: how high their lettering is, and that nothing lies on anything else. Heights are
 * those of the capitals (h of ISO 3098-1, from memory); the share of the capitals is read from the typeface itself.
 */
import { readFileSync } from 'node:fs';
import { create, type Font } from 'fontkit';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Drawings } from '../../src/book/drawings.js';
import { SCALES, scaleText } from '../../src/drawing/sheet.js';
import { CAPITAL_SHARE, LETTER_HEIGHTS_MM } from '../../src/drawing/styles.js';
import { judged } from '../demo/store.js';
import { letterHeightMm, sheetFaults, textsOf } from './sheet-faults.js';
import { allSheets, type Sheet } from './sheets.js';

/** What is read lying under a coach or with a torch in one hand: its ids are larger. */
const UNDER_A_COACH: ReadonlySet<keyof Drawings> = new Set([
  'services',
  'panelFace',
  'panels',
  'noDrillFace',
  'drillAreas',
  'emergencyPlan',
]);

let sheets: readonly Sheet[] = [];
beforeAll(async () => {
  sheets = await allSheets();
});

const named = ({ edition, drawing }: Sheet): string => `${edition}: ${drawing.id}`;

describe('the finished sheets of the demo', () => {
  it('are many, of every kind', () => {
    expect(new Set(sheets.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(18);
    expect(sheets.every(({ drawing }) => drawing.marks !== undefined)).toBe(true);
  });

  it.each(['400', '700'])('take the height of capitals from the typeface, weight %s', (weight) => {
    const file = `node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff`;
    const font = create(readFileSync(file)) as Font;
    expect(font.capHeight / font.unitsPerEm).toBeGreaterThanOrEqual(CAPITAL_SHARE);
  });

  it('have no lettering lower than 1.8 mm', () => {
    const low = sheets.flatMap((sheet) =>
      textsOf(sheet.drawing)
        .filter((text) => letterHeightMm(text) < LETTER_HEIGHTS_MM.least)
        .map(({ text }) => `${named(sheet)}: ${text}`),
    );
    expect(low).toEqual([]);
  });

  it('have ids of 2.5 mm where they are read under a coach', () => {
    const { panels, nodes, runs } = judged('OV-021').assessment.model.shell;
    const ids = new Set([...panels, ...nodes, ...runs].map(({ id }) => id));
    const low = sheets
      .filter(({ kind }) => UNDER_A_COACH.has(kind))
      .flatMap((sheet) =>
        textsOf(sheet.drawing)
          .filter(({ text }) => ids.has(text))
          .filter((text) => letterHeightMm(text) < LETTER_HEIGHTS_MM.underCoach)
          .map(({ text }) => `${named(sheet)}: ${text}`),
      );
    expect(low).toEqual([]);
  });

  it('have every label on its sheet, off every other, and off outlines, runs and areas of hazard', () => {
    expect(sheets.flatMap(({ drawing }) => sheetFaults(drawing))).toEqual([]);
  });

  it('stand to a scale of ISO 5455 with its bar, or say that they stand to none', () => {
    const texts = new Set<string>(SCALES.map(scaleText));
    for (const { drawing } of sheets) {
      if (drawing.scale === 'not to scale') continue;
      expect(texts, drawing.id).toContain(drawing.scale);
      expect(
        drawing.marks?.some((mark) => mark.kind === 'shape' && mark.pen === 'furniture-filled'),
        drawing.id,
      ).toBe(true);
    }
  });
});
