import { describe, expect, it } from 'vitest';
import { lengthDiffers } from '../../../src/rules/member/length-differs.js';
import { wallThin } from '../../../src/rules/member/wall-thin.js';
import { zeroLength } from '../../../src/rules/member/zero-length.js';
import { buildModel, section } from '../../support/build.js';
import { blaming, judgeStructure } from '../../support/judge-structure.js';
import { lineMember, sections } from '../../support/structure.js';

describe('member.length-differs', () => {
  const cut = (lengthMm: number, cutLengthMm: number) =>
    judgeStructure(
      lengthDiffers,
      buildModel({ members: [lineMember('M', [0, 0, 0], [lengthMm, 0, 0], { cutLengthMm })] }, { sections }),
    );

  it.each([
    // 3 mm rules up to 1.5 m, 0.2 % above
    [1000, 1003, 0],
    [1000, 1003.1, 1],
    [1000, 996.9, 1],
    [5000, 5010, 0],
    [5000, 5010.1, 1],
  ])('a line of %d mm cut to %d mm', (lengthMm, cutLengthMm, found) => expect(cut(lengthMm, cutLengthMm).length).toBe(found));

  it('says both lengths, the difference and what to type', () => {
    const [finding] = cut(5000, 5080);
    expect(finding).toMatchObject({ rule: 'member.length-differs', severity: 'warning', ids: ['M'] });
    expect(finding?.message).toContain('5,080 mm');
    expect(finding?.message).toContain('80.0 mm longer');
    expect(finding?.message).toContain('`cut_length`');
  });

  it('without a cut length there is nothing to compare', () => {
    expect(
      judgeStructure(lengthDiffers, buildModel({ members: [lineMember('M', [0, 0, 0], [10, 0, 0])] }, { sections })),
    ).toEqual([]);
  });
});

describe('member.zero-length', () => {
  it('blames the end of a member that has no length, and no other', () => {
    const fields: string[] = [];
    const none = { ...lineMember('Z', [5, 5, 5], [5, 5, 5]), source: blaming(fields) };
    const found = judgeStructure(
      zeroLength,
      buildModel({ members: [none, lineMember('M', [0, 0, 0], [1, 0, 0])] }, { sections }),
    );
    expect(found.map(({ ids, severity }) => [ids, severity])).toEqual([[['Z'], 'error']]);
    expect(fields).toEqual(['to']);
  });
});

describe('member.wall-thin', () => {
  const tube = (wallMm: number) =>
    section('T', { shape: 'rectangular tube', depthMm: 50, widthMm: 50, wallMm, cornerRadiusMm: 0 });
  const judged = (wallMm: number, ids: readonly string[]) =>
    judgeStructure(
      wallThin,
      buildModel(
        { members: ids.map((id) => lineMember(id, [0, 0, 0], [100, 0, 0], { section: 'T' })) },
        { sections: new Map([['T', tube(wallMm)]]) },
      ),
    );

  it('1/8 in will do, a hair under it too, 3 mm will not', () => {
    expect(judged(3.175, ['A'])).toEqual([]);
    expect(judged(3.15, ['A'])).toEqual([]);
    expect(judged(3, ['A']).length).toBe(1);
  });

  it('is told once a section, with every member that uses it; an unused one is not told', () => {
    expect(judged(2, ['A', 'B', 'C']).map(({ ids }) => ids)).toEqual([['A', 'B', 'C']]);
    expect(judged(2, [])).toEqual([]);
  });
});
