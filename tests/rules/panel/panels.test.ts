import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vector.js';
import { notFlat } from '../../../src/rules/panel/not-flat.js';
import { selfCrossing } from '../../../src/rules/panel/self-crossing.js';
import { buildModel, limits } from '../../support/build.js';
import { judgeStructure } from '../../support/judge-structure.js';
import { flatPanel } from '../../support/structure.js';

const square = (lift: number): Vec3[] => [
  [0, 0, 0],
  [1000, 0, 0],
  [1000, 1000, lift],
  [0, 1000, 0],
];

describe('panel.not-flat', () => {
  // One corner of a square lifted by h: the best plane leaves each corner h/4 off.
  it.each([
    [11.9, 3, 0],
    [12.2, 3, 1],
    [12.2, 5, 0],
  ])('a corner lifted by %d mm against a limit of %d mm', (lift, flatnessMm, found) => {
    const model = buildModel(
      { panels: [flatPanel('P', 0, { outline: square(lift) })] },
      {},
      { limits: { ...limits, flatnessMm } },
    );
    expect(judgeStructure(notFlat, model).length).toBe(found);
  });

  it('says how far, and the limit', () => {
    const [finding] = judgeStructure(notFlat, buildModel({ panels: [flatPanel('P', 0, { outline: square(40) })] }));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['P'] });
    expect(finding?.message).toContain('10.0 mm out of');
    expect(finding?.message).toContain('at most 3.0 mm');
  });
});

describe('panel.self-crossing', () => {
  const judged = (outline: readonly Vec3[]) =>
    judgeStructure(selfCrossing, buildModel({ panels: [flatPanel('P', 0, { outline })] }));
  it('two corners exchanged', () => {
    // not quite a bow tie, so that it encloses some area
    const crossed: Vec3[] = [
      [0, 0, 0],
      [1000, 900, 0],
      [1000, 0, 0],
      [0, 1000, 0],
    ];
    const [finding] = judged(crossed);
    expect(finding).toMatchObject({ rule: 'panel.self-crossing', severity: 'error', ids: ['P'] });
    expect(finding?.message).toContain('corners 1–2');
    expect(finding?.message).toContain('corners 3–4');
  });
  it('an L shape and a square do not cross', () => {
    expect(judged(square(0))).toEqual([]);
    const ell = [
      [0, 0],
      [6, 0],
      [6, 2],
      [2, 2],
      [2, 5],
      [0, 5],
    ].map(([x, y]) => [0, x, y] as unknown as Vec3);
    expect(judged(ell)).toEqual([]);
  });
  it('corners on one line enclose nothing', () => {
    const line = [0, 1, 2].map((x) => [x, 0, 0] as Vec3);
    expect(judged(line)[0]?.message).toContain('encloses no area');
  });
});
