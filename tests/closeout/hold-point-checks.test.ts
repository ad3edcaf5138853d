import { describe, expect, it } from 'vitest';
import { unmetHoldPoints } from '../../src/closeout/hold-points.js';
import type { HoldPoint } from '../../src/records/hold-point.js';
import type { Inspection, Nonconformance, Panel, Photo, Test } from '../../src/records/index.js';
import type { DecidedFinding } from '../../src/rules/decide.js';
import { record } from '../support/build.js';
import { levelPanel, node, run, zone } from '../support/services.js';
import { clamp, opening, weld } from '../support/structure.js';
import { finding, modelOf, type Shell, stage, VT } from './stages.js';

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
