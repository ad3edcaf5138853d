import { describe, expect, it } from 'vitest';
import type { Circuit, ServiceNode } from '../../../src/records/index.js';
import { linkTooSmall } from '../../../src/rules/service/link-too-small.js';
import { protectionFar } from '../../../src/rules/service/protection-far.js';
import { assessment } from '../../query/lookup/assessment.js';
import { buildModel } from '../../support/build.js';
import { circuit, node, run } from '../../support/services.js';
import { judgeOne } from '../judge-one.js';

const of = (id: string, x: number, more: Partial<ServiceNode> = {}) => node(id, [x, 0, 0], more);
const wire = (awg: string, more = {}) => ({ awg, conductors: 2, material: 'copper' as const, ratingC: 90, ...more });
const feed = (more: Partial<Circuit>) => circuit('MAIN', { voltageV: 12, conductor: wire('2'), ...more });

const [bat, main, bus, fuse, lamp] = [
  of('BAT', 0, { role: 'battery' }),
  of('MF', 100, { role: 'fuse' }),
  of('BUS', 5100, { role: 'busbar' }),
  of('F', 5400, { role: 'fuse' }),
  of('L', 15400, { nodeKind: 'load' }),
];
const shell = (link: string, mainA: number) => ({
  nodes: [bat, main, bus, fuse, lamp],
  circuits: [
    feed({ loadA: 60, protection: { kind: 'fuse', ratingA: mainA, at: 'MF' } }),
    circuit('C', { voltageV: 12, loadA: 10, conductor: wire('12'), protection: { kind: 'fuse', ratingA: 15, at: 'F' } }),
  ],
  runs: [
    run('M1', bat, main, [], { circuit: 'MAIN' }),
    run('M2', main, bus, [], { circuit: 'MAIN' }),
    run('LINK', bus, fuse, [], { conductor: wire(link) }),
    run('C1', fuse, lamp, [], { circuit: 'C' }),
  ],
});

describe('drop from the source', () => {
  it('counts the feeder with what it carries, and the link with what hangs on it', () => {
    const { figures } = assessment(shell('8', 100));
    const c = figures.services.circuits.find((one) => one.id === 'C');
    expect(c?.feeder).toMatchObject({ source: 'BAT', runs: ['LINK', 'M2', 'M1'] });
    // ρ at 50 °C is 0.017241 × 1.1179 ohm·mm²/m; areas by ASTM B258.
    const ohm = (metres: number, mm2: number): number => (2 * 0.017241 * 1.1179 * metres) / mm2;
    const expected = 60 * ohm(5.1, 33.63) + 10 * ohm(0.3, 8.366) + 10 * ohm(10, 3.309);
    expect(c?.dropV).toBeCloseTo(expected, 3);
  });

  it('of a supply circuit starts at the source, and all of its load goes to the far end', () => {
    const sol = of('SOL', 0, { role: 'solar panel' });
    const [breaker, regulator] = [of('SB', 5000, { nodeKind: 'device' }), of('MPT', 6000, { nodeKind: 'device' })];
    const { figures } = assessment({
      nodes: [sol, breaker, regulator],
      circuits: [
        circuit('S', { voltageV: 36, loadA: 18, conductor: wire('6'), protection: { kind: 'breaker', ratingA: 30, at: 'SB' } }),
      ],
      runs: [run('1', sol, breaker, [], { circuit: 'S' }), run('2', breaker, regulator, [], { circuit: 'S' })],
    });
    const s = figures.services.circuits[0];
    expect([s?.root, s?.worstLoad]).toEqual(['SOL', 'MPT']);
    expect(s?.dropV).toBeCloseTo((18 * 2 * 0.017241 * 1.1179 * 6) / 13.3, 2);
  });
});

describe('service.link-too-small', () => {
  const ids = (link: string, mainA: number) => judgeOne(linkTooSmall, buildModel(shell(link, mainA))).map((one) => one.ids);
  it('judges a link of a busbar by what guards it; a short tap before its own fuse passes: NEC 240.21(B)(1), from memory', () => {
    expect(ids('8', 100)).toEqual([]);
    // 14 AWG carries 25 A, less than a tenth of 300 A.
    expect(ids('14', 300)).toEqual([['LINK', 'MF']]);
    const bare = shell('8', 100);
    const uncut = { ...bare, circuits: bare.circuits.filter((one) => one.id === 'MAIN') };
    expect(judgeOne(linkTooSmall, buildModel(uncut)).map((one) => one.ids[0])).toEqual(['LINK']);
  });
});

describe('terminals', () => {
  it('hold a link down to their own column: NEC 110.14(C), from memory', () => {
    const at = (terminalsC: number | undefined) => {
      const given = shell('4', 90);
      const nodes = given.nodes.map((one) => (one.id === 'BUS' && terminalsC !== undefined ? { ...one, terminalsC } : one));
      // Longer than a tap.
      const runs = given.runs.map((one) => (one.id === 'LINK' ? { ...one, installedLengthMm: 4000 } : one));
      return judgeOne(linkTooSmall, buildModel({ ...given, nodes, runs })).map(({ ids }) => ids.join(' '));
    };
    // 4 AWG: 95 A at 90 °C, 70 A at 60 °C.
    expect(at(undefined)).toEqual([]);
    expect(at(60)).toEqual(['LINK MF']);
  });
});

describe('wire before its first fuse', () => {
  // ABYC E-11.10.1.1 as public trade texts cite it (7-40-72): 7 in bare; sheathed 72 in from a battery terminal, 40 in from another source.
  const IN = 25.4;
  const far = (model: ReturnType<typeof buildModel>) => judgeOne(protectionFar, model).map(({ ids }) => ids.join(' from '));
  const chain = (
    roles: readonly NonNullable<ServiceNode['role']>[],
    inches: readonly number[],
    more: Partial<ServiceNode> = {},
  ) => {
    const at = roles.map((_, i) => inches.slice(0, i).reduce((sum, one) => sum + one * IN, 0));
    const nodes = roles.map((role, i) => of(`${i}`, at[i] as number, { role, ...more }));
    return nodes.slice(1).map((to, i) => ({ nodes, run: [nodes[i], to] as const }));
  };
  const model = (
    roles: readonly NonNullable<ServiceNode['role']>[],
    inches: readonly number[],
    sheathed: boolean,
    medium: 'dc' | 'ac' = 'dc',
  ) => {
    const parts = chain(roles, inches, { medium });
    const runs = parts.map(({ run: [a, b] }, i) => run(`R${i}`, a as ServiceNode, b as ServiceNode, [], { sheathed, medium }));
    return buildModel({ nodes: parts[0]?.nodes ?? [], runs });
  };

  it('is 7 in bare and 72 in sheathed from the battery itself', () => {
    expect(far(model(['battery', 'fuse'], [7], false))).toEqual([]);
    expect(far(model(['battery', 'fuse'], [7.2], false))).toEqual(['R0 from 0']);
    expect(far(model(['battery', 'fuse'], [72], true))).toEqual([]);
    expect(far(model(['battery', 'fuse'], [72.2], true))).toEqual(['R0 from 0']);
  });
  it('is 40 in sheathed from an unfused switch or busbar, each conductor by itself', () => {
    expect(far(model(['battery', 'switch', 'fuse'], [72, 40], true))).toEqual([]);
    expect(far(model(['battery', 'switch', 'fuse'], [20, 40.2], true))).toEqual(['R1 from 1']);
    expect(far(model(['battery', 'busbar', 'fuse'], [7, 7.2], false))).toEqual(['R1 from 1']);
    // A splice is the same conductor.
    expect(far(spliced)).toEqual(['R1 from 0']);
  });
  it('is 40 in from a generator or inverter; chargers, which limit their own current, are not judged', () => {
    expect(far(model(['generator', 'breaker'], [40], true, 'ac'))).toEqual([]);
    expect(far(model(['generator', 'breaker'], [41], true, 'ac'))).toEqual(['R0 from 0']);
    expect(far(model(['inverter', 'breaker'], [8], false, 'ac'))).toEqual(['R0 from 0']);
    expect(far(model(['charger', 'fuse'], [90], false))).toEqual([]);
  });

  const [a, b, c] = [
    of('0', 0, { role: 'battery' }),
    of('1', 40 * IN, { nodeKind: 'splice' }),
    of('2', 73 * IN, { role: 'fuse' }),
  ];
  const spliced = buildModel({
    nodes: [a, b, c],
    runs: [run('R0', a, b, [], { sheathed: true }), run('R1', b, c, [], { sheathed: true })],
  });
});
