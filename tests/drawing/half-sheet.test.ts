import { describe, expect, it } from 'vitest';
import { halfSheet } from '../../src/drawing/half-sheet.js';
import * as drawing from '../../src/drawing/index.js';
import { assessmentOf, sampleModel } from './sample.js';

/** Letter paper, turned, less its margins, heading and caption. */
const SHEET = { widthMm: 247.4, heightMm: 162.9 };
const a = assessmentOf(sampleModel());

describe('the layers of a medium', () => {
  const drawn = drawing.mediaUsed(a).flatMap((medium) => drawing.serviceDrawings(a, medium, SHEET));

  it('share a sheet, or have one each where there is much to label', () => {
    expect(drawn.length).toBeGreaterThan(drawing.mediaUsed(a).length);
    expect(drawn.filter(({ heightMm }) => heightMm <= halfSheet(SHEET).heightMm).length).toBeGreaterThan(0);
    for (const one of drawn) expect(one.heightMm, one.id).toBeLessThanOrEqual(SHEET.heightMm + 8);
  });

  it('say the scale that they are drawn at', () => {
    for (const one of drawn) expect(one.svg).toContain(`>${one.scale}</text>`);
  });
});

describe('the sides that must not be drilled', () => {
  it('share one sheet, with every label on it', () => {
    const sides = (['left', 'right'] as const).map((face) => drawing.noDrillFace(a, drawing.outsideOf(face), SHEET));
    for (const one of sides) {
      expect(one.heightMm).toBeLessThanOrEqual(halfSheet(SHEET).heightMm);
      expect(one.leftOut).toEqual([]);
    }
  });
});
