import { describe, expect, it } from 'vitest';
import { blocking, openItems } from '../../src/closeout/items.js';
import { digestFor } from '../../src/closeout/sign.js';
import type { Nonconformance, Signoff, Stage } from '../../src/records/index.js';
import type { DecidedFinding } from '../../src/rules/decide.js';
import { record, source } from '../support/build.js';
import { node, zone } from '../support/services.js';
import { clamp, lineMember } from '../support/structure.js';
import { finding, modelOf, type Shell, stage } from './stages.js';

describe('what is open', () => {
  const trough = zone(
    'Z',
    [
      [0, -10, -10],
      [400, 10, 10],
    ],
    { name: 'trough' },
  );
  const rail = lineMember('M', [500, 0, 0], [900, 0, 0], { stage: 'floor' });
  const shell: Shell = { zones: [trough], members: [rail], nodes: [node('N', [100, 0, 0])] };
  const told = (findings: readonly DecidedFinding[], more: Shell = {}, ...stages: readonly Stage[]) =>
    openItems({ model: modelOf({ ...shell, ...more }, ...stages), findings });

  it('is what errs or is undecided: an error blocks all, a warning close-out', () => {
    const items = told([
      finding('member.odd', ['M']),
      finding('test.failed', ['N'], { severity: 'error' }),
      finding('member.note', ['M'], { severity: 'note' }),
      finding('member.decided', ['M'], { decidedBy: 'NC-1' }),
      finding('record.odd', []),
    ]);
    expect(items).toEqual([
      {
        list: 'punch',
        grade: 'A',
        message: 'test.failed!',
        ids: ['N'],
        who: 'electrician',
        where: 'trough',
        because: 'test.failed',
        place: source.place(),
      },
      expect.objectContaining({ grade: 'B', where: 'stage floor', stage: 'floor', because: 'member.odd', who: 'welder' }),
      expect.objectContaining({ grade: 'B', where: 'papers', because: 'record.odd' }),
    ]);
    expect(items[2]).not.toHaveProperty('stage');
    expect(blocking(items)).toEqual(items);
  });

  it.each([
    ['completion', ['weight.no-rating', 'weld.not-inspected', 'test.missing', 'member.heat-missing', 'weld.joint-unrecorded']],
    ['completion', ['signoff.lapsed', 'weld.continuity-lapsed', 'finding.undecided', 'weight.ticket-stale']],
    ['completion', ['weight.single-weighing', 'order.not-verified', 'panel.bond-not-verified', 'format.unit-missing']],
    ['completion', ['opening.gusset-photo', 'weight.relabel', 'weld.inspection-share', 'service.run-unmarked']],
    ['punch', ['weld.rejected-open', 'access.unreached', 'panel.not-flat', 'test.failed', 'opening.out-of-square']],
    ['punch', ['weight.over-rating', 'x.nothing-like', 'x.missing', 'x.not-verified', 'format.unknown-key']],
  ] as const)('is on the %s list: %j', (list, rules) => {
    for (const rule of rules) expect([rule, told([finding(rule, ['M'])])[0]?.list]).toEqual([rule, list]);
  });

  const signed = (more: Partial<Signoff> = {}): Signoff => ({
    ...record('S-floor'),
    stage: 'floor',
    role: 'inspector',
    by: 'J2',
    date: '2026-05-01',
    ...more,
  });
  const digest = digestFor(modelOf(shell, stage('floor')), { stage: 'floor', by: 'J2', date: '2026-05-01' });
  const floor = stage('floor', 'clamps torqued');
  const tight = { clamps: [{ ...clamp('UB', []), stage: 'floor', torqueNm: 200 }] };

  it('is a stage that nobody has signed, with what its hold points lack', () => {
    const loose = { clamps: [{ ...clamp('UB', []), stage: 'floor' }] };
    const items = told([], loose, floor);
    expect(items).toEqual([
      {
        list: 'completion',
        grade: 'A',
        where: 'stage floor',
        stage: 'floor',
        message: 'Stage floor (The floor) is not signed off: `shellbook signoff T-1 floor --by …`',
        ids: ['floor'],
        who: 'inspector',
        because: 'signoff',
      },
      expect.objectContaining({
        list: 'completion',
        grade: 'B',
        because: 'clamps torqued',
        ids: ['UB'],
        who: 'welder',
        stage: 'floor',
      }),
    ]);
    // What a finding says of the clamp already is not told again.
    expect(told([finding('member.clamp', ['UB'])], loose, floor).map(({ because }) => because)).toEqual([
      'signoff',
      'member.clamp',
    ]);
    // A finding about the stage itself does not hide that it is not signed.
    expect(told([finding('signoff.odd', ['floor'])], tight, floor).map(({ because }) => because)).toEqual([
      'signoff',
      'signoff.odd',
    ]);
  });

  it('is no stage whose signature holds, nor one that has lapsed, which its rule tells', () => {
    expect(told([], { signoffs: [signed({ digest })] }, floor)).toEqual([]);
    expect(told([], { members: [{ ...rail, part: 'other' }], signoffs: [signed({ digest })] }, floor)).toEqual([]);
    expect(told([], { ...tight, signoffs: [signed({ digest, stage: 'belly' })] }, floor).map(({ because }) => because)).toEqual([
      'signoff',
    ]);
  });

  it('is a stage whose signature cannot be compared, by any of its roles', () => {
    const [item, ...more] = told([], { clamps: [{ ...clamp('UB', []), stage: 'floor' }], signoffs: [signed()] }, floor);
    expect(item).toMatchObject({
      grade: 'A',
      because: 'signoff',
      message: expect.stringContaining('no digest to compare'),
    });
    // Signed for, so its hold points were looked at.
    expect(more).toEqual([]);
    const two = [signed({ digest }), signed({ ...record('S-2'), role: 'lead', digest: 'x' })];
    expect(told([], { signoffs: two }, floor).map(({ ids }) => ids)).toEqual([['floor']]);
  });

  it('is what was accepted as it is and not closed: told, and blocking nothing', () => {
    const nc = (id: string, more: Partial<Nonconformance>): Nonconformance => ({
      ...record(id),
      raised: '2026-04-02',
      of: ['M'],
      rules: [],
      description: 'dent',
      tellOwner: false,
      ...more,
    });
    const decided = { decision: 'use as is', approvedBy: 'J2' } as const;
    const items = told([], {
      findings: [
        nc('NC-1', decided),
        nc('NC-2', { ...decided, closed: '2026-05-01' }),
        nc('NC-3', { decision: 'use as is' }),
        nc('NC-4', { approvedBy: 'J2' }),
      ],
    });
    expect(items).toEqual([
      {
        list: 'punch',
        grade: 'C',
        message: 'NC-1: dent; use as is, by J2, raised 2026-04-02, not closed yet',
        ids: ['NC-1', 'M'],
        who: 'inspector',
        where: 'papers',
        because: 'NC-1',
        place: source.place(),
      },
    ]);
    expect(blocking(items)).toEqual([]);
  });

  it('is told in order of what it blocks', () => {
    const items = told(
      [finding('a.b', ['M']), finding('c.d', ['M'], { severity: 'error' }), finding('e.f', ['M'])],
      tight,
      floor,
    );
    expect(items.map(({ grade, because }) => `${grade} ${because}`)).toEqual(['A c.d', 'A signoff', 'B a.b', 'B e.f']);
  });
});
