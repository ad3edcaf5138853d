import { describe, expect, it } from 'vitest';
import { selectionRows, unsuitedFiller } from '../../../src/compute/welding/filler.js';
import { fillerUnsuited } from '../../../src/rules/weld/filler-unsuited.js';
import { aluminium, buildModel, record } from '../../support/build.js';
import { judgeStructure } from '../../support/judge-structure.js';
import { lineMember, sections, weld } from '../../support/structure.js';

const judged = (filler: string, ...alloys: readonly string[]) =>
  unsuitedFiller(
    weld('W', [['A', 'B']], { filler }),
    alloys.map((alloy, i) => ({ id: 'AB'[i] as string, alloy })),
  );

describe('unsuitedFiller', () => {
  // WLD-28 highest strength, WLD-29 ductility, WLD-30 salt water, WLD-31 least cracking: a welding textbook's Table 3.3
  it.each([
    ['5052', '5356'],
    ['5083', '5183'],
    ['5086', '5356'],
    ['5454', '5356'],
    ['5456', '5556'],
    ['6061', '5356'],
    ['6063', '5356'],
    ['6082', '4043'],
    ['7005', '5556'],
    ['5083', '5356'],
    ['7005', '5356'],
    ['5454', '5554'],
    ['5052', '5554'],
    ['5086', '5183'],
    ['6061', '4043'],
    ['6063', '4043'],
    ['5456', '5356'],
  ])('WLD-28 to 31: %s with %s suits', (alloy, filler) => expect(judged(`ER${filler}`, `${alloy}-T6`)).toBeUndefined());

  it.each([
    // WLD-37 with MAT-53 (ASTM B221M): silicon fillers on more than 2 % Mg
    ['5052-H32', 'ER4043'],
    ['5083-H116', 'ER4043'],
    ['EN AW-5086', '4047'],
    ['5454-H34', 'R4643'],
  ])('WLD-37: %s with %s makes brittle magnesium silicide', (alloy, filler) =>
    expect(judged(filler, '6061-T6', alloy)).toMatchObject({ part: 'B', why: 'silicon' }),
  );

  it('is silent on 4043 with 6xxx, and on what no row speaks of', () => {
    expect(judged('ER4043', '6061-T6', '6063-T5')).toBeUndefined();
    expect(judged('ER1100', '3003-H14')).toBeUndefined();
    expect(judged('ER70S-6', 'S355')).toBeUndefined();
    expect(unsuitedFiller(weld('W', [['A', 'B']]), [{ id: 'A', alloy: '6061-T6' }])).toBeUndefined();
  });

  it('blames a filler that no row of either alloy has, and offers those that suit both', () => {
    expect(judged('ER5554', '6061-T6', '5083-H116')).toEqual({
      part: 'A',
      alloy: '6061-T6',
      why: 'unlisted',
      suited: ['5183', '5356'],
    });
  });
});

describe('selectionRows', () => {
  const packed = (limit: string, rule = 'weld.filler-unsuited') => ({ ...record('f'), rule, limit, pack: 'house' });
  const rows = selectionRows([
    packed('3003 with 1100, 4043 or 5356'),
    packed('6061: ER4043'),
    packed('6063 with 5554', 'weight.relabel'),
  ]);

  it('sets the shop’s rows over those built in', () => {
    expect(rows['3003']).toEqual(['1100', '4043', '5356']);
    expect(rows['6061']).toEqual(['4043']);
    expect(rows['6063']).toContain('5356');
    const of = (filler: string, alloy: string) =>
      unsuitedFiller(weld('W', [['A', 'B']], { filler }), [{ id: 'A', alloy }], rows)?.suited;
    expect(of('ER5356', '6061-T6')).toEqual(['4043']);
    expect(of('ER5554', '3003-H14')).toEqual(['1100', '4043', '5356']);
    expect(of('ER1100', '3003-H14')).toBeUndefined();
  });

  it('never lets a row allow a silicon filler on an alloy rich in magnesium', () => {
    const own = selectionRows([packed('5083 with 4043')]);
    expect(unsuitedFiller(weld('W', [['A', 'B']], { filler: 'ER4043' }), [{ id: 'A', alloy: '5083-H116' }], own)?.why).toBe(
      'silicon',
    );
  });
});

describe('weld.filler-unsuited', () => {
  it('says the part, the reason and what to use', () => {
    const plate = { ...lineMember('B', [0, 25, 0], [0, 500, 0]), alloy: '5083-H116' };
    const model = buildModel(
      { members: [lineMember('A', [0, 0, 0], [500, 0, 0]), plate], welds: [weld('W', [['A', 'B']], { filler: 'ER4043' })] },
      { sections, materials: new Map([[aluminium.id, aluminium]]) },
    );
    const [found] = judgeStructure(fillerUnsuited, model);
    expect(found).toMatchObject({ severity: 'warning', ids: ['W', 'B'] });
    expect(found?.message).toContain('ER4043 on 5083-H116 (B), whose magnesium it makes brittle, expected 5183 or 5356');
  });
});
