import { describe, expect, it } from 'vitest';
import { RULES } from '../../../src/rules/index.js';
import { memberSelfCrossing } from '../../../src/rules/member/self-crossing.js';
import { zeroLength } from '../../../src/rules/member/zero-length.js';
import { buildModel } from '../../support/build.js';
import { blaming, judgeStructure } from '../../support/judge-structure.js';
import { loadOne } from '../../support/store.js';
import { plateMember } from '../../support/structure.js';

const LIBRARY = {
  'library/materials.yaml':
    '- {id: 6061-T6, kind: aluminium, density: 2700 kg/m3}\n- {id: 5083-H116, kind: aluminium, density: 2660 kg/m3}\n',
  'library/sections.yaml': '- {id: RT2, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in}\n',
  'library/people.yaml': '- {id: K7, name: A, role: welder}\n- {id: M3, name: B, role: welder}\n',
};
const told = (files: Readonly<Record<string, string>>) => {
  const { store, findings } = loadOne({ ...LIBRARY, ...files });
  return [...store.findings, ...findings].map(({ rule, message, place }) => ({
    rule,
    message,
    at: `${place.file}:${place.line}:${place.column}`,
  }));
};
const A = '- {id: A, section: RT2, alloy: 6061-T6, from: [0, 0, 0], to: [1 m, 0, 0]}\n';
const B = '- {id: B, section: RT2, alloy: 6061-T6, from: [0, 2 in, 0], to: [1 m, 2 in, 0]}\n';

describe('slips of the pen are told with what was probably meant', () => {
  it('alloy 6016 for 6061', () => {
    expect(told({ 'shells/T-1/members.yaml': A.replace('6061', '6016') })).toEqual([
      {
        rule: 'format.unknown-reference',
        message: expect.stringContaining('Did you mean `6061-T6`?'),
        at: 'shells/T-1/members.yaml:1:32',
      },
    ]);
  });

  it('a welder that nobody is', () => {
    const weld = '- {id: W, joins: [A, B], type: fillet, size: 4 mm, length: 50 mm, process: GMAW, welder: K8}\n';
    expect(told({ 'shells/T-1/members.yaml': A + B, 'shells/T-1/welds.yaml': weld })).toEqual([
      { rule: 'format.unknown-reference', message: expect.stringMatching(/K8.*person.*`K7`/u), at: 'shells/T-1/welds.yaml:1:90' },
    ]);
  });

  it('a certificate for an alloy that the library has not, in the library’s own line', () => {
    expect(told({ 'library/certificates.yaml': '- {id: MC-1, heats: [H-1], alloy: 5038-H116, type: 3.1}\n' })).toEqual([
      { rule: 'format.unknown-reference', message: expect.stringContaining('`5083-H116`'), at: 'library/certificates.yaml:1:35' },
    ]);
  });

  it('a type of certificate that EN 10204 has not', () => {
    const [found] = told({ 'library/certificates.yaml': '- {id: MC-1, heats: [H-1], alloy: 6061-T6, type: 3.1B}\n' });
    expect(found?.message).toContain('`3.1`');
  });

  it.each([
    ['wall: 4 in', 'was it `4 mm` or `0.4 in`?'],
    ['wall: 1.25 in', 'was it `1.25 mm` or `0.125 in`?'],
    ['wall: 1/8 in, corner_radius: 3 in', '`corner_radius`'],
  ])('a tube of 2 in with %s', (wall, words) => {
    const [found] = told({
      'library/sections.yaml': `- {id: RT2, shape: rectangular tube, depth: 2 in, width: 2 in, ${wall}}\n`,
    });
    expect(found?.rule).toBe('format.wrong-value');
    expect(found?.message).toContain(words);
  });
});

describe('member.self-crossing', () => {
  const judged = (outline: readonly (readonly [number, number, number])[]) => {
    const fields: string[] = [];
    const plate = { ...plateMember('G', outline, 8), source: blaming(fields) };
    return { fields, found: judgeStructure(memberSelfCrossing, buildModel({ members: [plate] })) };
  };

  it('tells the two sides of a plate that cross', () => {
    // A bow tie: corners 2 and 3 exchanged.
    const { fields, found } = judged([
      [0, 0, 0],
      [100, 0, 100],
      [100, 0, 0],
      [0, 0, 60],
    ]);
    expect(found[0]).toMatchObject({ rule: 'member.self-crossing', severity: 'error', ids: ['G'] });
    expect(found[0]?.message).toContain('corners 1–2 meets the side between corners 3–4');
    expect(fields).toEqual(['plate.outline']);
  });

  it('tells a plate without area, and leaves a square and an L alone', () => {
    expect(
      judged([
        [0, 0, 0],
        [50, 0, 0],
        [100, 0, 0],
      ]).found[0]?.message,
    ).toContain('encloses no area');
    expect(
      judged([
        [0, 0, 0],
        [100, 0, 0],
        [100, 0, 100],
        [0, 0, 100],
      ]).found,
    ).toEqual([]);
    expect(
      judged([
        [0, 0, 0],
        [90, 0, 0],
        [90, 0, 30],
        [30, 0, 30],
        [30, 0, 90],
        [0, 0, 90],
      ]).found,
    ).toEqual([]);
  });
});

describe('every rule of this kind is on the list', () => {
  it('under its own name, once', () => {
    const names = RULES.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toContain(memberSelfCrossing.name);
    expect(names).toContain(zeroLength.name);
  });
});
