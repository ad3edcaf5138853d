import { describe, expect, it } from 'vitest';
import { where } from '../../../src/query/lookup/where.js';
import type { Weld } from '../../../src/records/index.js';
import { record } from '../../support/build.js';
import { accessPanel, circuit, component, node, run, zone } from '../../support/services.js';
import { lineMember, sections } from '../../support/structure.js';
import { assessment } from './assessment.js';

const cavity = zone('Z', [
  [0, -400, 0],
  [6000, 400, 600],
]);
const fuse = { protection: { kind: 'fuse', ratingA: 15, at: 'BOX' } } as const;
const [box, hid, far, wet] = [
  node('BOX', [9000, 0, 1200], { nodeKind: 'panel' }),
  node('PUMP/DC', [1000, 0, 150], { nodeKind: 'load', of: ['PUMP'] }),
  node('LAMP', [5000, 0, 150], { nodeKind: 'load' }),
  node('PUMP/IN', [1000, 50, 150], { medium: 'water', of: ['PUMP'], circuit: 'W' }),
];
const shell = {
  zones: [cavity],
  panels: [accessPanel('AP-1', [1000, 0, 0], [300, 300]), accessPanel('AP-2', [5000, 0, 0], [300, 300])],
  circuits: [circuit('DC', fuse), circuit('W', { medium: 'water' as const })],
  nodes: [box, hid, far, wet],
  runs: [
    run('DC/1', box, hid, [], { circuit: 'DC' }),
    run('DC/2', hid, far, [], { circuit: 'DC' }),
    run('OUT', node('A', [9000, 0, 900]), node('B', [9900, 0, 900])),
  ],
  components: [component('PUMP', [1000, 0, 200], [100, 100, 100])],
  members: [lineMember('CB-1', [1000, -350, 200], [1000, 350, 200]), lineMember('CB-2', [1000, 0, 200], [1600, 0, 200])],
  welds: [{ ...record('W-1'), joins: [['CB-1', 'CB-2']] } as unknown as Weld, { ...record('W-2'), joins: [] } as unknown as Weld],
};
const given = assessment(shell, { sections });
const one = (id: string) => where(given, id).find((match) => match.id === id);

describe('where', () => {
  it('tells of a weld the panels that its members lie behind, and none of a weld that joins nothing', () => {
    expect(one('W-1')).toMatchObject({ kind: 'weld', path: [] });
    expect(one('W-1')?.panels.map(({ panel }) => panel)).toEqual(['AP-1']);
    expect(one('W-1')?.panels[0]).toMatchObject({ panel: 'AP-1', distanceMm: expect.any(Number), reach: expect.any(String) });
    expect(one('W-2')?.panels).toEqual([]);
  });

  it('tells of equipment its panels and what protects its wires, whatever else is connected', () => {
    expect(one('PUMP')?.panels.map(({ panel }) => panel)).toEqual(['AP-1']);
    expect(one('PUMP')?.protection).toMatchObject({ circuit: 'DC', at: 'BOX', ratingA: 15 });
    expect(one('CB-1')?.panels.map(({ panel }) => panel)).toEqual(['AP-1']);
  });

  it('tells of a circuit every panel that opens onto one of its nodes, once', () => {
    expect(
      one('DC')
        ?.panels.map(({ panel }) => panel)
        .sort(),
    ).toEqual(['AP-1', 'AP-2']);
    expect(one('DC')).toMatchObject({ kind: 'circuit', protection: { circuit: 'DC' } });
    expect(one('W')).toMatchObject({ kind: 'circuit', path: [], panels: [] });
    expect(one('W')?.protection).toBeUndefined();
  });

  it('calls a run open that lies open along its whole way, and no other', () => {
    expect(one('OUT')?.open).toBe(true);
    expect(one('DC/2')?.open).toBe(false);
    expect(one('OUT')?.lengthMm).toBeCloseTo(900, 6);
    expect(one('LAMP')).toMatchObject({ open: false, protection: { circuit: 'DC' } });
    expect(one('AP-1')?.surface).toMatchObject({ faces: 'down' });
  });
});
