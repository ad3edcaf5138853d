import { describe, expect, it } from 'vitest';
import type { BehindItem } from '../../src/compute/access/types.js';
import { hazardsBehind } from '../../src/query/hazards.js';
import type { Medium, ServiceNode } from '../../src/records/index.js';
import { buildModel } from '../support/build.js';
import { circuit, component, node, run } from '../support/services.js';

const item = (id: string, more: Partial<BehindItem> = {}): BehindItem => ({
  id,
  kind: 'run',
  distanceMm: 100,
  reach: 'hand',
  blockedBy: [],
  nearest: [0, 0, 0],
  ...more,
});

const of = (id: string, medium: Medium, more: Partial<ServiceNode> = {}) => node(id, [0, 0, 0], { medium, ...more });

describe('hazards at a hand', () => {
  const [bat, fuse, lamp] = [
    of('BAT', 'dc', { role: 'battery' }),
    of('F', 'dc', { role: 'fuse' }),
    of('L', 'dc', { role: 'lamp' }),
  ];
  const [gas, tap, main, air] = [of('G', 'gas'), of('W', 'water'), of('M', 'ac', { circuit: 'AC' }), of('A', 'air')];
  const { shell } = buildModel({
    circuits: [circuit('AC', { medium: 'ac', voltageV: 120 })],
    components: [{ ...component('FLUE', [0, 0, 0]), hot: 'dry' }],
    nodes: [bat, fuse, lamp, gas, tap, main, air],
    runs: [run('UP', bat, fuse), run('DOWN', fuse, lamp)],
  });
  const words = (...items: readonly BehindItem[]) => hazardsBehind(shell, items).map(({ word }) => word);

  it('tell battery cable ahead of its fuse from the wires behind it', () => {
    expect(words(item('UP'))).toEqual(['DC cable ahead of its fuse']);
    expect(words(item('DOWN'), item('L'))).toEqual([]);
  });

  it('count every medium, worst first', () => {
    expect(words(item('A'), item('FLUE'), item('M'), item('G'))).toEqual(['Gas', '120 V AC', 'Compressed air', 'Hot parts']);
    expect(words(item('W'))).toEqual([]);
  });

  it('do not count what a hand cannot touch: beyond reach, or with something before it', () => {
    expect(words(item('G', { blockedBy: ['SF-L'] }), item('M', { reach: 'beyond' }))).toEqual([]);
    expect(hazardsBehind(shell, [item('G')])[0]?.ids).toEqual(['G']);
  });
});
