/** What tells one record from another where it has no id of its own: once for the history, entry and merging. */
import { describe, expect, it } from 'vitest';
import { recordDifferences } from '../../src/history/differences.js';
import { recordsIn } from '../../src/history/records-in.js';
import { calledOf, identityOf } from '../../src/records/identity.js';

const FILE = 'shells/T-1/signoffs.yaml';
const ANN = '{stage: floor, role: inspector, by: ANN, date: 2026-03-31}';
const BEN = '{stage: floor, role: inspector, by: BEN, date: 2026-03-31}';

describe('what tells a record', () => {
  it('is its id where it has one', () => {
    expect(identityOf('weld', { id: 'W-1', process: 'GMAW' })).toBe('W-1');
    expect(identityOf('signoff', { id: 'S-1', stage: 'floor' })).toBe('S-1');
    expect(identityOf('weld', { process: 'GMAW' })).toBeUndefined();
  });

  it('is of a sign-off who signed too, though both are called by stage, role and date', () => {
    expect(recordsIn(FILE, `- ${ANN}\n- ${BEN}\n`).map(({ id }) => id)).toEqual([
      'floor/inspector/2026-03-31',
      'floor/inspector/2026-03-31',
    ]);
    expect(calledOf('signoff', { stage: 'floor', role: 'inspector', by: 'ANN', date: '2026-03-31' })).toBe(
      'floor/inspector/2026-03-31',
    );
  });

  it('so that a second signer of one day is one that was added', () => {
    const [before, after] = [`- ${ANN}\n`, `- ${ANN}\n- ${BEN}\n`].map((text) => recordsIn(FILE, text));
    expect(recordDifferences(before ?? [], after ?? []).map(({ kind, change, now }) => [kind, change, now?.data])).toEqual([
      ['signoff', 'added', expect.objectContaining({ by: 'BEN' })],
    ]);
  });

  it('is of a rule of the library the rule it is for, of a loading condition its name', () => {
    expect(identityOf('rule', { rule: 'weight.relabel', limit: '100 lb' })).toBe('weight.relabel');
    expect(identityOf('loading condition', { name: 'travel' })).toBe('travel');
    expect(calledOf('member', {})).toBe('?');
  });
});
