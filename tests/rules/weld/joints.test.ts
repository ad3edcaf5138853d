import { describe, expect, it } from 'vitest';
import { jointUnrecorded } from '../../../src/rules/weld/joint-unrecorded.js';
import { longerThanJoint } from '../../../src/rules/weld/longer-than-joint.js';
import { membersApart } from '../../../src/rules/weld/members-apart.js';
import { buildModel } from '../../support/build.js';
import { judgeStructure } from '../../support/judge-structure.js';
import { clamp, lineMember, sections, weld } from '../../support/structure.js';

const rails = [lineMember('L', [0, -500, 0], [3000, -500, 0]), lineMember('R', [0, 500, 0], [3000, 500, 0])];
const crosses = [0, 1, 2].map((i) => lineMember(`C${i}`, [500 + i * 500, -475, 0], [500 + i * 500, 475, 0]));

describe('weld.joint-unrecorded', () => {
  it('tells each missing joint once, under the member that has most of them', () => {
    const found = judgeStructure(jointUnrecorded, buildModel({ members: [...rails, ...crosses] }, { sections }));
    expect(found.map(({ ids }) => ids)).toEqual([
      ['L', 'C0', 'C1', 'C2'],
      ['R', 'C0', 'C1', 'C2'],
    ]);
    expect(found[0]?.severity).toBe('warning');
  });

  it('a weld or a clamp settles its joint', () => {
    const welds = [
      weld('W', [
        ['L', 'C0'],
        ['L', 'C1'],
        ['C2', 'L'],
      ]),
    ];
    const model = buildModel({ members: [...rails, ...crosses], welds, clamps: [clamp('U', ['R', 'C0'])] }, { sections });
    expect(judgeStructure(jointUnrecorded, model).map(({ ids }) => ids)).toEqual([['R', 'C1', 'C2']]);
  });
});

describe('weld.members-apart', () => {
  it('blames the weld and tells the gap', () => {
    const [finding] = judgeStructure(
      membersApart,
      buildModel({ members: rails, welds: [weld('W', [['L', 'R']])] }, { sections }),
    );
    expect(finding).toMatchObject({ severity: 'error', ids: ['W', 'L', 'R'] });
    expect(finding?.message).toContain('950 mm apart');
  });
  it('is quiet where they meet', () => {
    const model = buildModel({ members: [...rails, ...crosses], welds: [weld('W', [['L', 'C0']])] }, { sections });
    expect(judgeStructure(membersApart, model)).toEqual([]);
  });
});

describe('weld.longer-than-joint', () => {
  // around the end of a 50 × 50 tube are 200 mm; 10 % and 10 mm are allowed
  it.each([
    [200, 'arrow', 0],
    [229, 'arrow', 0],
    [235, 'arrow', 1],
    [150, 'both', 1],
  ] as const)('%d mm, %s side', (lengthMm, sides, found) => {
    const model = buildModel(
      { members: [...rails, ...crosses], welds: [weld('W', [['L', 'C0']], { lengthMm, sides })] },
      { sections },
    );
    expect(judgeStructure(longerThanJoint, model).length).toBe(found);
  });
});
