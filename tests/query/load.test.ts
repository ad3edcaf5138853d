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

  it('judges the wire of a feeder and the links of the panel, not their breakers alone: NEC Table 310.16, from memory', () => {
    const { model } = coach(0);
    const thin = assessment({
      nodes: model.shell.nodes,
      circuits: model.shell.circuits.map((one) => (one.id === 'SH' ? { ...one, conductor: { ...wire, awg: '14' } } : one)),
      runs: model.shell.runs.map((one) => (one.id === '3' ? { ...one, conductor: { ...wire, awg: '18' } } : one)),
    });
    const found = outletLoad(thin, 'R1', { a: 12 });
    // 14 AWG on 60 °C terminals carries 15 A, 18 AWG 6 A.
    expect(found?.feeders[0]).toMatchObject({ id: 'SH', limitA: 15, over: false });
    expect(found?.links).toMatchObject([{ id: '3', loadA: 4, withA: 16, limitA: 6, over: true }]);
    expect(outletLoad(coach(18), 'R1', { a: 1 })?.links).toMatchObject([{ id: '3', limitA: 20, over: false }]);
  });

  it('ends at an inverter as at any supply, by its rating', () => {
    const [inv, out] = [
      of('INV', { role: 'inverter', rating: { value: 8, dimension: 'current', text: '8 A' } }),
      of('R', { nodeKind: 'load', role: 'outlet', loadA: 5 }),
    ];
    const [bus, brk] = [of('BUS', { role: 'busbar' }), of('B', { role: 'breaker' })];
    const given = assessment({
      nodes: [inv, bus, brk, out],
      circuits: [
        circuit('C', { medium: 'ac', voltageV: 120, conductor: wire, protection: { kind: 'breaker', ratingA: 15, at: 'B' } }),
      ],
      runs: [
        run('1', inv, bus, [], { conductor: wire }),
        run('2', bus, brk, [], { conductor: wire }),
        run('3', brk, out, [], { circuit: 'C' }),
      ],
    });
    expect(outletLoad(given, 'R', { a: 4 })).toMatchObject({
      over: true,
      supplies: [{ id: 'INV', loadA: 5, withA: 9, limitA: 8, over: true }],
    });
  });

  it('is nothing for what is on no circuit', () => {
    expect(outletLoad(coach(0), 'NONE', { a: 1 })).toBeUndefined();
  });
});
