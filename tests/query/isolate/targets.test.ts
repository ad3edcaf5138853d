import { describe, expect, it } from 'vitest';
import { isolate } from '../../../src/query/isolate/index.js';
import { sourcesReaching } from '../../../src/query/isolate/proof.js';
import type { NodeRole, ServiceNode, Tank } from '../../../src/records/index.js';
import { record } from '../../support/build.js';
import { accessPanel, circuit, component, node, run, zone } from '../../support/services.js';
import { assessment } from '../lookup/assessment.js';

const of = (id: string, role: NodeRole, medium: ServiceNode['medium'] = 'dc', more: Partial<ServiceNode> = {}) =>
  node(id, [1000, 0, 100], { nodeKind: 'device', medium, role, ...more });

const [bat, fuse, lamp] = [of('BAT', 'battery', 'dc', { at: [200, 0, 100] }), of('F', 'fuse'), of('L', 'lamp')];
const wired = {
  nodes: [bat, fuse, lamp],
  runs: [run('1', bat, fuse, [], { toSide: 'line' }), run('2', fuse, lamp, [], { fromSide: 'load' })],
};
const pulled = (found: ReturnType<typeof isolate>) => found?.actions.filter(({ step }) => step === 'source').map(({ id }) => id);

describe('what must be dead before work', () => {
  const cavity = zone('Z', [
    [0, -400, 0],
    [4000, 400, 600],
  ]);

  it('in a cavity: everything that runs in it by its place or by its own word, and what has no place may', () => {
    const far = node('FAR', [9000, 0, 100], { role: 'lamp', nodeKind: 'device' });
    const named = run('3', { ...fuse, at: [9000, 0, 0] }, far, [], { zones: ['Z'], fromSide: 'load' });
    const both = { zones: [cavity], nodes: [...wired.nodes, far], runs: [...wired.runs, named] };
    const placed = isolate(assessment(both), 'Z');
    expect(placed).toMatchObject({ kind: 'zone', sourcesLeft: [], verified: true, unknown: [] });
    expect(placed?.notes[0]).toBe('Everything that runs in the cavity.');
    // The wire of the battery lies in it: its leads come off.
    expect(pulled(placed)).toEqual(['BAT']);
    const word = isolate(
      assessment({
        ...both,
        zones: [
          zone('Z', [
            [20000, 0, 0],
            [21000, 1, 1],
          ]),
        ],
      }),
      'Z',
    );
    expect(pulled(word)).toEqual(['F']);
    const { at: _, ...nowhere } = of('LOST', 'lamp');
    const lost = [1, 2, 3, 4, 5, 6, 7].map((i) => ({ ...nowhere, id: `LOST-${i}` }));
    const unsure = isolate(assessment({ ...both, nodes: [...both.nodes, ...lost] }), 'Z');
    expect(unsure?.verified).toBe(false);
    expect(unsure?.unknown.at(-1) ?? unsure?.unknown[0]).toBeDefined();
    expect(unsure?.unknown.find(({ id }) => id === 'Z')?.what).toBe(
      'the place of LOST-1, LOST-2, LOST-3, LOST-4, LOST-5, LOST-6 and 1 more is not recorded: it may lie there too; record `at`',
    );
  });

  it('in a cavity: what lies behind one another in it, is of no known size, or only crosses it, all the same', () => {
    const [a, fa, b, fb, c, d] = [
      of('A', 'battery', 'dc', { at: [-50, 0, 100] }),
      of('FA', 'fuse', 'dc', { at: [500, 0, 100] }),
      of('B', 'tank', 'water', { at: [3000, 0, 100] }),
      of('VB', 'shut-off', 'water', { at: [3900, 0, 100] }),
      of('C', 'cylinder', 'gas', { at: [2000, -900, 100] }),
      of('D', 'appliance', 'gas', { at: [2000, 900, 100] }),
    ];
    const small = zone('Z', [
      [0, -100, 0],
      [4000, 100, 600],
    ]);
    const runs = [run('1', a, fa, [], { toSide: 'line' }), run('2', b, fb), run('3', c, d)];
    const found = isolate(assessment({ zones: [small], nodes: [a, fa, b, fb, c, d], runs }), 'Z');
    expect(found?.sources).toEqual(['A', 'B', 'C']);
    expect(found?.media).toEqual(['dc', 'water', 'gas']);
  });

  it('in an empty cavity: nothing to answer; where something has no place, that alone', () => {
    const empty = zone('EMPTY', [
      [20000, 0, 0],
      [21000, 100, 100],
    ]);
    expect(isolate(assessment({ ...wired, zones: [empty] }), 'EMPTY')).toBeUndefined();
    const { at: _, ...lost } = of('LOST', 'lamp');
    expect(isolate(assessment({ ...wired, nodes: [...wired.nodes, lost], zones: [empty] }), 'EMPTY')).toMatchObject({
      verified: false,
      actions: [],
      unknown: [{ id: 'EMPTY', what: 'the place of LOST is not recorded: it may lie there too; record `at`' }],
    });
  });

  it('behind a panel: nodes and runs within an arm’s length of it', () => {
    const found = isolate(assessment({ ...wired, zones: [cavity], panels: [accessPanel('AP', [1000, 0, 0], [300, 300])] }), 'AP');
    expect(found?.kind).toBe('panel');
    expect(found?.notes[0]).toBe('Everything within an arm’s length behind the panel.');
    expect(found?.sources).toEqual(['BAT']);
    // The battery itself lies there: nothing makes it dead.
    expect(found?.sourcesLeft).toEqual(['BAT']);
    expect(found?.notes.join(' ')).toContain('BAT is a source itself and cannot be cut off from itself.');
    expect(found?.notes.join(' ')).not.toContain('Nothing on record can be switched off or shut between it');
  });

  it('of a circuit: its runs; without a run, that is what is missing', () => {
    const shell = { ...wired, circuits: [circuit('C')] };
    expect(isolate(assessment(shell), 'C')).toMatchObject({
      verified: false,
      unknown: [{ id: 'C', what: 'no run of it is recorded: record its wires or pipes' }],
    });
  });

  it('of a tank by the component that is the same solid, and the other way round', () => {
    const tank = {
      ...record('T'),
      use: 'fresh',
      of: 'CMP',
      contents: 'water',
      capacityM3: 0.1,
      at: [1000, 0, 100],
    } as unknown as Tank;
    const [out, tap] = [of('OUT', 'tank', 'water', { of: ['CMP'] }), of('TAP', 'tap', 'water')];
    const valve = of('V', 'shut-off', 'water');
    const shell = {
      tanks: [tank],
      components: [component('CMP', [1000, 0, 100])],
      nodes: [out, valve, tap],
      runs: [run('1', out, valve), run('2', valve, tap)],
    };
    const twice = of('TWO', 'tank', 'water', { of: ['CMP', 'OTHER'] });
    expect(isolate(assessment({ ...shell, nodes: [...shell.nodes, twice] }), 'T')?.notes[0]).toBe(
      'Its connections, as recorded: OUT, TWO.',
    );
    // The other way round: the node is recorded of the tank, and the component is asked for.
    const ofTank = assessment({ ...shell, nodes: [{ ...out, of: ['T'] }, valve, tap] });
    expect(isolate(ofTank, 'CMP')?.notes[0]).toBe('Its connections, as recorded: OUT.');
    for (const id of ['T', 'CMP'])
      expect(isolate(assessment(shell), id)?.notes[0], id).toBe('Its connections, as recorded: OUT.');
    expect(isolate(assessment({ nodes: [of('X', 'lamp', 'dc', { of: ['A', 'B'] })] }), 'X')?.notes[0]).toBe(
      'For work on the whole of A and B isolate that.',
    );
    expect(isolate(assessment(shell), 'NOBODY')).toBeUndefined();
  });
});

describe('the proof', () => {
  const reach = (
    shell: { nodes: readonly ServiceNode[]; runs: readonly ReturnType<typeof run>[] },
    id: string,
    done: readonly string[] = [],
  ) =>
    sourcesReaching({ circuits: [], ...shell }, { nodes: [], runs: [id] }, { nodes: new Set(done), circuits: new Set<string>() });

  it('lets no supply of a changeover back out of the other, though its load is a ring', () => {
    const [shore, gen, ats, bar] = [
      of('SHORE', 'shore inlet', 'ac'),
      of('GEN', 'generator', 'ac'),
      of('ATS', 'changeover', 'ac'),
      of('BAR', 'busbar', 'ac'),
    ];
    const ring = (flip: boolean) => {
      const two = (id: string, a: ServiceNode, side: string) =>
        flip ? run(id, ats, a, [], { fromSide: side }) : run(id, a, ats, [], { toSide: side });
      return {
        nodes: [shore, gen, ats, bar],
        runs: [two('S', shore, 'supply 1'), two('G', gen, 'supply 2'), two('L1', bar, 'load'), two('L2', bar, 'load')],
      };
    };
    for (const flip of [false, true]) {
      expect(reach(ring(flip), 'S')).toEqual(['SHORE']);
      expect(reach(ring(flip), 'G')).toEqual(['GEN']);
      expect(reach(ring(flip), 'L1')).toEqual(['SHORE', 'GEN']);
    }
  });

  it('takes a charger’s alternating side as its in side and an inverter’s as its out side, however the run is recorded', () => {
    const [shore, chg, dc] = [of('SHORE', 'shore inlet', 'ac'), of('CHG', 'charger', 'ac'), of('B', 'busbar')];
    const charge = { nodes: [shore, chg, dc], runs: [run('AC', shore, chg), run('DC', chg, dc, [], { medium: 'dc' })] };
    expect(reach(charge, 'DC')).toEqual(['SHORE']);
    const back = { nodes: [bat, chg, shore], runs: [run('AC', shore, chg), run('DC', bat, chg)] };
    expect(reach(back, 'AC')).toEqual(['SHORE']);
    const [inv, out] = [of('INV', 'inverter', 'ac'), of('OUT', 'outlet', 'ac')];
    const invert = { nodes: [bat, inv, out], runs: [run('DC', bat, inv), run('AC', inv, out)] };
    expect(reach(invert, 'AC')).toEqual(['BAT']);
    const gen = of('GEN', 'generator', 'ac');
    expect(reach({ nodes: [inv, gen, dc], runs: [run('AC', inv, gen), run('DC', inv, dc, [], { medium: 'dc' })] }, 'DC')).toEqual(
      [],
    );
  });

  it('is stopped by what is off, and by nothing else of that kind', () => {
    const two = { nodes: wired.nodes, runs: wired.runs };
    expect(reach(two, '2')).toEqual(['BAT']);
    expect(reach(two, '2', ['F'])).toEqual([]);
    expect(reach(two, '1', ['F'])).toEqual(['BAT']);
    expect(reach(two, '1', ['BAT'])).toEqual([]);
    expect(reach(two, '2', ['L'])).toEqual(['BAT']);
  });
});
