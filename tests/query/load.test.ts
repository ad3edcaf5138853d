import { describe, expect, it } from 'vitest';
import { outletLoad } from '../../src/query/load/index.js';
import type { ServiceNode } from '../../src/records/index.js';
import { circuit, node, run } from '../support/services.js';
import { assessment } from './lookup/assessment.js';

const of = (id: string, more: Partial<ServiceNode> = {}) => node(id, [0, 0, 0], { medium: 'ac', ...more });
const wire = { awg: '12', conductors: 3, material: 'copper' as const, ratingC: 90 };

/** Shore over a 30 A breaker to a panel with two 20 A circuits. */
function coach(shoreLoadA: number | undefined) {
  const [shore, main, panel] = [
    of('SHORE', { role: 'shore inlet' }),
    of('MAIN', { role: 'breaker' }),
    of('ACP', { nodeKind: 'panel', role: 'busbar', spaces: [{ row: 1, number: 3, spare: true }] }),
  ];
  const [b1, b2] = [of('B1', { role: 'breaker' }), of('B2', { role: 'breaker' })];
  const outlet = of('R1', { nodeKind: 'load', role: 'outlet', loadA: 4 });
  const motor = of('M', { nodeKind: 'load', loadA: 10, startLoadA: 30 });
  const breaker = (at: string) => ({
    voltageV: 120,
    medium: 'ac' as const,
    conductor: wire,
    protection: { kind: 'breaker', ratingA: 20, at },
  });
  return assessment({
    nodes: [shore, main, panel, b1, b2, outlet, motor],
    circuits: [
      circuit('SH', {
        medium: 'ac',
        voltageV: 120,
        ...(shoreLoadA === undefined ? {} : { loadA: shoreLoadA }),
        conductor: { ...wire, awg: '10' },
        protection: { kind: 'breaker', ratingA: 30, at: 'MAIN' },
      }),
      circuit('C1', breaker('B1')),
      circuit('C2', breaker('B2')),
    ],
    runs: [
      run('1', shore, main, [], { circuit: 'SH' }),
      run('2', main, panel, [], { circuit: 'SH' }),
      run('3', panel, b1, [], { conductor: wire }),
      run('4', panel, b2, [], { conductor: wire }),
      run('5', b1, outlet, [], { circuit: 'C1' }),
      run('6', b2, motor, [], { circuit: 'C2' }),
    ],
  });
}

describe('load', () => {
  it('adds watts at the circuit’s voltage, and judges breaker, wire, feeder and supply', () => {
    const found = outletLoad(coach(18), 'R1', { w: 1500 });
    expect(found).toMatchObject({ addedA: 12.5, over: true, unknown: [] });
    expect(found?.circuit).toMatchObject({ id: 'C1', loadA: 4, withA: 16.5, limitA: 20, over: false, protectionAt: 'B1' });
    expect(found?.feeders).toEqual([{ id: 'SH', loadA: 18, withA: 30.5, limitA: 30, over: true }]);
    expect(found?.panels[0]).toMatchObject({ id: 'ACP', loadA: 14, spare: ['row 1, number 3'] });
    expect(outletLoad(coach(17), 'R1', { w: 1500 })?.over).toBe(false);
  });

  it('is over its own breaker by what else is on it; a starting motor is told', () => {
    expect(outletLoad(coach(0), 'M', { a: 11 })?.circuit).toMatchObject({ withA: 21, over: true, startA: 41 });
    expect(outletLoad(coach(0), 'R1', { a: 16 })?.circuit).toMatchObject({ withA: 20, over: false });
  });

  it('is nothing for what is on no circuit', () => {
    expect(outletLoad(coach(0), 'NONE', { a: 1 })).toBeUndefined();
  });
});
