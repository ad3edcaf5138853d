import { describe, expect, it } from 'vitest';
import { aheadOfProtection } from '../../../src/query/isolate/graph/ahead.js';
import type { ServiceNode } from '../../../src/records/index.js';
import { circuit, node, run } from '../../support/services.js';

const of = (id: string, medium: ServiceNode['medium'], more: Partial<ServiceNode>) => node(id, [0, 0, 0], { medium, ...more });

/** Cylinder, valve, regulator, tee, stove. The sides are those of the regulator: common practice, no source. */
const gas = (inSide: 'in' | undefined, outSide: 'out' | undefined) => {
  const [lp, v, r, stove] = [
    of('LP', 'gas', { role: 'cylinder' }),
    of('V', 'gas', { role: 'shut-off' }),
    of('R', 'gas', { role: 'gas regulator' }),
    of('STOVE', 'gas', { role: 'appliance' }),
  ];
  return {
    nodes: [lp, v, r, stove],
    circuits: [circuit('G', { medium: 'gas', protection: { kind: 'regulator', ratingA: undefined, at: 'R' } })],
    runs: [
      run('1', lp, v, [], { circuit: 'G' }),
      run('2', v, r, [], { circuit: 'G', ...(inSide ? { toSide: inSide } : {}) }),
      run('3', r, stove, [], { circuit: 'G', ...(outSide ? { fromSide: outSide } : {}) }),
    ],
  };
};
const ahead = (facts: Parameters<typeof aheadOfProtection>[0]) => [...aheadOfProtection(facts)].sort().join(' ');

describe('what a protection does not protect', () => {
  it('is the tank side of a regulator, by its side or by the cylinder there', () => {
    for (const [i, o] of [
      ['in', 'out'],
      ['in', undefined],
      [undefined, 'out'],
      [undefined, undefined],
    ] as const)
      expect(ahead(gas(i, o)), `${i} ${o}`).toBe('1 2 LP V');
  });

  it('is the wire from the battery to its fuse; nothing of a circuit that begins at its fuse, or whose fuse is on the source', () => {
    const [bat, mf, bus, fuse, lamp] = [
      of('BAT', 'dc', { role: 'battery' }),
      of('MF', 'dc', { role: 'fuse' }),
      of('BUS', 'dc', { role: 'busbar' }),
      of('F', 'dc', { role: 'fuse' }),
      of('L', 'dc', { role: 'lamp' }),
    ];
    const facts = {
      nodes: [bat, mf, bus, fuse, lamp],
      circuits: [
        circuit('MAIN', { protection: { kind: 'fuse', ratingA: 100, at: 'MF' } }),
        circuit('C', { protection: { kind: 'fuse', ratingA: 10, at: 'F' } }),
        circuit('B', { protection: { kind: 'fuse', ratingA: 10, at: 'BAT' } }),
      ],
      runs: [
        run('M1', bat, mf, [], { circuit: 'MAIN', toSide: 'line' }),
        run('M2', mf, bus, [], { circuit: 'MAIN', fromSide: 'load' }),
        run('C1', fuse, lamp, [], { circuit: 'C' }),
        run('B1', bat, lamp, [], { circuit: 'B' }),
      ],
    };
    expect(ahead(facts)).toBe('BAT M1');
  });
});
