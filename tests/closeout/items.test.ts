import { describe, expect, it } from 'vitest';
import { dutyOf } from '../../src/closeout/duty.js';
import { unmetHoldPoints } from '../../src/closeout/hold-points.js';
import { blocking, holdPointItems, openItems } from '../../src/closeout/items.js';
import { digestFor, missingFor, unsignedBefore } from '../../src/closeout/sign.js';
import type { HoldPoint } from '../../src/records/hold-point.js';
import type { Inspection, Nonconformance, Panel, Person, Photo, Signoff, Stage, Test } from '../../src/records/index.js';
import type { DecidedFinding } from '../../src/rules/decide.js';
import { buildModel, record, source } from '../support/build.js';
import { levelPanel, node, run, zone } from '../support/services.js';
import { clamp, lineMember, opening, weld } from '../support/structure.js';

const stage = (id: string, ...holdPoints: readonly HoldPoint[]): Stage => ({ ...record(id), name: `The ${id}`, holdPoints });
const person = (id: string, role: string): Person => ({ ...record(id), name: id, role, qualified: [] });
const people = new Map(
  [person('K7', 'welder'), person('E1', 'electrician'), person('J2', 'inspector')].map((one) => [one.id, one]),
);
const finding = (rule: string, ids: readonly string[], more: Partial<DecidedFinding> = {}): DecidedFinding => ({
  rule,
  severity: 'warning',
  message: `${rule}!`,
  ids,
  place: source.place(),
  ...more,
});
type Shell = Parameters<typeof buildModel>[0];
const modelOf = (shell: Shell, ...stages: readonly Stage[]) => buildModel(shell, { people, stages });
const VT = (result: Inspection['result'], more: Partial<Inspection> = {}): Inspection => ({
  method: 'VT',
  by: 'J2',
  date: '2026-03-02',
  result,
  ...more,
});

describe('whose it is to put right', () => {
  const [a, b] = [node('A', [0, 0, 0]), node('B', [0, 0, 0], { by: 'E1' })];
  const model = modelOf({
    members: [lineMember('M', [0, 0, 0], [1, 0, 0])],
    panels: [levelPanel('P', [0, 0, 0], [9, 9])],
    openings: [opening('SO')],
    clamps: [clamp('UB', [])],
    zones: [
      zone('Z', [
        [0, 0, 0],
        [1, 1, 1],
      ]),
    ],
    nodes: [a, b, node('GHOST', [0, 0, 0], { by: 'X9' })],
    runs: (['ac', 'data', 'water', 'drain', 'gas', 'air', 'hydraulic', 'refrigerant', 'duct'] as const).map((medium) =>
      run(medium, a, b, [], { medium }),
    ),
    welds: [weld('W', [['M', 'M']], { welder: 'K7' }), weld('W-0', [['M', 'M']], { by: 'E1' })],
    tests: [{ ...record('T'), testKind: 'drop', of: ['A'], by: 'E1' }],
    findings: [],
  });

  // Trades by what they work on: common practice, no source
  it.each([
    ['trade', 'M', 'welder'],
    ['trade', 'SO', 'welder'],
    ['trade', 'UB', 'welder'],
    ['trade', 'P', 'skins and bonding'],
    ['trade', 'A', 'electrician'],
    ['trade', 'ac', 'electrician'],
    ['trade', 'data', 'electrician'],
    ...['water', 'drain', 'gas', 'air', 'hydraulic', 'refrigerant', 'duct'].map(
      (id) => ['trade', id, 'plumber and gas fitter'] as const,
    ),
    ['trade', 'Z', 'shop administrator'],
    ['trade', 'nowhere', 'shop administrator'],
    ['trade', 'GHOST', 'electrician'],
    ['trade', 'W', 'welder (K7)'],
    ['trade', 'W-0', 'shop administrator'],
    ['trade', 'B', 'electrician (E1)'],
    ['trade', 'T', 'electrician (E1)'],
    ['inspector', 'W', 'inspector'],
    ['inspector', 'nowhere', 'inspector'],
    ['administrator', 'W', 'shop administrator'],
  ] as const)('%s for %s: %s', (duty, id, who) => {
    expect(dutyOf(duty, [id], model)).toBe(who);
    expect(dutyOf(duty, ['no-such-id', id], model)).toBe(who);
  });

  it('of a trade is the administrator’s where no record is named', () => {
    expect(dutyOf('trade', [], model)).toBe('shop administrator');
  });

  it.each([
    ['test.not-verified', 'T', 'electrician (E1)'],
    ['weld.fillet-small', 'W', 'welder (K7)'],
    ['weld.not-inspected', 'W', 'inspector'],
    ['panel.bond-not-verified', 'P', 'inspector'],
    ['signoff.lapsed', 'M', 'inspector'],
    ['finding.undecided', 'nowhere', 'inspector'],
    ['format.unit-missing', 'W', 'shop administrator'],
    ['shell.vin-form', 'W', 'shop administrator'],
    ['weight.over-rating', 'W', 'shop administrator'],
    ['record.vin-twice', 'W', 'shop administrator'],
  ])('%s of %s is told to the %s, as the rule declares', (rule, id, who) => {
    expect(openItems({ model, findings: [finding(rule, [id])] })[0]?.who).toBe(who);
  });
});

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

describe('what keeps a stage from being signed', () => {
  const signing = { stage: 'floor', by: 'J2', date: '2026-05-01' };
  const rail = lineMember('M', [0, 0, 0], [900, 0, 0], { stage: 'floor' });
  const other = lineMember('X', [0, 0, 0], [900, 0, 0], { stage: 'walls' });
  const missing = (shell: Shell, findings: readonly DecidedFinding[] = [], by = 'J2') =>
    missingFor(
      { model: modelOf({ members: [rail, other], ...shell }, stage('floor'), stage('walls')), findings },
      { ...signing, by },
    );

  it('is an error in what the signature would cover, and nothing that only the signature clears', () => {
    const error = { severity: 'error' } as const;
    expect(missing({}, [finding('member.odd', ['M'], error)]).map(({ because }) => because)).toEqual(['member.odd']);
    expect(missing({}, [finding('member.odd', ['X'], error), finding('member.odd', [], error)])).toEqual([]);
    expect(missing({}, [finding('member.odd', ['M'])])).toEqual([]);
    expect(missing({}, [finding('signoff.lapsed', ['M'], error)])).toEqual([]);
    // The stage that is not signed is no reason against signing it, not even where a record of it is called like the stage.
    expect(missing({})).toEqual([]);
    expect(missing({ members: [{ ...rail, id: 'floor' }] })).toEqual([]);
  });

  it('is what its hold points lack', () => {
    const model = modelOf(
      { members: [rail], clamps: [{ ...clamp('UB', []), stage: 'floor' }] },
      stage('floor', 'clamps torqued'),
    );
    const lacking = missingFor({ model, findings: [] }, signing);
    expect(lacking).toEqual(holdPointItems({ model, findings: [] }, 'floor'));
    expect(lacking.map(({ ids }) => ids)).toEqual([['UB']]);
  });

  it('is the signer’s own welding', () => {
    const W = (id: string, welder: string, more = {}) => weld(id, [['M', 'M']], { welder, ...more });
    expect(missing({ welds: [W('W-1', 'J2'), W('W-2', 'K7')] })).toEqual([
      {
        list: 'completion',
        grade: 'A',
        message: 'J2 welded W-1 of this stage, expected somebody else to sign it',
        ids: ['W-1'],
        who: 'inspector',
        where: 'stage floor',
        because: 'signoff',
        stage: 'floor',
      },
    ]);
    expect(missing({ welds: [W('W-1', 'J2'), W('W-2', 'J2')] })[0]).toMatchObject({
      message: 'J2 welded 2 welds of this stage, expected somebody else to sign it',
      ids: ['W-1', 'W-2'],
    });
    expect(missing({ welds: [W('W-1', 'J2', { stage: 'walls' }), W('W-2', 'K7')] })).toEqual([]);
  });

  it('are not the stages before it, which are told', () => {
    const stages = [stage('floor'), stage('walls'), stage('belly')];
    const signoffs = [{ ...record('S'), stage: 'floor', role: 'lead', by: 'J2', date: '2026-01-01' }];
    expect(unsignedBefore(modelOf({}, ...stages), 'belly')).toEqual(['floor', 'walls']);
    expect(unsignedBefore(modelOf({ signoffs }, ...stages), 'belly')).toEqual(['walls']);
    expect(unsignedBefore(modelOf({}, ...stages), 'floor')).toEqual([]);
    expect(unsignedBefore(modelOf({}, ...stages), 'unheard of')).toEqual([]);
  });
});

describe('a hold point', () => {
  const lacks = (holdPoint: HoldPoint, shell: Shell, findings: readonly DecidedFinding[] = []) =>
    unmetHoldPoints({ model: modelOf(shell, stage('walls', 'weighed'), stage('floor', holdPoint)), findings }, 'floor').map(
      ({ message }) => message,
    );

  it('is each in the shop’s words; a stage that the library does not know has none', () => {
    expect(unmetHoldPoints({ model: modelOf({}), findings: [] }, 'floor')).toEqual([]);
    const [lack] = unmetHoldPoints({ model: modelOf({}, stage('floor', 'weighed')), findings: [] }, 'floor');
    expect(lack).toMatchObject({ holdPoint: 'weighed', ids: ['T-1'] });
    expect(unmetHoldPoints({ model: modelOf({}, stage('floor', 'glued')), findings: [] }, 'floor')[0]?.ids).toEqual([]);
  });

  it('is a check by its own phrase or by `check`; words that only speak of such a thing ask for a test so named', () => {
    for (const words of ['all welds accepted', 'weld log', 'photo', 'weigh slip', 'openings'])
      expect(lacks(words, {})[0]).toMatch(/^No passed test of kind/u);
    expect(lacks({ check: 'weighed', words: 'glued' }, {})[0]).toContain('No scale ticket is for stage floor');
    expect(lacks('tests before close-in', {})).toEqual([]);
    expect(lacks('services tested before cover', {})).toEqual([]);
  });

  it('of welds goes by the last visual look at each of the stage', () => {
    const looked = (...inspections: readonly Inspection[]) =>
      lacks('Welds accepted', {
        welds: [
          { ...weld('W', [['A', 'B']], { inspections }), stage: 'floor' },
          { ...weld('Y', [['A', 'B']]), stage: 'walls' },
        ],
      });
    const expected = 'expected a visual inspection that accepts it';
    expect(looked()).toEqual([`Weld W was not looked at, ${expected}`]);
    expect(looked(VT('accept'))).toEqual([]);
    expect(looked(VT('accept', { method: ' Visual ' }))).toEqual([]);
    expect(looked(VT('accept'), VT('reject'))).toEqual([`Weld W was rejected on 2026-03-02, ${expected}`]);
    expect(looked(VT('reject'), VT('accept'))).toEqual([]);
    expect(looked(VT('accept', { method: 'PT' }))).toEqual([`Weld W was not looked at, ${expected}`]);
    expect(looked(VT('accept', { method: 'VT2' }))).toHaveLength(1);
    expect(looked(VT('accept', { method: 'no visual' }))).toHaveLength(1);
    expect(looked(VT('accept'), VT('reject', { method: 'PT' }))).toEqual([]);
  });

  it('of clamps is met by a torque, in any of its words', () => {
    for (const words of ['clamps torqued', 'U-bolts torqued', { check: 'clamps torqued', words: 'Torque log' }] as const) {
      expect(lacks(words, { clamps: [{ ...clamp('UB', []), stage: 'floor' }] })).toHaveLength(1);
      expect(lacks(words, { clamps: [{ ...clamp('UB', []), stage: 'floor', torqueNm: 200 }] })).toEqual([]);
    }
  });

  it('of openings is kept open by what a rule says of one of them, undecided', () => {
    const measured = { diagonalsMm: [2236, 2236], headerSag: [] } as const;
    const shell = { openings: [{ ...opening('SO', { measured }), stage: 'floor' }] };
    const judged = (...given: Parameters<typeof finding>) => lacks('openings square', shell, [finding(...given)]);
    expect(judged('opening.out-of-square', ['SO'])).toEqual(['opening.out-of-square!']);
    expect(judged('opening.out-of-square', ['SO'], { severity: 'note' })).toEqual([]);
    expect(judged('opening.out-of-square', ['SO'], { decidedBy: 'NC-1' })).toEqual([]);
    expect(judged('opening.out-of-square', ['SO-2', 'SO'])).toEqual([]);
    expect(judged('member.opening.odd', ['SO'])).toEqual([]);
  });

  it('of bonds looks at bonded panels and at the coupon that each names', () => {
    const coupon: Test = {
      ...record('T-1'),
      testKind: 'coupon pull',
      of: ['P'],
      limit: { value: 5, dimension: 'count', text: '5' },
      measured: { value: 9, dimension: 'count', text: '9' },
      date: '2026-03-01',
    };
    const failed: Test = { ...coupon, ...record('T-0'), measured: { value: 1, dimension: 'count', text: '1' } };
    const bonded = (more: Partial<Panel>) =>
      lacks('bond coupons', {
        tests: [failed, coupon],
        panels: [{ ...levelPanel('P', [0, 0, 0], [9, 9]), stage: 'floor', ...more }],
      });
    expect(bonded({})).toEqual([]);
    expect(bonded({ fixing: { method: 'screws' } })).toEqual([]);
    const fixing = { method: 'bonded' };
    expect(bonded({ fixing })[0]).toContain('its bond is not on record');
    expect(bonded({ fixing, bond: {} })[0]).toContain('no coupon is named');
    expect(bonded({ fixing, bond: { coupon: 'T-0' } })[0]).toContain('coupon T-0 did not pass');
    expect(bonded({ fixing, bond: { coupon: 'T-1' } })).toEqual([]);
  });

  describe('before a close-in', () => {
    const [a, b] = [node('A', [10, 0, 0]), node('B', [90, 0, 0])];
    const cavity = zone(
      'Z',
      [
        [0, -50, -50],
        [100, 50, 50],
      ],
      { closedBy: ['P'] },
    );
    const shell = (more: Shell = {}): Shell => ({
      zones: [cavity],
      panels: [{ ...levelPanel('P', [50, 0, -50], [100, 100]), stage: 'floor', date: '2026-04-10' }],
      runs: [run('R', a, b, [], { zones: ['Z'] })],
      ...more,
    });
    const photo = (id: string, more: Partial<Photo>): Photo => ({ ...record(id), file: `${id}.jpg`, of: [], ...more });
    const passed = (date: string | undefined): Test => ({
      ...record('T'),
      testKind: 'rain',
      of: ['R'],
      limit: { value: 0, dimension: 'count', text: '0' },
      measured: { value: 0, dimension: 'count', text: '0' },
      ...(date === undefined ? {} : { date }),
    });

    it.each<HoldPoint>([
      'photos before close-in',
      ' Photos before close-in',
      { check: 'photos before close-in', words: 'Before skins, pictures' },
    ])('%o: a picture of the run or its cavity, of that day or earlier', (words) => {
      const pictured = (taken: string | undefined, of = 'R') =>
        lacks(words, shell({ photos: [photo('F', { of: [of], ...(taken === undefined ? {} : { taken }) })] }));
      expect(pictured('2026-04-10')).toEqual([]);
      expect(pictured('2026-04-10', 'Z')).toEqual([]);
      expect(pictured('2026-04-11')).toEqual([
        'Run R was first photographed on 2026-04-11, expected on or before 2026-04-10, when P closed it in',
      ]);
      expect(pictured(undefined)).toEqual(['Run R has no dated photo, expected one of before P closed it in']);
      expect(pictured('2026-04-01', 'elsewhere')).toHaveLength(1);
    });

    it('tests: one that passed, of that day or earlier, of what can be tested', () => {
      const tested = (date: string | undefined, more: Shell = {}) =>
        lacks('Tests passed before close-in', shell({ tests: [passed(date)], ...more }));
      expect(tested('2026-04-10')).toEqual([]);
      expect(tested('2026-04-11')[0]).toContain('Run R was first tested on 2026-04-11');
      expect(tested(undefined)[0]).toContain('Run R has no dated passed test');
      expect(tested('2026-04-01', { tests: [] })).toHaveLength(1);
      expect(tested(undefined, { runs: [run('R', a, b, [], { zones: ['Z'], medium: 'duct' })] })).toEqual([]);
    });

    it('a late one that the shop has decided is met, and one not closed in yet is in time', () => {
      const late = shell({ photos: [photo('F', { of: ['R'], taken: '2026-05-01' })] });
      const decided = (rule: string, ids: readonly string[], decidedBy?: string) =>
        lacks('photos before close-in', late, [finding(rule, ids, decidedBy === undefined ? {} : { decidedBy })]).length;
      expect(decided('order.photo-late', ['R'], 'NC-1')).toBe(0);
      expect(decided('order.photo-late', ['R'])).toBe(1);
      expect(decided('order.photo-late', ['B', 'R'], 'NC-1')).toBe(1);
      expect(decided('access.order.odd', ['R'], 'NC-1')).toBe(1);
      const open = { ...late, panels: [{ ...levelPanel('P', [50, 0, -50], [100, 100]), stage: 'floor' }] };
      expect(lacks('photos before close-in', open)).toEqual([]);
    });

    it('is asked of the stage whose panels close it, of one of several too', () => {
      const two = shell({
        zones: [{ ...cavity, closedBy: ['P', 'Q'] }],
        panels: [
          { ...levelPanel('P', [50, 0, -50], [100, 100]), stage: 'floor' },
          { ...levelPanel('Q', [50, 0, 50], [100, 100]), stage: 'walls' },
        ],
      });
      expect(lacks('photos before close-in', two)).toEqual([
        'Run R has no dated photo, expected one of before P, Q closed it in',
      ]);
      const elsewhere = shell({ panels: [{ ...levelPanel('P', [50, 0, -50], [100, 100]), stage: 'walls' }] });
      expect(lacks('photos before close-in', elsewhere)).toEqual([]);
      expect(lacks('tests before close-in', elsewhere)).toEqual([]);
    });

    it('photos: any picture of the stage, of something of it, of its panels or of a cavity with its runs', () => {
      const own = { runs: [{ ...run('R', a, b, [], { zones: ['Z'] }), stage: 'floor' }, run('R-2', a, b, [], { zones: ['Y'] })] };
      const pictured = (more: Partial<Photo>, panel: Partial<Panel> = {}) =>
        lacks(
          'Photos',
          shell({
            ...own,
            photos: [photo('F', more)],
            panels: [{ ...levelPanel('P', [50, 0, -50], [9, 9]), stage: 'floor', ...panel }],
          }),
        );
      const none = ['No photo shows anything of stage floor, expected at least one photo'];
      expect(pictured({})).toEqual(none);
      expect(pictured({ of: ['nowhere'] })).toEqual(none);
      expect(pictured({ of: ['Y'] })).toEqual(none);
      expect(pictured({ stage: 'walls' })).toEqual(none);
      expect(pictured({ stage: 'floor' })).toEqual([]);
      expect(pictured({ of: ['nowhere', 'R'] })).toEqual([]);
      expect(pictured({ of: ['Z'] })).toEqual([]);
      expect(pictured({}, { photos: ['F'] })).toEqual([]);
      expect(lacks('Photos', shell({ ...own, photos: [photo('F', { of: ['R'] }), photo('G', {})] }))).toEqual([]);
      expect(pictured({}, { photos: ['F'], stage: 'walls' })).toEqual(none);
    });
  });

  it('of weighing: a ticket of the stage; the bare chassis by its own readings', () => {
    const ticket = (of: string) => ({ tickets: [{ ...record('T-5'), stage: of, date: '2026-03-01' }] }) as unknown as Shell;
    expect(lacks('weighed', ticket('floor'))).toEqual([]);
    expect(lacks('weighed', ticket('walls'))).toHaveLength(1);
    expect(lacks('Bare chassis weighed', ticket('floor'))[0]).toContain('The bare chassis is not weighed');
    const bare = { chassis: { frame: {}, axles: [], bare: { readings: {} } } } as unknown as Shell;
    expect(lacks('Bare chassis weighed', bare)).toEqual([]);
    expect(lacks('weighed', bare)).toHaveLength(1);
  });

  it('of findings: each decided, and approved', () => {
    const nc = (more: Partial<Nonconformance>) => ({
      findings: [
        { ...record('NC-1'), raised: '2026-04-02', of: ['A', 'B'], rules: [], description: 'dent', tellOwner: false, ...more },
      ],
    });
    const told = ['Finding NC-1 of A, B is not decided, expected `decision` and `approved_by`'];
    expect(lacks('findings decided', nc({}))).toEqual(told);
    expect(lacks({ check: 'findings decided', words: 'Nonconformances closed' }, nc({ decision: 'rework' }))).toEqual(told);
    expect(lacks('Findings decided', nc({ approvedBy: 'J2' }))).toEqual(told);
    expect(lacks('Findings decided', nc({ decision: 'rework', approvedBy: 'J2' }))).toEqual([]);
  });

  it('in the shop’s own words asks for a passed test of each kind named, of something of the stage', () => {
    const count = (value: number) => ({ value, dimension: 'count', text: String(value) });
    const test = (testKind: string, more: Partial<Test> = {}): Test => ({
      ...record(`T-${testKind}`),
      testKind,
      of: ['R'],
      limit: count(1),
      measured: count(1),
      date: '2026-03-01',
      ...more,
    });
    const [a, b] = [node('A', [0, 0, 0]), node('B', [1, 0, 0])];
    const shell = (...tests: readonly Test[]): Shell => ({
      tests,
      runs: [
        { ...run('R', a, b, [], { circuit: 'C' }), stage: 'floor' },
        { ...run('R-2', a, b, [], { circuit: 'D' }), stage: 'walls' },
      ],
    });
    const kinds = (holdPoint: string, ...tests: readonly Test[]) =>
      lacks(holdPoint, shell(...tests)).map((message) => /kind `([^`]*)`/u.exec(message)?.[1]);
    expect(kinds('continuity and polarity tests', test('continuity'))).toEqual(['polarity']);
    expect(kinds('Continuity, polarity', test('continuity'), test('polarity'))).toEqual([]);
    expect(kinds('rain test passed')).toEqual(['rain']);
    expect(kinds('rain test', test('Rain, 30 min'))).toEqual([]);
    expect(kinds('pressure test', test('drop'))).toEqual([]);
    expect(kinds('pressure test', test('leak'))).toEqual(['pressure']);
    expect(kinds('travel of the slide', test('travel, long slide'))).toEqual([]);
    expect(kinds('travel of the slide', test('slide travel'))).toEqual(['travel slide']);
    expect(kinds('rains', test('rain'))).toEqual([]);
    expect(kinds('header sags', test('header sag'))).toEqual([]);
    // Words that only begin or end like filling ones are kinds.
    expect(kinds('wall test')).toEqual(['wall']);
    expect(kinds('alloy test')).toEqual(['alloy']);
    expect(kinds('rain', test('rain', { measured: count(2) }))).toEqual(['rain']);
    // Of the stage: by its own word, by what it is of, by a circuit that runs in it.
    expect(kinds('rain', test('rain', { of: ['C'] }))).toEqual([]);
    expect(kinds('rain', test('rain', { of: ['D', 'R-2'] }))).toEqual(['rain']);
    expect(kinds('rain', test('rain', { of: ['R-2', 'R'] }))).toEqual([]);
    expect(kinds('rain', test('rain', { of: ['R-2'], stage: 'floor' }))).toEqual([]);
    expect(kinds('rain', test('rain', { of: ['R-2'], stage: 'walls' }))).toEqual(['rain']);
  });
});
