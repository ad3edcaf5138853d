import { describe, expect, it } from 'vitest';
import { solve } from '../../../src/query/isolate/graph/solve.js';
import { isolate } from '../../../src/query/isolate/index.js';
import { sourcesReaching } from '../../../src/query/isolate/proof.js';
import type { NodeRole, ServiceNode } from '../../../src/records/index.js';
import { circuit, node, run } from '../../support/services.js';
import { assessment } from '../lookup/assessment.js';

const of = (id: string, role: NodeRole, medium: ServiceNode['medium'] = 'dc', more: Partial<ServiceNode> = {}) =>
  node(id, [1000, 0, 100], { nodeKind: 'device', medium, role, ...more });
const line = (...nodes: readonly ServiceNode[]) => ({
  nodes: [...nodes],
  runs: nodes.slice(1).map((to, i) => run(`${i + 1}`, nodes[i] as ServiceNode, to)),
});
const done = (found: ReturnType<typeof isolate>) =>
  found?.actions.filter(({ step }) => step === 'source').map(({ action, id }) => `${action} ${id}`);
const lamp = of('L', 'lamp');

describe('what is chosen', () => {
  it('is one fuse that parts three ways at once, before two of anything else', () => {
    const [shore, bat, inv, load] = [
      of('SHORE', 'shore inlet', 'ac'),
      of('BAT', 'battery'),
      of('INV', 'inverter charger', 'ac'),
      of('T', 'busbar', 'ac'),
    ];
    const side = (id: string, fromSide: 'ac in' | 'ac out' | 'dc') => run(id, inv, load, [], { fromSide, circuit: 'C' });
    const facts = {
      nodes: [shore, bat, inv, load],
      circuits: [circuit('C', { medium: 'ac', protection: { kind: 'breaker', ratingA: 30, at: 'INV' } })],
      runs: [
        run('S', shore, inv, [], { toSide: 'ac in' }),
        run('B', bat, inv, [], { toSide: 'dc' }),
        side('1', 'ac in'),
        side('2', 'ac out'),
        side('3', 'dc'),
      ],
    };
    const found = solve(facts, { nodes: ['T'], runs: [] }, () => 1);
    expect(found.links).toEqual([{ id: 'INV', circuit: 'C', of: 'protection' }]);
    expect(found).toMatchObject({ sources: ['SHORE', 'BAT'], left: [] });
  });

  it('is a switch before a plug, and a plug before a battery’s leads, in whichever order they lie', () => {
    const [bat, plug, sw] = [of('BAT', 'battery'), of('PLUG', 'plug'), of('SW', 'switch')];
    expect(done(isolate(assessment(line(bat, plug, sw, lamp)), 'L'))).toEqual(['open SW']);
    expect(done(isolate(assessment(line(bat, sw, plug, lamp)), 'L'))).toEqual(['open SW']);
    expect(done(isolate(assessment(line(bat, plug, lamp)), 'L'))).toEqual(['disconnect PLUG']);
    const [shore, inlet] = [of('SHORE', 'shore inlet', 'ac'), of('P', 'plug', 'ac')];
    expect(done(isolate(assessment(line(shore, inlet, of('O', 'outlet', 'ac'))), 'O'))).toEqual(['disconnect P']);
  });

  it('is never what is planned while anything stands', () => {
    const [bat, sw, plug] = [of('BAT', 'battery'), of('SW', 'switch', 'dc', { planned: true } as never), of('PLUG', 'plug')];
    expect(done(isolate(assessment(line(bat, sw, plug, lamp)), 'L'))).toEqual(['disconnect PLUG']);
  });

  it('empties each of two tanks by itself', () => {
    const [a, b, tee] = [
      of('A', 'tank', 'water', { of: ['T-1'] }),
      of('B', 'tank', 'water', { of: ['T-2'] }),
      of('J', 'junction', 'water'),
    ];
    const found = isolate(assessment({ nodes: [a, b, tee], runs: [run('1', a, tee), run('2', b, tee)] }), 'J');
    expect(found?.actions.filter(({ step }) => step === 'source').map(({ say }) => say)).toEqual([
      'Empty the tank at A.',
      'Empty the tank at B.',
    ]);
  });
});

describe('more changeovers than are gone through one by one', () => {
  it('are taken on every supply at once: no source is missed, and the proof agrees', () => {
    const count = 11; // 2 to the 11th is more than 1,024.
    const at = (i: number) => ({
      source: of(`S${i}`, 'generator', 'ac'),
      breaker: of(`B${i}`, 'breaker', 'ac'),
      over: of(`C${i}`, 'changeover', 'ac'),
    });
    const all = Array.from({ length: count }, (_, i) => at(i));
    const out = of('OUT', 'busbar', 'ac');
    const facts = {
      nodes: [...all.flatMap(({ source, breaker, over }) => [source, breaker, over]), out],
      circuits: [],
      runs: all.flatMap(({ source, breaker, over }, i) => [
        run(`S${i}/1`, source, breaker, [], { toSide: 'line' }),
        run(`S${i}/2`, breaker, over, [], { fromSide: 'load', toSide: 'supply 1' }),
        run(`C${i}/1`, over, all[i + 1]?.over ?? out, [], { fromSide: 'load', ...(all[i + 1] ? { toSide: 'supply 2' } : {}) }),
      ]),
    };
    const found = solve(facts, { nodes: ['OUT'], runs: [] }, () => 1);
    expect(found.sources).toHaveLength(count);
    expect(found.left).toEqual([]);
    const nodes = new Set(found.links.map(({ id }) => id));
    expect(sourcesReaching(facts, { nodes: ['OUT'], runs: [] }, { nodes, circuits: new Set() })).toEqual([]);
    expect(nodes.size).toBe(count);
  });
});

describe('what a hand does', () => {
  it('is to switch a breaker off and to pull a fuse, where either belongs to the circuit', () => {
    const [bat, bus] = [of('BAT', 'battery'), of('BUS', 'busbar')];
    const fed = (kind: 'breaker' | 'fuse') => ({
      nodes: [bat, bus, lamp],
      circuits: [circuit('C', { protection: { kind, ratingA: 10, at: 'BUS' } })],
      runs: [run('1', bat, bus), run('2', bus, lamp, [], { circuit: 'C' })],
    });
    const say = (kind: 'breaker' | 'fuse') =>
      isolate(assessment(fed(kind)), 'L')?.actions.find(({ step }) => step === 'source')?.say;
    expect(say('breaker')).toBe('Switch the breaker of C at BUS off and lock it off.');
    expect(say('fuse')).toBe('Pull the fuse of C at BUS and tag its holder.');
  });

  it('takes every line off a source, whichever way round it is recorded, and empties a tank at all its ends', () => {
    const [lp, a, b] = [of('LP', 'cylinder', 'gas'), of('A', 'appliance', 'gas'), of('B', 'appliance', 'gas')];
    const two = { nodes: [lp, a, b], runs: [run('1', lp, a), run('2', b, lp)] };
    expect(isolate(assessment(two), 'A')?.actions.find(({ step }) => step === 'source')?.lines).toEqual(['1', '2']);
    const [t1, t2, tee] = [
      of('T/1', 'tank', 'water', { of: ['T'] }),
      of('T/2', 'tank', 'water', { of: ['T'] }),
      of('J', 'junction', 'water'),
    ];
    const tank = { nodes: [t1, t2, tee], runs: [run('1', t1, tee), run('2', tee, t2)] };
    expect(isolate(assessment(tank), 'J')?.actions.filter(({ step }) => step === 'source')).toMatchObject([
      { id: 'T/1', say: 'Empty the tank at T/1, T/2.', lines: ['1', '2'] },
    ]);
  });

  it('shuts no drain at its own control: it has none', () => {
    const drain = node('DRN', [0, 0, 0], { nodeKind: 'drain', medium: 'fuel' });
    const found = isolate(assessment(line(of('T', 'tank', 'fuel'), of('V', 'shut-off', 'fuel'), drain)), 'DRN');
    expect(found?.actions.filter(({ step }) => step === 'load')).toEqual([]);
  });
});

describe('what is said', () => {
  const note = (found: ReturnType<typeof isolate>) => found?.notes.join('\n') ?? '';

  it('of a gas tank: it stays what it is, and work on itself is not made safe by shutting its valve', () => {
    const [tank, stove] = [of('T', 'tank', 'gas'), of('S', 'appliance', 'gas')];
    expect(isolate(assessment(line(tank, stove)), 'T')?.sourcesLeft).toEqual(['T']);
    expect(isolate(assessment(line(of('W', 'tank', 'water'), of('K', 'tap', 'water'))), 'W')?.sourcesLeft).toEqual([]);
  });

  it('of lines without a source: one gap for all that hang together, nothing chosen, nothing called live', () => {
    const dead = { ...line(of('A', 'junction'), of('B', 'junction'), lamp), circuits: [circuit('C')] };
    const found = isolate(assessment({ ...dead, runs: dead.runs.map((one) => ({ ...one, circuit: 'C' })) }), 'C');
    expect(found?.unknown.map(({ id }) => id)).toEqual(['1']);
    expect(note(found)).toContain('No source is recorded on its lines');
    expect(note(found)).not.toContain('never dead');
    expect(note(found)).not.toContain('The fewest actions');
  });

  it('of a line with one: that the fewest actions were taken, and what stays live', () => {
    const found = isolate(assessment(line(of('BAT', 'battery'), of('SW', 'switch'), lamp)), 'L');
    expect(note(found)).toContain('The fewest actions');
    expect(note(found)).toContain('BAT: never dead');
    const mains = isolate(assessment(line(of('GEN', 'generator', 'ac'), of('B', 'breaker', 'ac'), of('O', 'outlet', 'ac'))), 'O');
    expect(note(mains)).not.toContain('never dead');
    expect(note(mains)).not.toContain('No source is recorded');
  });

  it('of where to prove it: at the work itself in its own medium, by the test point of a pipe where there is one', () => {
    const [lp, valve, tapping, stove] = [
      of('LP', 'cylinder', 'gas'),
      of('V', 'shut-off', 'gas'),
      node('TP', [0, 0, 0], { nodeKind: 'test-point', medium: 'gas' }),
      of('S', 'appliance', 'gas'),
    ];
    const proof = (found: ReturnType<typeof isolate>) =>
      found?.actions.filter(({ step }) => step === 'proof').map(({ id }) => id);
    expect(proof(isolate(assessment(line(lp, valve, tapping, stove)), 'S'))).toEqual(['TP']);
    expect(proof(isolate(assessment(line(lp, valve, stove)), 'S'))).toEqual(['S']);
    expect(proof(isolate(assessment(line(lp, valve, stove)), '2'))).toEqual(['S']);
    // A charger stands in one service and feeds another: both are proved.
    const [shore, chg, bus] = [of('SHORE', 'shore inlet', 'ac'), of('CHG', 'charger', 'ac'), of('B', 'busbar')];
    const both = { nodes: [shore, chg, bus], runs: [run('1', shore, chg), run('2', chg, bus, [], { medium: 'dc' })] };
    expect(isolate(assessment(both), 'CHG')?.media).toEqual(['ac', 'dc']);
    expect(proof(isolate(assessment(both), 'CHG'))).toEqual(['CHG', 'CHG']);
  });
});
