import { describe, expect, it } from 'vitest';
import { halfSheet } from '../../src/drawing/half-sheet.js';
import * as drawing from '../../src/drawing/index.js';
import type { Medium } from '../../src/records/index.js';
import { assessmentOf, sampleModel } from './sample.js';

/** Letter paper, turned, less its margins, heading and caption. */
const SHEET = { widthMm: 247.4, heightMm: 162.9 };
const a = assessmentOf(sampleModel());
const count = (medium: Medium): number =>
  [...a.model.shell.runs, ...a.model.shell.nodes].filter((one) => one.medium === medium).length;

describe('plan and elevation of a medium', () => {
  const small = drawing.mediaUsed(a).filter((medium) => count(medium) <= 40);
  const large = drawing.mediaUsed(a).filter((medium) => count(medium) > 40);

  it('share one sheet where every label finds its place so', () => {
    expect(small.length).toBeGreaterThan(0);
    for (const medium of small) {
      const drawn = drawing.serviceDrawings(a, medium, SHEET);
      expect(drawn.length, medium).toBe(2);
      expect(drawn.reduce((sum, { heightMm }) => sum + heightMm, 0)).toBeLessThanOrEqual(2 * halfSheet(SHEET).heightMm);
      for (const one of drawn) expect([one.id, one.leftOut]).toEqual([one.id, []]);
    }
  });

  it('say the scale that they are drawn at', () => {
    for (const medium of small) {
      for (const one of drawing.serviceDrawings(a, medium, SHEET)) expect(one.svg).toContain(`>${one.scale}</text>`);
    }
  });

  it('have a sheet each, and more, where there is much to label', () => {
    expect(large.length).toBeGreaterThan(0);
    for (const medium of large) expect(drawing.serviceDrawings(a, medium, SHEET).length, medium).toBeGreaterThan(2);
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
