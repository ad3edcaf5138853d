import { describe, expect, it } from 'vitest';
import { materials } from '../../../src/compute/structure/materials.js';
import { memberFigures } from '../../../src/compute/takeoff/members.js';
import type { Certificate, Member } from '../../../src/records/index.js';
import { buildModel, record } from '../../support/build.js';
import { lineMember, sections } from '../../support/structure.js';

/** Bars of RT50 of some length, so that shares of mass are shares of length. */
const bar = (id: string, lengthMm: number, more: Partial<Member> = {}): Member => ({
  ...lineMember(id, [0, 0, 0], [lengthMm, 0, 0]),
  ...more,
});
const paper = (heats: readonly string[], type: Certificate['type'] = '3.1', alloy = '6061-T6'): Certificate => ({
  ...record(`MC-${heats[0]}`),
  heats,
  alloy,
  type,
});
const judged = (members: readonly Member[], papers: readonly Certificate[]) => {
  const model = buildModel({ members }, { sections, certificates: new Map(papers.map((one) => [one.id, one])) });
  return materials(model, { members: memberFigures(model) });
};

describe('materials', () => {
  it('traces primary structure by mass, not by count', () => {
    const { primaryKg, tracedKg, share, untraced } = judged(
      [bar('A', 3000, { heat: 'H-1' }), bar('B', 500, { heat: 'H-2' }), bar('C', 500)],
      [paper(['H-1'])],
    );
    // 50 × 50 × 4 square tube: 736 mm² × 4 m × 2700 kg/m³ = 7.9488 kg; computed
    expect(primaryKg).toBeCloseTo(7.9488, 4);
    expect(tracedKg).toBeCloseTo(5.9616, 4);
    expect(share).toBeCloseTo(0.75, 9);
    expect(untraced).toEqual(['B', 'C']);
  });

  it.each([
    // EN 10204:2004: 2.x on the order, 3.x on the heat; from memory
    ['2.1', 0],
    ['2.2', 0],
    ['3.1', 1],
    ['3.2', 1],
  ] as const)('a paper of type %s traces %d of the metal', (type, share) => {
    expect(judged([bar('A', 1000, { heat: 'H-1' })], [paper(['H-1'], type)]).share).toBe(share);
  });

  it('does not trace metal whose paper is for another alloy', () => {
    expect(judged([bar('A', 1000, { heat: 'H-1' })], [paper(['H-1'], '3.1', '6063-T6')]).share).toBe(0);
  });

  it('leaves secondary members out of the share, and says nothing where there is no primary mass', () => {
    const members = [bar('A', 1000, { heat: 'H-1' }), bar('B', 9000, { memberClass: 'secondary' })];
    expect(judged(members, [paper(['H-1'])]).share).toBe(1);
    expect(judged([], []).share).toBeUndefined();
  });

  it('lists each heat with its alloys, members and papers', () => {
    const { heats } = judged(
      [bar('A', 1000, { heat: 'H-2' }), bar('B', 1000, { heat: 'H-1' }), bar('C', 1000, { heat: 'H-2', alloy: '5052-H32' })],
      [paper(['H-2', 'H-9'])],
    );
    expect(heats.map(({ heat, alloys, members, certificates }) => [heat, alloys, members, certificates.length])).toEqual([
      ['H-1', ['6061-T6'], ['B'], 0],
      ['H-2', ['5052-H32', '6061-T6'], ['A', 'C'], 1],
    ]);
  });
});
