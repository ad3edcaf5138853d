import { describe, expect, it } from 'vitest';
import type { ServiceNode } from '../../../src/records/index.js';
import { wordNotListed } from '../../../src/rules/record/word-not-listed.js';
import { loadDisagrees } from '../../../src/rules/service/load-disagrees.js';
import { oneWayLoop } from '../../../src/rules/service/one-way-loop.js';
import { roleMisfit } from '../../../src/rules/service/role-misfit.js';
import { roleMissing } from '../../../src/rules/service/role-missing.js';
import { buildModel } from '../../support/build.js';
import { circuit, node, run } from '../../support/services.js';
import { judgeOne } from '../judge-one.js';

const of = (id: string, more: Partial<ServiceNode> = {}) => node(id, [0, 0, 0], more);
type Shell = Parameters<typeof buildModel>[0];
const messages = (rule: typeof roleMisfit, shell: Shell) => judgeOne(rule, buildModel(shell)).map((one) => one.message);

describe('service.role-misfit', () => {
  it('finds a role in a medium where there is none of it', () => {
    const [said] = messages(roleMisfit, { nodes: [of('V', { role: 'fuse', medium: 'water' })] });
    expect(said).toBe(
      'V has the role fuse in a service of water, expected one that is found there: that role goes with dc, ac, data',
    );
    // A charger stands in one service and ends wires of another.
    const [chg, bus] = [of('C', { role: 'charger', medium: 'data' }), of('B')];
    expect(messages(roleMisfit, { nodes: [chg, bus], runs: [run('1', chg, bus, [], { medium: 'dc' })] })).toEqual([]);
  });

  it('finds a side that the node has not', () => {
    const [a, b] = [of('A', { role: 'switch' }), of('B')];
    expect(messages(roleMisfit, { nodes: [a, b], runs: [run('1', a, b, [], { fromSide: 'in' })] })[0]).toContain(
      '1 ends on side `in` of A, which has only `line`, `load` as a switch: correct `from_side`',
    );
    expect(messages(roleMisfit, { nodes: [a, b], runs: [run('1', a, b, [], { toSide: 'load' })] })[0]).toContain(
      'side `load` of B, which has no sides as a splice without a role',
    );
    expect(messages(roleMisfit, { nodes: [a, b], runs: [run('1', a, b, [], { fromSide: 'load' })] })).toEqual([]);
  });

  it('finds a changeover with one supply', () => {
    const [a, b, c] = [of('A', { role: 'changeover' }), of('B'), of('C')];
    const one = [run('1', b, a, [], { toSide: 'supply 1' }), run('2', a, c, [], { fromSide: 'load' })];
    expect(messages(roleMisfit, { nodes: [a, b, c], runs: one })[0]).toContain('A is a changeover with one supply');
    const two = [...one, run('3', c, a, [], { toSide: 'supply 2' })];
    expect(messages(roleMisfit, { nodes: [a, b, c], runs: two })).toEqual([]);
  });
});

describe('service.one-way-loop', () => {
  const [bat, chg, inv] = [of('BAT', { role: 'battery' }), of('CHG', { role: 'charger' }), of('INV', { role: 'inverter' })];
  it('finds a charger on the inverter that its own battery feeds', () => {
    const ring = [
      run('1', chg, bat, [], { fromSide: 'out' }),
      run('2', bat, inv, [], { toSide: 'in' }),
      run('3', inv, chg, [], { fromSide: 'out', toSide: 'in', medium: 'ac' }),
    ];
    expect(judgeOne(oneWayLoop, buildModel({ nodes: [bat, chg, inv], runs: ring }))).toMatchObject([
      { severity: 'warning', ids: ['CHG', 'INV'] },
    ]);
    expect(messages(oneWayLoop, { nodes: [bat, chg, inv], runs: ring.slice(0, 2) })).toEqual([]);
  });
});

describe('service.load-disagrees', () => {
  const [a, b] = [of('A'), of('B', { nodeKind: 'load', circuit: 'C', loadA: 10 })];
  const shell = (loadW: number): Shell => ({
    circuits: [circuit('C', { voltageV: 12, loadW })],
    nodes: [a, b],
    runs: [run('1', a, b, [], { circuit: 'C' })],
  });
  it('brings watts and amperes together by the voltage', () => {
    expect(messages(loadDisagrees, shell(120))).toEqual([]);
    expect(messages(loadDisagrees, shell(130))).toEqual([]);
    expect(messages(loadDisagrees, shell(60))[0]).toContain(
      'C has a load of 5 A (60 W at 12 V), but its nodes draw 10 A together',
    );
  });
});

describe('service.role-missing', () => {
  const silent = [of('P', { nodeKind: 'panel', name: 'House panel' }), of('S', { nodeKind: 'source' })];
  const service = { id: 's', name: 'S', medium: 'dc' as const, file: 's.yaml', circuits: [], nodes: silent, runs: [] };
  it('asks once a service, with what the names suggest, and as a note once all stages are signed', () => {
    const model = buildModel({ services: [service], nodes: silent });
    const [found, more] = judgeOne(roleMissing, model);
    expect(more).toBeUndefined();
    expect(found).toMatchObject({ severity: 'warning', ids: ['P', 'S'] });
    expect(found?.message).toContain('`role: busbar` at P, if that is what it is; a `role` at S');
  });
});

describe('record.word-not-listed', () => {
  it('proposes the listed word that stands in the typed one', () => {
    const [said] = messages(wordNotListed, { circuits: [circuit('C', { protection: { kind: 'class T fuse' } })] });
    expect(said).toContain('C has the protection kind `class T fuse`, which is not in the list');
    expect(said).toContain('type `fuse` if that is what it is');
    expect(messages(wordNotListed, { circuits: [circuit('C', { protection: { kind: 'fuse' } })] })).toEqual([]);
  });
});
