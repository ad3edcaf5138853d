import { describe, expect, it } from 'vitest';
import * as drawing from '../../src/drawing/index.js';
import { singleLines } from '../../src/drawing/single-lines.js';
import { assessmentOf, sampleModel } from './sample.js';

describe('the emergency plan', () => {
  const a = assessmentOf(sampleModel());
  const { items } = drawing.rescueItems(a.model.shell);
  const plan = drawing.emergencyPlan(a, { widthMm: 184, heightMm: 134 });

  it('numbers its items from one on, and each in the plan and in the side view', () => {
    expect(items.length).toBeGreaterThan(2);
    expect(items.map(({ number }) => number)).toEqual(items.map((_, index) => index + 1));
    for (const { number } of items) {
      // 3.8 mm is the size of numerals alone.
      expect([number, plan.svg.match(new RegExp(`font-size="3.8"[^>]*>${number}</text>`, 'gu'))?.length]).toEqual([number, 2]);
    }
    expect(plan.svg).not.toMatch(/more labels?/u);
  });

  it('names what it numbers for those who cannot see it', () => {
    for (const { number, name } of items) expect(plan.alt).toContain(`${number} ${name}`);
  });

  it('draws no structural member', () => {
    for (const { id } of a.model.shell.members) expect(plan.ids).not.toContain(id);
  });

  it('counts a tank that burns once, beside its node or alone, and no urea', () => {
    const tank = (id: string, contents: string, x: number) => ({
      id,
      contents,
      capacityM3: 0.1,
      at: [x, 0, 0] as const,
      densityKgM3: 800,
    });
    const shell = {
      ...a.model.shell,
      nodes: [],
      components: [],
      tanks: [
        tank('F', 'diesel', 0),
        tank('U', 'diesel exhaust fluid', 3000),
        tank('W', 'water', 6000),
        tank('G', 'propane', 9000),
      ],
    };
    expect(drawing.rescueItems(shell).items.map(({ id, group }) => [id, group])).toEqual([
      ['G', 'Gas'],
      ['F', 'Fuel'],
    ]);
  });
});

describe('lines that lie over each other', () => {
  it('are drawn once, over their whole length', () => {
    const lines = singleLines([
      [
        [0, 10],
        [40, 10],
      ],
      [
        [60, 10.1],
        [20, 10.1],
      ],
      [
        [0, 30],
        [40, 30],
      ],
    ]);
    expect(lines.length).toBe(2);
    const spans = lines.map(([p, q]) => Math.abs(q[0] - p[0])).sort((p, q) => p - q);
    expect(spans).toEqual([40, 60]);
  });
});
