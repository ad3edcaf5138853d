import { describe, expect, it } from 'vitest';
import { holdPointItems } from '../../src/closeout/items.js';
import { missingFor, unsignedBefore } from '../../src/closeout/sign.js';
import type { DecidedFinding } from '../../src/rules/decide.js';
import { record } from '../support/build.js';
import { clamp, lineMember, weld } from '../support/structure.js';
import { finding, modelOf, type Shell, stage } from './stages.js';

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
