import { describe, expect, it } from 'vitest';
import { keepApartOf } from '../../../src/compute/services/keep-apart.js';
import { tooClose } from '../../../src/compute/services/separation.js';
import type { Run } from '../../../src/records/index.js';
import { node, run } from '../../support/services.js';

const at = (id: string, y: number, medium: 'dc' | 'ac') =>
  [node(`${id}1`, [0, y, 0], { medium }), node(`${id}2`, [2000, y, 0], { medium })] as const;
const wire = (id: string, y: number, medium: 'dc' | 'ac', more: Partial<Run> = {}) => {
  const [a, b] = at(id, y, medium);
  return run(id, a, b, [], more);
};

describe('media that keep apart', () => {
  it('WIR-63: low voltage 13 mm from AC without a word of the shop (NEC 551.10(C), from memory)', () => {
    const found = (y: number, more: Partial<Run> = {}) =>
      tooClose([wire('D', 0, 'dc'), wire('A', y, 'ac', more)], keepApartOf([]), () => 0).map(({ runs }) => runs);
    expect(found(12)).toEqual([['D', 'A']]);
    expect(found(12.8)).toEqual([]);
    expect(found(12, { sheathed: true })).toEqual([]);
    // Either may lie nearer by its tolerance.
    expect(found(20, { toleranceMm: 10 })).toEqual([['D', 'A']]);
  });

  it('the shop overrides one pair, key by key, and adds others', () => {
    const list = keepApartOf([
      { media: ['ac', 'dc'], shareZone: true },
      { media: ['gas', 'dc'], distanceMm: 50 },
    ]);
    expect(list).toContainEqual({ media: ['dc', 'ac'], distanceMm: 12.7, shareZone: true });
    expect(list).toContainEqual({ media: ['gas', 'ac'], distanceMm: 50.8 });
    expect(list).toContainEqual({ media: ['gas', 'dc'], distanceMm: 50 });
  });
});
