import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { NodeKind, ServiceNode } from '../../../src/model/services.js';
import { joinedTo, nodeKey, serviceGraph, type Vertex } from '../../../src/query/isolate/graph.js';
import { isolate } from '../../../src/query/isolate/index.js';
import { FlowNetwork } from '../../../src/query/isolate/max-flow.js';
import { minimumCut } from '../../../src/query/isolate/minimum-cut.js';
import { sourcesReaching } from '../../../src/query/isolate/proof.js';
import { isSource } from '../../../src/query/isolate/roles.js';
import { buildModel } from '../../support/build.js';
import { accessPanel, circuit, component, node, run, zone } from '../../support/services.js';
import { assessment } from './assessment.js';

/** What is used of the solver; its own types do not fit this module form. */
interface Solver {
  solve(model: string): { readonly ObjectiveValue: number };
}

type Edge = readonly [from: number, to: number, capacity: number];

describe('maximum flow', () => {
  const flow = (size: number, edges: readonly Edge[], source: number, sink: number): number => {
    const network = new FlowNetwork(size);
    for (const [from, to, capacity] of edges) network.join(from, to, capacity);
    return network.maxFlow(source, sink);
  };

  it('Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, figure 26.1: 23 (from memory)', () => {
    const edges: readonly Edge[] = [
      [0, 1, 16],
      [0, 2, 13],
      [1, 3, 12],
      [2, 1, 4],
      [3, 2, 9],
      [2, 4, 14],
      [4, 3, 7],
      [3, 5, 20],
      [4, 5, 4],
    ];
    expect(flow(6, edges, 0, 5)).toBe(23);
  });

  let solve: (model: string) => number;
  beforeAll(async () => {
    const highs = await (loadHighs as unknown as () => Promise<Solver>)();
    solve = (model) => highs.solve(model).ObjectiveValue;
  });

  it('is that of the same network as a linear programme, by another solver (highs)', () => {
    const edges = fc.array(fc.tuple(fc.nat(5), fc.nat(5), fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 14 });
    fc.assert(
      fc.property(edges, (drawn) => {
        const plain = drawn.filter(([from, to]) => from !== to);
        fc.pre(plain.some(([from]) => from === 0) && plain.some(([, to]) => to === 5));
        const sum = (sign: string, pick: (edge: Edge) => boolean): string =>
          plain.flatMap((edge, i) => (pick(edge) ? [`${sign} f${i}`] : [])).join(' ');
        const kept = [1, 2, 3, 4]
          .map((v) => `${sum('+', ([from]) => from === v)} ${sum('-', ([, to]) => to === v)}`.trim())
          .flatMap((row, i) => (row ? [` c${i}: ${row} = 0`] : []));
        const goal = `${sum('+', ([from]) => from === 0)} ${sum('-', ([, to]) => to === 0)}`;
        const bounds = plain.map(([, , capacity], i) => ` 0 <= f${i} <= ${capacity}`);
        const model = ['Maximize', ` obj: ${goal}`, 'Subject To', ...kept, ' free: f0 >= 0', 'Bounds', ...bounds, 'End'].join(
          '\n',
        );
        expect(flow(6, plain, 0, 5)).toBeCloseTo(solve(model), 6);
      }),
      { numRuns: 60 },
    );
  });
});

describe('minimum cut', () => {
  const KINDS: readonly NodeKind[] = ['source', 'valve', 'valve', 'fitting', 'fitting', 'load'];
  const drawnShell = fc
    .tuple(
      fc.array(fc.constantFrom(...KINDS), { minLength: 4, maxLength: 9 }),
      fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { minLength: 3, maxLength: 14 }),
    )
    .map(([kinds, ends]) => {
      // Every third node is of a sealed line, whose source nobody may take off.
      const nodes = kinds.map((nodeKind, i) =>
        node(`N${i}`, [i, 0, 0], { nodeKind, medium: i % 3 === 0 ? 'refrigerant' : 'water' }),
      );
      const pick = (i: number): ServiceNode => nodes[i % nodes.length] as ServiceNode;
      const runs = ends.filter(([a, b]) => pick(a) !== pick(b)).map(([a, b], i) => run(`R${i}`, pick(a), pick(b)));
      return buildModel({ nodes, runs }).shell;
    });

  it('is as small as the smallest of every set of valves and sources tried, and leaves no source', () => {
    fc.assert(
      fc.property(drawnShell, (shell) => {
        const target = shell.nodes.at(-1) as ServiceNode;
        const graph = serviceGraph(shell);
        const sources = shell.nodes.filter((one) => isSource(one) && one !== target).map((one) => nodeKey(one.id));
        const valves = [...graph.values()].filter((vertex) => vertex.cuttable && vertex.key !== nodeKey(target.id));
        const feeds = (shut: ReadonlySet<string>): readonly string[] => {
          const joined = joinedTo(graph, [nodeKey(target.id)], (vertex) => shut.has(vertex.key));
          return sources.filter((key) => joined.has(key));
        };
        const { cut, uncut } = minimumCut(graph, [nodeKey(target.id)], sources, () => 0);
        const always = feeds(new Set(valves.map((vertex) => vertex.key)));
        // Fewest sources taken apart first, then fewest places.
        const cost = (some: readonly Vertex[]): number => some.length + 100 * some.filter((one) => one.lastResort).length;
        let smallest = Infinity;
        for (let mask = 0; mask < 1 << valves.length; mask++) {
          const shut = valves.filter((_, i) => (mask >> i) & 1);
          if (cost(shut) < smallest && feeds(new Set(shut.map((one) => one.key))).length === always.length) smallest = cost(shut);
        }
        expect([...uncut].sort()).toEqual([...always].sort());
        expect(cost(cut)).toBe(smallest);
        expect([...feeds(new Set(cut.map((one) => one.key)))].sort()).toEqual([...always].sort());
        // The proof walks the records on a way of its own and must agree.
        const done = { nodes: new Set(cut.map((one) => one.id)), circuits: new Set<string>() };
        const left = sourcesReaching(shell, { nodes: [target.id], runs: [] }, done).filter((id) => id !== target.id);
        expect(left.map(nodeKey).sort()).toEqual([...always].sort());
      }),
      { numRuns: 200 },
    );
  });
});

/** Shore and battery through an inverter, to a DC panel with two fused circuits. */
function coach() {
  const of = (id: string, nodeKind: NodeKind, name: string, medium: ServiceNode['medium'] = 'dc') =>
    node(id, [1000, 0, 900], { nodeKind, name, medium });
  const bat = of('BAT', 'source', 'House battery');
  const sw = of('SW', 'device', 'Battery disconnect switch');
  const shore = of('SHORE', 'source', 'Shore inlet', 'ac');
  const main = of('MAIN', 'device', 'Main breaker', 'ac');
  const inv = of('INV', 'junction', 'Charger output');
  const dcp = of('DCP', 'panel', 'House DC panel');
  const lamp = of('L1', 'load', 'Lamp');
  const pump = of('PMP', 'load', 'Water pump');
  const fuse = (ratingA: number) => ({ protection: { kind: 'fuse', ratingA, at: 'DCP' } });
  return {
    nodes: [bat, sw, shore, main, inv, dcp, lamp, pump],
    circuits: [circuit('DC-1', fuse(15)), circuit('DC-2', fuse(10))],
    runs: [
      run('B1', bat, sw),
      run('B2', sw, dcp),
      run('S1', shore, main),
      run('S2', main, inv),
      run('S3', inv, dcp),
      run('DC-1/1', dcp, lamp, [], { circuit: 'DC-1' }),
      run('DC-2/1', dcp, pump, [], { circuit: 'DC-2' }),
    ],
  };
}

describe('isolate', () => {
  const given = assessment(coach());

  it('a lamp: its own fuse alone, at its panel', () => {
    const found = isolate(given, 'L1');
    expect(found?.actions).toEqual([{ id: 'DCP', kind: 'fuse', action: 'open', circuit: 'DC-1', panels: [] }]);
    expect([...(found?.sources ?? [])].sort()).toEqual(['BAT', 'INV', 'SHORE']);
    expect(found?.sourcesLeft).toEqual([]);
    expect(found?.verified).toBe(true);
    expect(isolate(given, 'DC-1')?.actions).toEqual(found?.actions);
    expect(isolate(given, 'DC-1/1')?.actions).toEqual(found?.actions);
  });

  it('R48: the panel itself wants every source off; a charger that no switch parts from it has its leads taken off', () => {
    const found = isolate(given, 'DCP');
    expect(found?.actions.map((one) => [one.id, one.action, one.lines])).toEqual([
      ['SW', 'open', undefined],
      ['INV', 'disconnect', ['S3']],
    ]);
    expect(found?.sourcesLeft).toEqual([]);
    expect(found?.notes.join(' ')).toContain('BAT: never dead');
  });

  it('parts the line at a source from it: shore cord, battery lead, tank, cylinder; a sealed system it cannot', () => {
    const between = (medium: ServiceNode['medium'], name: string) => {
      const [a, b] = [node('A', [0, 0, 0], { nodeKind: 'source', medium, name }), node('B', [1, 0, 0], { medium })];
      return isolate(assessment({ nodes: [a, b], runs: [run('R', a, b)] }), 'R');
    };
    const kinds = (
      [
        ['ac', 'shore inlet'],
        ['ac', 'generator, left rear'],
        ['dc', 'house battery'],
        ['dc', 'solar gland, roof'],
        ['gas', 'propane tank'],
        ['water', 'fresh tank outlet'],
        ['data', 'network shelf'],
      ] as const
    ).map(([medium, name]) => {
      const found = between(medium, name);
      expect(found?.sourcesLeft).toEqual([]);
      expect(found?.verified).toBe(true);
      return found?.actions.map((one) => `${one.action} ${one.kind} ${one.lines?.join()}`).join();
    });
    expect(kinds).toEqual([
      'disconnect shore cord R',
      'disconnect generator leads R',
      'disconnect battery lead R',
      'disconnect solar leads R',
      'disconnect cylinder valve R',
      'disconnect tank connection R',
      'disconnect plug R',
    ]);
    const sealed = between('refrigerant', 'condenser');
    expect([sealed?.actions, sealed?.sourcesLeft]).toEqual([[], ['A']]);
  });

  it('opens the breaker that sits on a generator, never the generator', () => {
    const gen = node('GEN', [0, 0, 0], { nodeKind: 'source', medium: 'ac', name: 'generator' });
    const box = node('ACP', [1, 0, 0], { nodeKind: 'panel', medium: 'ac' });
    const found = isolate(
      assessment({
        nodes: [gen, box],
        circuits: [circuit('AC-GN', { medium: 'ac', protection: { kind: 'breaker', ratingA: 40, at: 'GEN' } })],
        runs: [run('R', gen, box, [], { circuit: 'AC-GN' })],
      }),
      'ACP',
    );
    expect(found?.actions).toEqual([
      { id: 'AC-GN', kind: 'breaker', action: 'open', circuit: 'AC-GN', panels: [], how: 'on GEN' },
    ]);
    expect(found?.sourcesLeft).toEqual([]);
  });

  it('takes waste fixtures as what feeds a waste line, and a junction box by the charger for a box', () => {
    const sink = node('SINK', [0, 0, 500], { nodeKind: 'load', medium: 'drain', name: 'sink, waste' });
    const tee = node('T', [0, 0, 0], { nodeKind: 'fitting', medium: 'drain' });
    const found = isolate(assessment({ nodes: [sink, tee], runs: [run('R', sink, tee)] }), 'T');
    expect(found).toMatchObject({ verified: true, sourcesLeft: [], actions: [{ id: 'SINK', action: 'shut', kind: 'fixture' }] });
    expect(isSource(node('J', [0, 0, 0], { nodeKind: 'junction', medium: 'ac', name: 'junction box, charger' }))).toBe(false);
  });

  it('a source cannot be cut off from itself', () => {
    const found = isolate(given, 'BAT');
    expect(found?.sourcesLeft).toEqual(['BAT']);
    expect(found?.notes.join(' ')).toContain('is a source itself');
  });

  it('work on a pump wants its supply shut; that it would pump is said, and no source', () => {
    const of = (id: string, nodeKind: NodeKind, name: string) => node(id, [0, 0, 900], { nodeKind, name, medium: 'water' });
    const [tank, valve, pump, tap] = [
      of('T', 'source', 'Tank'),
      of('V', 'valve', ''),
      of('P', 'device', 'Water pump'),
      of('K', 'load', 'Tap'),
    ];
    const water = assessment({
      nodes: [tank, valve, pump, tap],
      runs: [run('1', tank, valve), run('2', valve, pump), run('3', pump, tap)],
    });
    const found = isolate(water, 'P');
    expect(found?.actions.map((one) => one.id)).toEqual(['V']);
    expect(found?.sourcesLeft).toEqual([]);
    expect(found?.notes.join(' ')).toContain('P drives its line itself');
    // For a tap beyond it the pump is a source like another, and nothing parts the two.
    expect(isolate(water, 'K')?.sourcesLeft).toEqual(['P']);
    // With its wires on record at its place, their fuse stops it.
    const [bat, box] = [node('BAT', [9000, 0, 900], { nodeKind: 'source' }), node('DCP', [8000, 0, 900], { nodeKind: 'panel' })];
    const motor = node('P-M', [100, 0, 900], { nodeKind: 'load' });
    const wired = assessment({
      nodes: [tank, valve, pump, tap, bat, box, motor],
      circuits: [circuit('DC-9', { protection: { kind: 'fuse', ratingA: 10, at: 'DCP' } })],
      runs: [
        run('1', tank, valve),
        run('2', valve, pump),
        run('3', pump, tap),
        run('4', bat, box),
        run('5', box, motor, [], { circuit: 'DC-9' }),
      ],
    });
    const tapOff = isolate(wired, 'K');
    expect(tapOff?.actions.map((one) => [one.id, one.circuit])).toEqual([
      ['DCP', 'DC-9'],
      ['V', undefined],
    ]);
    expect(tapOff?.sourcesLeft).toEqual([]);
  });

  it('without a source on record nothing is proved', () => {
    const { nodes, circuits, runs } = coach();
    const dead = assessment({
      circuits,
      nodes: nodes.filter((one) => one.id === 'DCP' || one.id === 'L1'),
      runs: runs.filter((one) => one.id === 'DC-1/1'),
    });
    expect(isolate(dead, 'L1')).toMatchObject({ verified: false, sources: [], sourcesLeft: [] });
    expect(isolate(dead, 'L1')?.notes[0]).toContain('not verified');
  });

  it('knows a switch by its name, and a battery switch is no battery', () => {
    const { nodes } = coach();
    expect(nodes.filter(isSource).map((one) => one.id)).toEqual(['BAT', 'SHORE', 'INV']);
  });

  it('gives nothing for an unknown id, nor for what no service is recorded at', () => {
    expect(isolate(given, 'NONE')).toBeUndefined();
    expect(isolate(assessment({ components: [component('BOX', [0, 0, 0])] }), 'BOX')).toBeUndefined();
  });

  it('takes a component by the connections at it', () => {
    const withLamp = assessment({ ...coach(), components: [component('LAMP', [1000, 0, 900], [10, 10, 10])] });
    expect(isolate(withLamp, 'LAMP')?.sourcesLeft).toContain('BAT');
    expect(isolate(withLamp, 'LAMP')?.notes[0]).toContain('by their id or place');
  });

  it('shuts a water heater between two valves, prefers the easy one, and drains it', () => {
    const of = (id: string, nodeKind: NodeKind, z: number, name?: string) =>
      node(id, [1000, 0, z], { nodeKind, medium: 'water', name });
    const city = of('CITY', 'source', 900);
    const hard = of('V-HARD', 'valve', 550);
    const easy = of('V-EASY', 'valve', 100);
    const heater = of('HTR', 'device', 900, 'Water heater');
    const drain = of('DRN', 'drain', 100);
    const water = assessment({
      zones: [
        zone('Z', [
          [0, -400, 0],
          [4000, 400, 600],
        ]),
      ],
      panels: [accessPanel('AP', [1000, 0, 0], [110, 120])],
      nodes: [city, hard, easy, heater, drain],
      runs: [run('W1', city, hard), run('W2', hard, easy), run('W3', easy, heater), run('W4', heater, drain)],
    });
    const found = isolate(water, 'HTR');
    expect(found?.actions).toEqual([
      { id: 'V-EASY', kind: 'valve', action: 'shut', panels: ['AP'] },
      { id: 'DRN', kind: 'drain', action: 'drain', panels: ['AP'] },
    ]);
    expect(found?.sourcesLeft).toEqual([]);
  });
});
