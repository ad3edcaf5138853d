import { describe, expect, it } from 'vitest';
import { isolate } from '../../../src/query/isolate/index.js';
import type { NodeKind, NodeRole, ServiceNode } from '../../../src/records/index.js';
import { accessPanel, circuit, component, node, run, zone } from '../../support/services.js';
import { assessment } from '../lookup/assessment.js';

type Medium = ServiceNode['medium'];

const of = (id: string, role: NodeRole | NodeKind, medium: Medium = 'dc', more: Partial<ServiceNode> = {}) => {
  const kinds: readonly string[] = ['source', 'panel', 'load', 'valve', 'drain', 'device', 'fitting', 'splice', 'test-point'];
  const kind = kinds.includes(role) ? (role as NodeKind) : 'device';
  const typed = kinds.includes(role) ? {} : { role: role as NodeRole };
  return node(id, [1000, 0, 900], { nodeKind: kind, medium, ...typed, ...more });
};

/** Shore through a charger, and a battery behind its switch, to a DC panel with two fused circuits. */
function coach() {
  const [bat, sw, shore, main] = [
    of('BAT', 'battery'),
    of('SW', 'switch'),
    of('SHORE', 'shore inlet', 'ac'),
    of('MAIN', 'breaker', 'ac'),
  ];
  const [chg, dcp, lamp, motor] = [of('CHG', 'charger', 'ac'), of('DCP', 'busbar'), of('L1', 'lamp'), of('M1', 'appliance')];
  const fuse = (ratingA: number) => ({ protection: { kind: 'fuse', ratingA, at: 'DCP' } });
  return {
    nodes: [bat, sw, shore, main, chg, dcp, lamp, motor],
    circuits: [circuit('DC-1', fuse(15)), circuit('DC-2', fuse(10))],
    runs: [
      run('B1', bat, sw, [], { toSide: 'line' }),
      run('B2', sw, dcp, [], { fromSide: 'load' }),
      run('S1', shore, main, [], { toSide: 'line' }),
      run('S2', main, chg, [], { fromSide: 'load', toSide: 'in' }),
      run('S3', chg, dcp, [], { medium: 'dc', fromSide: 'out' }),
      run('DC-1/1', dcp, lamp, [], { circuit: 'DC-1' }),
      run('DC-2/1', dcp, motor, [], { circuit: 'DC-2' }),
    ],
  };
}

const cut = (found: ReturnType<typeof isolate>): readonly string[] =>
  found?.actions.filter((one) => one.step === 'source').map((one) => `${one.action} ${one.id}`) ?? [];

describe('isolate', () => {
  const given = assessment(coach());

  it('a lamp: its own fuse alone, at its panel', () => {
    const found = isolate(given, 'L1');
    expect(found?.actions.filter((one) => one.step === 'source')).toEqual([
      {
        id: 'DCP',
        kind: 'fuse',
        action: 'open',
        say: 'Pull the fuse of DC-1 at DCP and tag its holder.',
        step: 'source',
        circuit: 'DC-1',
        place: expect.any(String),
        panels: [],
      },
    ]);
    expect(found).toMatchObject({ sources: ['BAT', 'SHORE'], sourcesLeft: [], verified: true, unknown: [], media: ['dc'] });
    expect(cut(isolate(given, 'DC-1'))).toEqual(['open DCP']);
    expect(cut(isolate(given, 'DC-1/1'))).toEqual(['open DCP']);
  });

  it('the panel itself wants every source off', () => {
    const found = isolate(given, 'DCP');
    expect(cut(found)).toEqual(['open SW', 'open MAIN']);
    expect(found).toMatchObject({ sourcesLeft: [], verified: true });
    expect(found?.notes.join(' ')).toContain('BAT: never dead');
  });

  it('goes in the order of 29 CFR 1910.147(d): loads, sources, what is stored, proof', () => {
    const order = ['load', 'source', 'stored', 'proof'];
    const steps = isolate(given, 'DCP')?.actions.map((one) => order.indexOf(one.step)) ?? [];
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
    expect(isolate(given, 'DCP')?.actions.map((one) => `${one.step} ${one.id}`)).toEqual([
      'load M1',
      'source SW',
      'source MAIN',
      'proof DCP',
    ]);
  });

  it('a charger feeds nothing back: the shore side is dead with the shore breaker off', () => {
    const found = isolate(given, 'S2');
    expect(found?.sources).toEqual(['SHORE']);
    expect(cut(found)).toEqual(['open MAIN']);
  });

  it('with the sides of a switch not recorded, and more than two runs on it, nothing is proved', () => {
    const { nodes, circuits, runs } = coach();
    const sw = nodes.find((one) => one.id === 'SW') as ServiceNode;
    const sol = of('SOL', 'solar panel');
    const bare = runs.map((one) => ({ ...one, fromSide: undefined, toSide: undefined }));
    const found = isolate(assessment({ nodes: [...nodes, sol], circuits, runs: [...bare, run('P1', sol, sw)] }), 'DCP');
    expect(found?.verified).toBe(false);
    expect(found?.unknown.map((one) => one.id)).toContain('SW');
    expect(found?.unknown.find((one) => one.id === 'SW')?.what).toContain('B1 (to_side), B2 (from_side), P1 (to_side)');
    // A circuit that is parted before it is proved all the same.
    const lamp = isolate(assessment({ nodes: [...nodes, sol], circuits, runs: [...bare, run('P1', sol, sw)] }), 'L1');
    expect(lamp).toMatchObject({ verified: true, unknown: [] });
  });

  it('a panel or device without a role may do anything: not proved, with what to type', () => {
    const { nodes, circuits, runs } = coach();
    const plain = nodes.map((one) => (one.id === 'DCP' ? of('DCP', 'panel') : one));
    const found = isolate(assessment({ nodes: plain, circuits, runs }), 'DCP');
    expect(found).toMatchObject({ verified: false, sourcesLeft: [] });
    expect(found?.unknown).toEqual([{ id: 'DCP', what: 'what it does to its line is not recorded: type its `role`' }]);
  });

  it('a transfer switch never parts its load from every supply', () => {
    const [shore, sb, gen, gb, ats, acp] = [
      of('SHORE', 'shore inlet', 'ac'),
      of('SB', 'breaker', 'ac'),
      of('GEN', 'generator', 'ac'),
      of('GB', 'breaker', 'ac'),
      of('ATS', 'changeover', 'ac'),
      of('ACP', 'busbar', 'ac'),
    ];
    const mains = assessment({
      nodes: [shore, sb, gen, gb, ats, acp],
      runs: [
        run('1', shore, sb),
        run('2', sb, ats, [], { toSide: 'supply 1' }),
        run('3', gen, gb),
        run('4', gb, ats, [], { toSide: 'supply 2' }),
        run('5', ats, acp, [], { fromSide: 'load' }),
      ],
    });
    expect(cut(isolate(mains, 'ACP'))).toEqual(['open SB', 'open GB']);
    // The generator does not come back out of the shore side.
    expect(isolate(mains, '2')).toMatchObject({ sources: ['SHORE'], verified: true });
    expect(cut(isolate(mains, '2'))).toEqual(['open SB']);
  });

  it('an inverter charger feeds its output from the battery with the shore off', () => {
    const [shore, bat, fuse, inv, out] = [
      of('SHORE', 'shore inlet', 'ac'),
      of('BAT', 'battery'),
      of('F', 'fuse'),
      of('INV', 'inverter charger'),
      of('OUT', 'busbar', 'ac'),
    ];
    const found = isolate(
      assessment({
        nodes: [shore, bat, fuse, inv, out],
        runs: [
          run('1', shore, inv, [], { toSide: 'ac in' }),
          run('2', bat, fuse),
          run('3', fuse, inv, [], { toSide: 'dc' }),
          run('4', inv, out, [], { medium: 'ac', fromSide: 'ac out' }),
        ],
      }),
      'OUT',
    );
    expect(found?.sources).toEqual(['SHORE', 'BAT']);
    expect(cut(found)).toEqual(['disconnect SHORE', 'open F']);
  });

  it('two batteries side by side are two sources; a ring is cut at both ends', () => {
    const [a, b, fa, fb, x, y] = [
      of('A', 'battery'),
      of('B', 'battery'),
      of('FA', 'fuse'),
      of('FB', 'fuse'),
      of('X', 'lamp'),
      of('Y', 'lamp'),
    ];
    const ring = assessment({
      nodes: [a, b, fa, fb, x, y],
      runs: [run('1', a, fa), run('2', b, fb), run('3', fa, x), run('4', x, y), run('5', y, fb), run('6', a, b)],
    });
    expect(isolate(ring, '4')?.sources).toEqual(['A', 'B']);
    expect(cut(isolate(ring, '4'))).toEqual(['open FA', 'open FB']);
  });

  it('empties a tank once, however many nodes it has', () => {
    const tank = { of: ['T-1'] };
    const [out, fill, one, other] = [
      of('T/OUT', 'tank', 'water', tank),
      of('T/IN', 'tank', 'water', tank),
      of('P', 'junction', 'water'),
      of('Q', 'junction', 'water'),
    ];
    const runs = [run('1', out, one), run('2', one, other), run('3', other, fill)];
    const found = isolate(assessment({ nodes: [out, fill, one, other], runs }), '2');
    const emptied = found?.actions.filter((step) => step.step === 'source') ?? [];
    expect(emptied.map(({ id, say }) => [id, say])).toEqual([['T/OUT', 'Empty the tank at T/OUT, T/IN.']]);
    expect(found?.sourcesLeft).toEqual([]);
  });

  it('equipment through every node that is recorded of it, in every medium', () => {
    const [lp, gv, fire, tank, wv, cold, hot, drain] = [
      of('LP', 'cylinder', 'gas'),
      of('GV', 'valve', 'gas'),
      of('H/G', 'appliance', 'gas', { of: ['HTR'] }),
      of('FRESH', 'tank', 'water'),
      of('WV', 'valve', 'water'),
      of('H/C', 'heater', 'water', { of: ['HTR'] }),
      of('H/H', 'fitting', 'water', { of: ['HTR'] }),
      of('DRN', 'drain', 'water'),
    ];
    const found = isolate(
      assessment({
        components: [component('HTR', [9000, 0, 0])],
        nodes: [lp, gv, fire, tank, wv, cold, hot, drain],
        runs: [
          run('1', lp, gv),
          run('2', gv, fire),
          run('3', tank, wv),
          run('4', wv, cold, [], { toSide: 'in' }),
          run('5', cold, hot, [], { fromSide: 'out' }),
          run('6', hot, drain),
        ],
      }),
      'HTR',
    );
    expect(found?.media).toEqual(['gas', 'water']);
    expect(found?.actions.map((one) => `${one.step} ${one.action} ${one.id}`)).toEqual([
      'load open H/G',
      'source shut GV',
      'source shut WV',
      'stored drain H/C',
      'stored drain H/G',
      'stored drain DRN',
      'proof open H/G',
      'proof open H/C',
    ]);
    expect(found).toMatchObject({ sources: ['LP', 'FRESH'], sourcesLeft: [], verified: true });
  });

  it('equipment that no node is recorded of is not proved, wherever it stands', () => {
    const withLamp = assessment({ ...coach(), components: [component('LAMP', [1000, 0, 900], [10, 10, 10])] });
    const found = isolate(withLamp, 'LAMP');
    expect(found).toMatchObject({ verified: false, actions: [], sources: [] });
    expect(found?.unknown[0]?.what).toContain('`of: LAMP`');
  });

  it('a pump drives its line while its own equipment is supplied: its fuse stops it', () => {
    const [tank, valve, pump, tap] = [
      of('T', 'tank', 'water'),
      of('V', 'valve', 'water'),
      of('P', 'pump', 'water', { of: ['SET'] }),
      of('K', 'tap', 'water'),
    ];
    const water = {
      nodes: [tank, valve, pump, tap],
      runs: [run('1', tank, valve), run('2', valve, pump, [], { toSide: 'in' }), run('3', pump, tap)],
    };
    const alone = isolate(assessment(water), 'K');
    expect(alone).toMatchObject({ verified: false, sourcesLeft: ['P'] });
    expect(alone?.unknown[0]?.what).toContain('what supplies it is not recorded');
    const [bat, box, motor] = [of('BAT', 'battery'), of('DCP', 'busbar'), of('P/M', 'appliance', 'dc', { of: ['SET'] })];
    const wired = assessment({
      nodes: [...water.nodes, bat, box, motor],
      circuits: [circuit('DC-9', { protection: { kind: 'fuse', ratingA: 10, at: 'DCP' } })],
      runs: [...water.runs, run('4', bat, box), run('5', box, motor, [], { circuit: 'DC-9' })],
    });
    for (const id of ['K', 'P']) {
      expect(cut(isolate(wired, id)), id).toEqual(['shut V', 'open DCP']);
      expect(isolate(wired, id), id).toMatchObject({ sources: ['T', 'BAT'], sourcesLeft: [], verified: true });
    }
  });

  it('names what is stored: hot water behind a heater, an accumulator, a capacitor', () => {
    const [tank, valve, acc, tap] = [
      of('T', 'tank', 'water'),
      of('V', 'valve', 'water'),
      of('ACC', 'accumulator', 'water'),
      of('K', 'tap', 'water'),
    ];
    const found = isolate(
      assessment({ nodes: [tank, valve, acc, tap], runs: [run('1', tank, valve), run('2', valve, acc), run('3', acc, tap)] }),
      'K',
    );
    expect(found?.actions.map((one) => `${one.step} ${one.id}`)).toEqual(['source V', 'stored ACC', 'stored K', 'proof K']);
  });

  it.each([
    ['shore inlet', 'ac', 'disconnect', 'shore cord'],
    ['generator', 'ac', 'disconnect', 'generator'],
    ['battery', 'dc', 'disconnect', 'battery lead'],
    ['solar panel', 'dc', 'disconnect', 'solar leads'],
    ['cylinder', 'gas', 'disconnect', 'cylinder valve'],
    ['tank', 'water', 'drain', 'tank'],
    ['city inlet', 'water', 'disconnect', 'supply hose'],
    ['reservoir', 'air', 'drain', 'reservoir'],
  ] as const)('takes the line at a %s off it where nothing else parts it', (role, medium, action, kind) => {
    const [a, b] = [of('A', role, medium), of('B', 'splice', medium)];
    const found = isolate(assessment({ nodes: [a, b], runs: [run('R', a, b)] }), 'R');
    expect(found).toMatchObject({ sourcesLeft: [], verified: true });
    expect(found?.actions.find((one) => one.step === 'source')).toMatchObject({ id: 'A', action, kind, lines: ['R'] });
  });

  it('a battery, the sun and a cylinder cannot be cut off from themselves', () => {
    for (const role of ['battery', 'solar panel'] as const) {
      const found = isolate(assessment({ nodes: [of('A', role)], runs: [] }), 'A');
      expect(found?.sourcesLeft, role).toEqual(['A']);
      expect(found?.notes.join(' ')).toContain('is a source itself');
    }
    expect(isolate(assessment({ nodes: [of('A', 'generator', 'ac')] }), 'A')).toMatchObject({ sourcesLeft: [], verified: true });
  });

  it('takes waste fixtures as what feeds a waste line', () => {
    const [sink, tee] = [of('SINK', 'fixture', 'drain'), of('T', 'fitting', 'drain')];
    const found = isolate(assessment({ nodes: [sink, tee], runs: [run('R', sink, tee)] }), 'T');
    expect(found).toMatchObject({ verified: true, sourcesLeft: [] });
    expect(cut(found)).toEqual(['shut SINK']);
  });

  it('without a source on record nothing is proved', () => {
    const { nodes, circuits, runs } = coach();
    const dead = assessment({
      circuits,
      nodes: nodes.filter((one) => one.id === 'DCP' || one.id === 'L1'),
      runs: runs.filter((one) => one.id === 'DC-1/1'),
    });
    expect(isolate(dead, 'L1')).toMatchObject({ verified: false, sources: [], sourcesLeft: [] });
    expect(isolate(dead, 'L1')?.unknown).toEqual([
      { id: 'L1', what: 'no source is recorded on its line: record where it is fed from, or measure' },
    ]);
  });

  it('gives nothing for an unknown id', () => {
    expect(isolate(given, 'NONE')).toBeUndefined();
  });

  it('rests on nothing that is planned and not in the coach yet', () => {
    const { nodes, circuits, runs } = coach();
    const with_ = (planned: readonly string[]) =>
      assessment({
        nodes: nodes.map((one) => (planned.includes(one.id) ? { ...one, planned: true } : one)),
        circuits,
        runs: runs.map((one) => (planned.includes(one.id) ? { ...one, planned: true } : one)),
      });
    const found = isolate(with_(['SW']), 'DCP');
    // With the switch not there yet the battery's own leads come off: never a proof by what is not there.
    expect(cut(found)).toEqual(['open MAIN', 'disconnect BAT']);
    expect(found).toMatchObject({ verified: true, sourcesLeft: [] });
    const fuse = isolate(with_(['SW', 'DC-1/1']), 'DC-1/1');
    expect(fuse?.verified).toBe(false);
    expect(fuse?.unknown.map((one) => one.id)).toContain('DC-1/1');
    expect(fuse?.unknown.find((one) => one.id === 'DC-1/1')?.what).toContain('planned and not in the coach yet');
  });

  it('says where pressure comes out when nothing is recorded to let it out by', () => {
    const [rec, valve, press] = [of('REC', 'reservoir', 'air'), of('V', 'shut-off', 'air'), of('PRESS', 'appliance', 'air')];
    const line = assessment({ nodes: [rec, valve, press], runs: [run('1', rec, valve), run('2', valve, press)] });
    const stored = isolate(line, 'PRESS')?.actions.filter((one) => one.step === 'stored');
    expect(stored).toMatchObject([{ id: 'PRESS', kind: 'joint', action: 'drain' }]);
    expect(stored?.[0]?.say).toContain('loosen the joint at PRESS slowly');
    // A run by itself: at its own end.
    expect(
      isolate(line, '2')
        ?.actions.filter((one) => one.step === 'stored')
        .map((one) => one.id),
    ).toEqual(['PRESS']);
  });

  it('takes the valve that a hand gets at more easily', () => {
    const at = (id: string, kind: NodeKind, z: number) => node(id, [1000, 0, z], { nodeKind: kind, medium: 'water' });
    const [city, hard, easy, tap, drain] = [
      at('CITY', 'source', 900),
      at('V-HARD', 'valve', 550),
      at('V-EASY', 'valve', 100),
      at('TAP', 'load', 900),
      at('DRN', 'drain', 100),
    ];
    const found = isolate(
      assessment({
        zones: [
          zone('Z', [
            [0, -400, 0],
            [4000, 400, 600],
          ]),
        ],
        panels: [accessPanel('AP', [1000, 0, 0], [110, 120])],
        nodes: [city, hard, easy, tap, drain],
        runs: [run('W1', city, hard), run('W2', hard, easy), run('W3', easy, tap), run('W4', tap, drain)],
      }),
      'TAP',
    );
    expect(found?.actions.filter((one) => one.step !== 'proof').map((one) => [one.id, one.action, one.panels])).toEqual([
      ['V-EASY', 'shut', ['AP']],
      ['DRN', 'drain', ['AP']],
    ]);
  });
});
