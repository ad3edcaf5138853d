import { describe, expect, it } from 'vitest';
import type { Model } from '../../../src/model/shell.js';
import type { NodeKind } from '../../../src/records/index.js';
import { accessPanel, levelPanel, node, zone } from '../../support/services.js';
import { judged } from '../service/judge.js';

const trough = zone(
  'TROUGH',
  [
    [0, -400, 0],
    [4000, 400, 600],
  ],
  { closedBy: ['BP'] },
);
const belly = levelPanel('BP', [2000, 0, 0], [4000, 800]);
const panel = accessPanel('AP', [1000, 0, 0], [300, 250], { of: 'BP' });
const lid = levelPanel('LID', [2000, 0, 60], [4000, 800], { panelKind: 'interior' });
const shell = (more: Partial<Model['shell']>) => ({ zones: [trough], panels: [belly, panel], ...more });

describe('access.unreached', () => {
  it('tells a concealed splice that no panel reaches, and how near the best is', () => {
    const [finding] = judged('access.unreached', shell({ nodes: [node('S', [2000, 0, 100])] }));
    expect(finding).toMatchObject({ severity: 'error', ids: ['S', 'AP'] });
    expect(finding?.message).toMatch(/the best, AP, is 856 mm away, beyond/u);
  });

  it('tells one that no panel is near, and one that is blocked', () => {
    expect(judged('access.unreached', shell({ nodes: [node('S', [3900, 0, 100])] }))[0]?.message).toContain(
      'no access panel is near',
    );
    expect(
      judged('access.unreached', shell({ panels: [belly, panel, lid], nodes: [node('S', [1000, 0, 300])] }))[0]?.message,
    ).toContain('LID stands in the way');
  });

  it('lets what is reached, what is open, and what needs no hand', () => {
    const kinds: readonly NodeKind[] = ['load', 'source', 'fitting'];
    expect(judged('access.unreached', shell({ nodes: [node('S', [1000, 0, 300]), node('OPEN', [3900, 0, 900])] }))).toEqual([]);
    expect(
      judged('access.unreached', shell({ nodes: kinds.map((nodeKind) => node(nodeKind, [3900, 0, 100], { nodeKind })) })),
    ).toEqual([]);
  });

  it('wants a hand on every gas fitting, and on each kind that is remade, shut or measured', () => {
    const kinds: readonly NodeKind[] = [
      'splice',
      'valve',
      'junction',
      'connector',
      'terminal',
      'drain',
      'device',
      'panel',
      'test-point',
    ];
    const nodes = kinds.map((nodeKind) => node(nodeKind, [3900, 0, 100], { nodeKind }));
    expect(judged('access.unreached', shell({ nodes })).map((finding) => finding.ids[0])).toEqual(kinds);
    const fitting = node('F', [3900, 0, 100], { nodeKind: 'fitting', medium: 'gas' });
    expect(judged('access.unreached', shell({ nodes: [fitting] }))).toHaveLength(1);
  });
});

describe('access.named-panel-does-not-reach', () => {
  const named = (at: readonly [number, number, number], id: string, more: Partial<Model['shell']> = {}) =>
    judged('access.named-panel-does-not-reach', shell({ nodes: [node('S', at, { panel: id })], ...more }));

  it('tells a panel too far, and the one that would do', () => {
    const near = accessPanel('AP-2', [2800, 0, 0], [300, 250], { of: 'BP' });
    const [finding] = named([2800, 0, 100], 'AP', { panels: [belly, panel, near] });
    expect(finding).toMatchObject({ severity: 'warning', ids: ['S', 'AP'] });
    expect(finding?.message).toContain('write `panel: AP-2`');
  });

  it('tells one that is blocked, and one that is no access panel', () => {
    expect(named([1000, 0, 300], 'AP', { panels: [belly, panel, lid] })[0]?.message).toContain('LID stands in the way');
    expect(named([1000, 0, 100], 'BP')[0]?.message).toContain('a belly panel, no access panel');
  });

  it('passes one that reaches', () => {
    expect(named([1000, 0, 300], 'AP')).toEqual([]);
  });
});

describe('access.blocked', () => {
  it('names what stands in the way of the only panel near enough', () => {
    const [finding] = judged('access.blocked', shell({ panels: [belly, panel, lid], nodes: [node('S', [1000, 0, 300])] }));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['S', 'AP', 'LID'] });
  });

  it('is silent where another panel reaches, or none is near', () => {
    const side = accessPanel('AP-2', [1000, 0, 500], [300, 250], { facing: 'up' });
    expect(judged('access.blocked', shell({ panels: [belly, panel, lid, side], nodes: [node('S', [1000, 0, 300])] }))).toEqual(
      [],
    );
    expect(judged('access.blocked', shell({ nodes: [node('S', [3900, 0, 300])] }))).toEqual([]);
  });
});

describe('access.no-panel-over-bay, access.not-verified', () => {
  it('wants an access panel onto each bay that belly panels close', () => {
    expect(judged('access.no-panel-over-bay', shell({}))).toEqual([]);
    expect(judged('access.no-panel-over-bay', shell({ panels: [belly] }))[0]).toMatchObject({
      severity: 'warning',
      ids: ['TROUGH', 'BP'],
    });
    const bay = zone(
      'BAY',
      [
        [3000, -400, 0],
        [4000, 400, 600],
      ],
      { closedBy: ['BP'] },
    );
    expect(judged('access.no-panel-over-bay', shell({ zones: [bay] }))[0]?.ids[0]).toBe('BAY');
  });

  it('says so where no cavity is recorded', () => {
    expect(judged('access.not-verified', { nodes: [node('S', [0, 0, 0])] })[0]?.severity).toBe('note');
    expect(judged('access.not-verified', shell({ nodes: [node('S', [0, 0, 0])] }))).toEqual([]);
    expect(judged('access.not-verified', {})).toEqual([]);
  });
});
