import { describe, expect, it } from 'vitest';
import { BADGE_HALF_MM, badgeMarks } from '../../src/drawing/badges.js';
import * as drawing from '../../src/drawing/index.js';
import { singleLines } from '../../src/drawing/single-lines.js';
import { PENS, type PenName } from '../../src/drawing/styles.js';
import { assessmentOf, sampleModel } from './sample.js';

describe('the emergency plan', () => {
  const a = assessmentOf(sampleModel());
  const { items } = drawing.rescueItems(a.model.shell);
  const plan = drawing.emergencyPlan(a, { widthMm: 184, heightMm: 134 });

  it('numbers its items from one on, and each in the plan and in the side view', () => {
    expect(items.length).toBeGreaterThan(2);
    expect(items.map(({ number }) => number)).toEqual(items.map((_, index) => index + 1));
    for (const { number } of items) {
      // 4.4 mm is the size of numbers in their shapes alone.
      expect([number, plan.svg.match(new RegExp(`font-size="4.4"[^>]*>${number}</text>`, 'gu'))?.length]).toEqual([number, 2]);
    }
    expect(plan.svg).not.toMatch(/more labels?/u);
  });

  it('names what it numbers for those who cannot see it', () => {
    for (const { number, name } of items) expect(plan.alt).toContain(`${number} ${name}`);
  });

  it('lets no two shapes lie over each other, and tells the groups apart by shape too', () => {
    const tags = [...plan.svg.matchAll(/<text[^>]*font-size="4\.4"[^>]*>/gu)].map(([tag]) => tag);
    const places = tags.map((tag) => ['x', 'y'].map((key) => Number(new RegExp(` ${key}="([-\\d.]+)"`, 'u').exec(tag)?.[1])));
    expect(places.length).toBe(2 * items.length);
    places.forEach(([x = 0, y = 0], at) => {
      for (const [ox = 0, oy = 0] of places.slice(at + 1)) {
        expect(Math.max(Math.abs(x - ox), Math.abs(y - oy))).toBeGreaterThan(2 * BADGE_HALF_MM.mains);
      }
    });
    const shapes = (['gas', 'fuel', 'mains', 'battery'] as const).map((badge) => {
      const [shape] = badgeMarks(badge, '8', [0, 0]);
      expect(shape?.kind === 'text' ? undefined : PENS[shape?.pen as PenName].widthMm).toBe(0.7);
      return shape?.kind === 'circle'
        ? 'circle'
        : shape?.kind === 'shape'
          ? JSON.stringify(shape.rings[0]?.map(([, y]) => Math.sign(y)))
          : '';
    });
    expect(new Set(shapes).size).toBe(4);
  });

  it('draws what must not be cut into on a band', () => {
    expect(plan.svg).toMatch(new RegExp(`stroke="${PENS['danger-gas'].colour}"`, 'u'));
  });

  it('draws no structural member', () => {
    for (const { id } of a.model.shell.members) expect(plan.ids).not.toContain(id);
  });

  it('counts a tank that burns once, beside its node or alone, and no urea', () => {
    const tank = (id: string, use: 'fuel' | 'fluid' | 'fresh' | 'gas', contents: string, x: number) => ({
      id,
      use,
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
        tank('F', 'fuel', 'diesel', 0),
        tank('U', 'fluid', 'diesel exhaust fluid', 3000),
        tank('W', 'fresh', 'water', 6000),
        tank('G', 'gas', 'propane', 9000),
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
