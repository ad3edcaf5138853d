import { describe, expect, it } from 'vitest';
import type { Nonconformance, Signoff, Weld } from '../../../src/records/index.js';
import { blocks, countFindings, decide } from '../../../src/rules/decide.js';
import { noReinspection } from '../../../src/rules/finding/no-reinspection.js';
import { undecided } from '../../../src/rules/finding/undecided.js';
import { buildModel, record, source } from '../../support/build.js';
import { judgeOne } from '../judge-one.js';

const weld: Weld = {
  ...record('W-1'),
  stage: 'walls',
  joins: [['A', 'B']],
  type: 'fillet',
  sizeMm: 6,
  lengthMm: 100,
  sides: 'arrow',
  process: 'GMAW',
  allRound: false,
  inspections: [{ method: 'VT', by: 'J1', date: '2026-02-11', result: 'reject' }],
};
const raised: Nonconformance = {
  ...record('NC-1'),
  raised: '2026-02-11',
  of: ['W-1'],
  rules: [],
  description: 'undercut',
  tellOwner: false,
};
const signoff: Signoff = { ...record('S-1'), stage: 'walls', role: 'inspector', by: 'J1', date: '2026-03-01' };

describe('finding.undecided', () => {
  it('warns while the stage is open, and is an error once it is signed off', () => {
    expect(judgeOne(undecided, buildModel({ welds: [weld], findings: [raised] }))[0]?.severity).toBe('warning');
    expect(judgeOne(undecided, buildModel({ welds: [weld], findings: [raised], signoffs: [signoff] }))[0]?.severity).toBe(
      'error',
    );
  });

  it('wants a decision and someone who approved it', () => {
    const half: Nonconformance = { ...raised, decision: 'repair' };
    expect(judgeOne(undecided, buildModel({ findings: [half] }))[0]?.message).toContain('that nobody approved');
    expect(judgeOne(undecided, buildModel({ findings: [{ ...half, approvedBy: 'J1' }] }))).toEqual([]);
  });
});

describe('finding.no-reinspection', () => {
  const repaired: Nonconformance = { ...raised, decision: 'repair', approvedBy: 'J1', closed: '2026-02-12' };

  it('warns where nobody looked again', () => {
    expect(judgeOne(noReinspection, buildModel({ welds: [weld], findings: [repaired] }))[0]?.ids).toEqual(['NC-1', 'W-1']);
  });

  it('passes with an accepted inspection on or after the day it was raised', () => {
    const again: Weld = {
      ...weld,
      inspections: [...weld.inspections, { method: 'VT', by: 'J1', date: '2026-02-12', result: 'accept' }],
    };
    const before: Weld = { ...weld, inspections: [{ method: 'VT', by: 'J1', date: '2026-02-10', result: 'accept' }] };
    expect(judgeOne(noReinspection, buildModel({ welds: [again], findings: [repaired] }))).toEqual([]);
    expect(judgeOne(noReinspection, buildModel({ welds: [before], findings: [repaired] }))).toHaveLength(1);
  });

  it('asks nothing of what is used as is, or still open', () => {
    const { closed: _closed, ...open } = repaired;
    const asIs: Nonconformance = { ...repaired, decision: 'use as is' };
    expect(judgeOne(noReinspection, buildModel({ findings: [open, asIs] }))).toEqual([]);
  });
});

describe('a decision about a warning', () => {
  const warning = { rule: 'opening.sag', severity: 'warning', message: '', ids: ['SO-1'], place: source.place() } as const;
  const decision: Nonconformance = { ...raised, of: ['SO-1'], rules: ['opening.sag'], decision: 'use as is', approvedBy: 'J1' };

  it('settles it by rule and record', () => {
    const decided = decide([warning], [decision]);
    expect(decided[0]?.decidedBy).toBe('NC-1');
    expect(countFindings(decided)).toEqual({ error: 0, warning: 1, note: 0, decided: 1 });
    expect(blocks(countFindings(decided))).toBe(false);
  });

  it.each([
    ['another rule', { rules: ['opening.out-of-square'] }],
    ['another record', { of: ['SO-2'] }],
    ['nobody who approved it', { approvedBy: undefined }],
    ['no decision', { decision: undefined }],
  ])('leaves it open with %s', (_why, changed) => {
    const decided = decide([warning], [{ ...decision, ...changed } as Nonconformance]);
    expect(blocks(countFindings(decided))).toBe(true);
  });

  it('never settles an error', () => {
    expect(decide([{ ...warning, severity: 'error' }], [decision])[0]?.decidedBy).toBeUndefined();
  });
});
