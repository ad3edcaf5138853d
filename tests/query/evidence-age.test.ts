import { describe, expect, it } from 'vitest';
import type { Model } from '../../src/model/shell.js';
import { evidenceAge } from '../../src/query/evidence-age.js';
import { buildModel } from '../support/build.js';
import { node, run } from '../support/services.js';

describe('what is told beside a photo or a test', () => {
  const model = (more: Partial<Model>): Model => ({
    ...buildModel({ runs: [run('R-1', node('A', [0, 0, 0]), node('B', [1000, 0, 0]))] }),
    ...more,
  });
  it('nothing, where it came in time and nothing has changed', () => {
    const entered = new Map([['P-1', { date: '2026-04-10T08:00:00+00:00', who: 'K. Marrow' }]]);
    expect(evidenceAge(model({ entered }), 'P-1', ['R-1'], '2026-04-08')).toEqual({ changed: [], early: [] });
  });
  it('who entered it late, and how late', () => {
    const entered = new Map([['P-1', { date: '2026-05-10T08:00:00+00:00', who: 'K. Marrow' }]]);
    expect(evidenceAge(model({ entered }), 'P-1', ['R-1'], '2026-04-08').late).toEqual({
      entered: '2026-05-10',
      days: 32,
      who: 'K. Marrow',
    });
  });
  it('what has changed since', () => {
    const changes = new Map([['R-1', { day: '2026-06-01', commit: 'a' }]]);
    expect(evidenceAge(model({ changes }), 'P-1', ['R-1'], '2026-04-08').changed).toEqual([{ id: 'R-1', day: '2026-06-01' }]);
    expect(evidenceAge(model({ changes }), 'P-1', ['R-1'], '2026-06-01').changed).toEqual([]);
  });
  it('what was built only after it', () => {
    const built = buildModel({ runs: [{ ...run('R-1', node('A', [0, 0, 0]), node('B', [1000, 0, 0])), date: '2026-06-01' }] });
    expect(evidenceAge(built, 'P-1', ['R-1'], '2026-04-08')).toEqual({ changed: [], early: [{ id: 'R-1', day: '2026-06-01' }] });
    expect(evidenceAge(built, 'P-1', ['R-1'], '2026-06-01').early).toEqual([]);
  });
});
