import { describe, expect, it } from 'vitest';
import { clampFigures } from '../../../src/compute/structure/clamps.js';
import { metalOf } from '../../../src/compute/structure/unlike-metals.js';
import type { Clamp } from '../../../src/records/index.js';
import { bareContact } from '../../../src/rules/member/bare-contact.js';
import { clampCheckDue } from '../../../src/rules/member/clamp-check-due.js';
import { clampTorqueMissing } from '../../../src/rules/member/clamp-torque-missing.js';
import { aluminium, buildModel, record } from '../../support/build.js';
import { judgeStructure } from '../../support/judge-structure.js';
import { loadOne } from '../../support/store.js';
import { clamp, lineMember, sections } from '../../support/structure.js';

const material = (id: string, materialKind: string) => ({ ...record(id), materialKind, densityKgM3: 7850 });
const materials = new Map(
  [aluminium, material('S355', 'steel'), material('304', 'stainless'), material('Cu', 'copper'), material('ply', 'plywood')].map(
    (one) => [one.id, one],
  ),
);
const bar = (id: string, y: number, alloy: string) => ({ ...lineMember(id, [0, y, 0], [500, y, 0]), alloy });
const model = (clamps: readonly Clamp[], other = 'S355', apart = 50) =>
  buildModel({ members: [bar('A', 0, '6061-T6'), bar('B', apart, other)], clamps }, { sections, materials });

describe('metalOf', () => {
  it.each([
    ['6061-T6', 'aluminium'],
    ['S355', 'steel'],
    ['304', 'stainless'],
    ['Cu', 'copper'],
    ['ply', undefined],
    ['nobody knows', undefined],
  ] as const)('%s is %s', (alloy, metal) => expect(metalOf(alloy, buildModel({}, { materials }).library)).toBe(metal));
});

describe('member.bare-contact', () => {
  const judged = (...given: Parameters<typeof model>) => judgeStructure(bareContact, model(...given)).map(({ ids }) => ids);

  it('wants an insulator at each clamp on aluminium: yes will do, no and silence will not', () => {
    expect(judged([{ ...clamp('C', ['A']), insulator: true }], '6061-T6')).toEqual([]);
    expect(judged([{ ...clamp('C', ['A']), insulator: false }], '6061-T6')).toEqual([['C', 'A']]);
    expect(judged([clamp('C', ['A'])], '6061-T6')).toEqual([['C', 'A']]);
  });

  it('a clamp on steel alone is no such contact', () => expect(judged([clamp('C', ['B'])], 'S355', 500)).toEqual([]));

  it.each(['S355', '304', 'Cu'])('tells aluminium that meets %s, the aluminium first', (other) => {
    expect(judged([], other)).toEqual([['A', 'B']]);
  });

  it('is content with a clamp that joins the two over an insulator, or where they do not meet, or are no two metals', () => {
    expect(judged([{ ...clamp('C', ['A', 'B']), insulator: true }])).toEqual([]);
    expect(judged([], 'S355', 60)).toEqual([]);
    expect(judged([], 'ply')).toEqual([]);
    expect(judged([], '6061-T6')).toEqual([]);
  });
});

describe('clamps, their torque and their checks', () => {
  const bolt = (id: string, more: Partial<Clamp> = {}): Clamp => ({ ...clamp(id, []), ...more });

  it('a U-bolt without a torque is a warning, without a later check a note', () => {
    const judge = (more: Partial<Clamp>) =>
      judgeStructure(clampTorqueMissing, buildModel({ clamps: [bolt('C', more)] })).map(({ severity }) => severity);
    expect(judge({})).toEqual(['warning']);
    expect(judge({ torqueNm: 203 })).toEqual(['note']);
    expect(judge({ torqueNm: 203, checkAgain: 'after 500 mi' })).toEqual([]);
    expect(judge({ clampKind: 'damper pad' })).toEqual([]);
    expect(judge({ clampKind: 'plate', bolt: '5/8 in' })).toEqual(['warning']);
  });

  it('stand along a member in order, whatever the order of the records; the widest gap is told', () => {
    const rail = lineMember('R', [0, 0, 0], [3000, 0, 0]);
    const at = (id: string, x: number) => ({ ...clamp(id, ['R']), at: [x, 0, 0] as const });
    const { spacing } = clampFigures(
      buildModel({
        members: [rail, lineMember('S', [0, 0, 0], [0, 0, 900])],
        clamps: [at('C', 2500), at('A', 200), at('B', 1000), clamp('X', [])],
      }),
    );
    expect(spacing).toEqual([{ member: 'R', clamps: 3, widestMm: 1500, between: ['B', 'C'] }]);
  });

  it('a check that is set is due until one is on record', () => {
    const clamps = [
      bolt('C1', { torqueNm: 203, checkAgain: 'after 500 mi', damper: 'D-1', insulator: true }),
      bolt('C2', { torqueNm: 203, checkAgain: 'after 500 mi', damper: 'D-1' }),
      bolt('C3', { checkAgain: 'after 500 mi', checks: [{ date: '2026-10-14' }, { date: '2026-08-01' }] }),
      bolt('C4'),
    ];
    const figures = clampFigures(buildModel({ clamps }));
    expect(figures).toMatchObject({ count: 4, torqued: 2, isolated: 1, dampers: ['D-1'] });
    expect(figures.clamps.map(({ id, check, checked }) => [id, check, checked])).toEqual([
      ['C1', 'due', undefined],
      ['C2', 'due', undefined],
      ['C3', 'done', '2026-10-14'],
      ['C4', 'not set', undefined],
    ]);
    expect(judgeStructure(clampCheckDue, buildModel({ clamps })).map(({ ids, severity }) => [ids, severity])).toEqual([
      [['C1', 'C2'], 'note'],
    ]);
  });
});

describe('what keeps unlike metals apart', () => {
  const insulated = (typed: string): readonly (boolean | undefined)[] => {
    const { model, findings } = loadOne({
      'shells/T-1/clamps.yaml': `- {id: UB-1, kind: U-bolt, at: [1 m, 0 m, 0 m], ${typed}}\n`,
      'shells/T-1/services/dc.yaml': `service: DC\nmedium: dc\nnodes:\n  - {id: ES-1, kind: terminal, at: [1 m, 0 m, 0 m], ${typed}}\n`,
    });
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    return [model.shell.clamps[0]?.insulator, model.shell.nodes[0]?.insulator];
  };

  it('is an insulator; the key as it was called before still reads, and the new one counts where both stand', () => {
    expect(insulated('insulator: yes')).toEqual([true, true]);
    expect(insulated('isolator: yes')).toEqual([true, true]);
    expect(insulated('isolator: yes, insulator: no')).toEqual([false, false]);
    expect(insulated('torque: 20 N.m')).toEqual([undefined, undefined]);
  });
});
