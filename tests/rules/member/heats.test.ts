import { describe, expect, it } from 'vitest';
import type { Certificate, Member } from '../../../src/records/index.js';
import { alloySwapped } from '../../../src/rules/member/alloy-swapped.js';
import { certificateMissing } from '../../../src/rules/member/certificate-missing.js';
import { heatMissing } from '../../../src/rules/member/heat-missing.js';
import { offcutHeat } from '../../../src/rules/member/offcut-heat.js';
import { buildModel, record } from '../../support/build.js';
import { blaming, judgeStructure } from '../../support/judge-structure.js';
import { lineMember, sections } from '../../support/structure.js';

const member = (id: string, more: Partial<Member> = {}): Member => ({ ...lineMember(id, [0, 0, 0], [500, 0, 0]), ...more });
const paper = (heats: readonly string[], alloy = '6061-T6', type: Certificate['type'] = '3.1'): Certificate => ({
  ...record(`MC-${heats[0]}`),
  heats,
  alloy,
  type,
});
const model = (members: readonly Member[], papers: readonly Certificate[] = []) =>
  buildModel({ members }, { sections, certificates: new Map(papers.map((one) => [one.id, one])) });

describe('member.heat-missing', () => {
  it('tells each primary member without one, with the heats of its stock', () => {
    const found = judgeStructure(
      heatMissing,
      model([member('A', { heat: 'H-1' }), member('B'), member('C', { memberClass: 'secondary' })]),
    );
    expect(found.map(({ ids, severity }) => [ids, severity])).toEqual([[['B'], 'warning']]);
    expect(found[0]?.message).toContain('H-1');
  });

  it('knows the heat of an off-cut from its bar', () => {
    const [found] = judgeStructure(heatMissing, model([member('A', { heat: 'H-7' }), member('B', { offcutOf: 'A' })]));
    expect(found?.message).toContain('cut from A, so add `heat: H-7`');
  });

  it('is one note while no member has one, and nothing without members', () => {
    expect(judgeStructure(heatMissing, model([member('A'), member('B')])).map(({ severity }) => severity)).toEqual(['note']);
    expect(judgeStructure(heatMissing, model([]))).toEqual([]);
  });
});

describe('member.certificate-missing', () => {
  const members = [member('A', { heat: 'H-1' }), member('B', { heat: 'H-2' }), member('C', { heat: 'H-2' })];

  it('tells each heat without a paper once, with everything made of it and the nearest known heat', () => {
    const found = judgeStructure(certificateMissing, model(members, [paper(['H-1']), paper(['H-22'])]));
    expect(found.map(({ ids, severity }) => [ids, severity])).toEqual([[['B', 'C'], 'warning']]);
    expect(found[0]?.message).toContain('`H-22`?');
  });

  it('does not take a paper on the order for one on the heat', () => {
    const [found] = judgeStructure(certificateMissing, model(members, [paper(['H-1']), paper(['H-2'], '6061-T6', '2.2')]));
    expect(found?.message).toContain('type 2.2');
    expect(judgeStructure(certificateMissing, model(members, [paper(['H-1']), paper(['H-2'])]))).toEqual([]);
  });

  it('is one note while the library has none at all', () => {
    expect(judgeStructure(certificateMissing, model(members)).map(({ severity }) => severity)).toEqual(['note']);
  });
});

describe('member.alloy-swapped', () => {
  it('is an error for another alloy, a warning for another temper, silent for the same', () => {
    const judge = (certified: string) =>
      judgeStructure(alloySwapped, model([member('A', { heat: 'H-1' })], [paper(['H-1'], certified)])).map(
        ({ severity }) => severity,
      );
    expect(judge('6063-T6')).toEqual(['error']);
    expect(judge('6061-T4')).toEqual(['warning']);
    expect(judge('6061-T6')).toEqual([]);
    expect(judge('6005A-T61')).toEqual(['error']);
  });

  it('blames the alloy of the member and shows the paper', () => {
    const fields: string[] = [];
    const [found] = judgeStructure(
      alloySwapped,
      model([member('A', { heat: 'H-1', source: blaming(fields) }), member('B', { heat: 'H-1' })], [paper(['H-1'], '6063-T6')]),
    );
    expect(fields).toEqual(['alloy']);
    expect(found?.ids).toEqual(['A', 'B']);
    expect(found?.message).toContain('expected 6063-T6 by certificate MC-H-1');
    expect(found?.related?.length).toBe(1);
  });
});

describe('member.offcut-heat', () => {
  it('wants the heat and the alloy of the bar that it was cut from', () => {
    const judge = (more: Partial<Member>) =>
      judgeStructure(offcutHeat, model([member('A', { heat: 'H-1' }), member('B', { offcutOf: 'A', ...more })])).map(
        ({ message }) => message,
      );
    expect(judge({ heat: 'H-1' })).toEqual([]);
    expect(judge({})).toEqual([]);
    expect(judge({ heat: 'H-2' })[0]).toContain('has heat H-2, expected H-1');
    expect(judge({ heat: 'H-1', alloy: '5052-H32' })[0]).toContain('has alloy 5052-H32, expected 6061-T6');
  });
});
