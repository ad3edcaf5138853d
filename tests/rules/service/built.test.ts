import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/geometry/vector.js';
import type { Medium, NodeKind, ServiceNode } from '../../../src/records/index.js';
import { circuit, levelPanel, node, run, zone } from '../../support/services.js';
import { judged } from './judge.js';

const of = (id: string, at: Vec3, nodeKind: NodeKind, medium: Medium = 'dc', more: Partial<ServiceNode> = {}) =>
  node(id, at, { nodeKind, medium, ...more });
const ids = (rule: string, shell: Parameters<typeof judged>[1]): readonly string[] =>
  judged(rule, shell).map((finding) => finding.ids[0] as string);

describe('service.protection-far', () => {
  const shell = (fuseAt: number, sheathed = false) => {
    const bat = of('BAT', [0, 0, 0], 'source', 'dc', { name: 'house battery' });
    const lug = of('LUG', [100, 0, 0], 'terminal');
    const fused = of('F', [fuseAt, 0, 0], 'device', 'dc', { name: 'main fuse' });
    return {
      circuits: [circuit('M', { protection: { kind: 'fuse', ratingA: 200, at: 'F' } })],
      nodes: [bat, lug, fused],
      runs: [run('A', bat, lug, [], { sheathed }), run('B', lug, fused, [], { circuit: 'M', sheathed })],
    };
  };

  it('ABYC E-11 (from memory): 7 in of bare wire, counted over terminals on the way', () => {
    expect(ids('service.protection-far', shell(177))).toEqual([]);
    const [finding] = judged('service.protection-far', shell(190));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['B', 'BAT'] });
    expect(finding?.message).toContain('190 mm from BAT before a fuse, expected at most 178 mm');
  });

  it('lets a wire pass whose fuse sits on the battery itself', () => {
    const [bat, box] = [of('BAT', [0, 0, 0], 'source', 'dc', { name: 'house battery' }), of('P', [3000, 0, 0], 'panel')];
    const circuits = [circuit('M', { protection: { kind: 'fuse', ratingA: 200, at: 'BAT' } })];
    const of1 = (more: object) => ({ circuits, nodes: [bat, box], runs: [run('R', bat, box, [], more)] });
    expect(ids('service.protection-far', of1({ circuit: 'M' }))).toEqual([]);
    expect(ids('service.protection-far', of1({}))).toEqual(['R']);
  });

  it('lets a sheathed wire pass, and any source that is no battery', () => {
    expect(ids('service.protection-far', shell(500, true))).toEqual([]);
    const solar = of('SOL', [0, 0, 0], 'source', 'dc', { role: 'solar panel' });
    const box = of('BR', [3000, 0, 0], 'device');
    expect(ids('service.protection-far', { nodes: [solar, box], runs: [run('S', solar, box)] })).toEqual([]);
  });
});

describe('service.no-protection', () => {
  it('wants no fuse in an earth bond, and says how to record one', () => {
    expect(ids('service.no-protection', { circuits: [circuit('DC-E', { bonding: true })] })).toEqual([]);
    const [finding] = judged('service.no-protection', { circuits: [circuit('E', { name: 'earth bonds' })] });
    expect(finding?.message).toContain('`bonding: yes`');
  });
});

describe('service.no-switch', () => {
  const [bat, box] = [of('BAT', [0, 0, 0], 'source', 'dc', { name: 'house battery' }), of('DCP', [1000, 0, 0], 'panel')];
  it('R48: wants a switch, fuse or breaker between a panel and each of its sources', () => {
    const [finding] = judged('service.no-switch', { nodes: [bat, box], runs: [run('R', bat, box)] });
    expect(finding).toMatchObject({ severity: 'warning', ids: ['DCP', 'BAT'] });
    const sw = of('SW', [500, 0, 0], 'device', 'dc', { role: 'switch' });
    const switched = { nodes: [bat, sw, box], runs: [run('R', bat, sw), run('S', sw, box)] };
    expect(ids('service.no-switch', switched)).toEqual([]);
    // A second source that by-passes the switch.
    const solar = of('SOL', [0, 900, 0], 'source', 'dc', { role: 'solar panel' });
    const both = { nodes: [...switched.nodes, solar], runs: [...switched.runs, run('T', solar, box)] };
    expect(judged('service.no-switch', both)[0]?.ids).toEqual(['DCP', 'SOL']);
  });
});

describe('service.ring', () => {
  const [p, a, b] = [of('P', [0, 0, 0], 'panel'), of('A', [1000, 0, 0], 'load'), of('B', [1000, 500, 0], 'load')];
  const tree = [run('1', p, a, [], { circuit: 'C' }), run('2', a, b, [], { circuit: 'C' })];
  const closed = [...tree, run('3', b, p, [[0, 900, 0]], { circuit: 'C' })];

  it('tells the run that closes a ring, in wires as a warning, in pipes as a note', () => {
    expect(ids('service.ring', { circuits: [circuit('C')], nodes: [p, a, b], runs: tree })).toEqual([]);
    const [finding] = judged('service.ring', { circuits: [circuit('C')], nodes: [p, a, b], runs: closed });
    expect(finding).toMatchObject({ severity: 'warning', ids: ['3', 'C'] });
    const pipes = judged('service.ring', { circuits: [circuit('C', { medium: 'water' })], nodes: [p, a, b], runs: closed });
    expect(pipes.map((one) => one.severity)).toEqual(['note']);
  });
});

describe('service.node-twice', () => {
  it('tells one connection under two ids, and a run from a node to itself', () => {
    const [a, again, other] = [of('A', [0, 0, 0], 'splice'), of('A2', [0.4, 0, 0], 'splice'), of('B', [20, 0, 0], 'splice')];
    const [finding, more] = judged('service.node-twice', { nodes: [a, again, other], runs: [] });
    expect(finding).toMatchObject({ severity: 'warning', ids: ['A2', 'A'] });
    expect(finding?.related?.[0]?.message).toContain('A, the first');
    expect(more).toBeUndefined();
    // A fuse and the terminal that it sits on may share a place.
    expect(ids('service.node-twice', { nodes: [a, of('F', [0, 0, 0], 'device')] })).toEqual([]);
    expect(ids('service.node-twice', { nodes: [a, other], runs: [run('R', a, a)] })).toEqual(['R']);
  });
});

describe('service.zone-inside-out', () => {
  const severities = (from: Vec3, to: Vec3) =>
    judged('service.zone-inside-out', { zones: [zone('Z', [from, to])] }).map((finding) => finding.severity);
  it('warns of a box without an inside, notes exchanged corners', () => {
    expect(severities([0, -400, 0], [1000, 400, 200])).toEqual([]);
    expect(severities([0, 400, 0], [1000, 400, 200])).toEqual(['warning']);
    expect(severities([0, 400, 0], [1000, -400, 200])).toEqual(['note']);
    const [finding] = judged('service.zone-inside-out', {
      zones: [
        zone('Z', [
          [0, 400, 0],
          [1000, 400, 200],
        ]),
      ],
    });
    expect(finding?.message).toContain('no size along y');
  });
});

describe('gas', () => {
  const lane = zone('Z', [
    [0, -500, 0],
    [4000, 500, 300],
  ]);
  const shell = (z: number, size?: { text: string; nominalMm: number; material: string }) => {
    const [a, b] = [of('LP', [-500, 0, -100], 'source', 'gas'), of('T', [1000, 0, z], 'fitting', 'gas')];
    return { zones: [lane], nodes: [a, b], runs: [run('GA/1', a, b, [], size ? { size } : {})] };
  };

  it('allows a joint in the open, none in a concealed place', () => {
    expect(ids('service.gas-joint-concealed', shell(-50))).toEqual([]);
    expect(judged('service.gas-joint-concealed', shell(100))[0]).toMatchObject({ severity: 'error', ids: ['T'] });
  });

  it('allows steel, no aluminium tube, whether said of the run or of its circuit', () => {
    const steel = { text: '1/2 in steel', nominalMm: 12.7, material: 'steel' };
    const soft = { text: '3/8 in aluminum tube', nominalMm: 9.5, material: 'aluminum tube' };
    expect(ids('service.gas-aluminium', shell(-50, steel))).toEqual([]);
    expect(judged('service.gas-aluminium', shell(-50, soft))[0]).toMatchObject({ severity: 'error', ids: ['GA/1'] });
    const odd = { text: '3/8 in soft alu line', nominalMm: 9.5, material: 'soft alu line' };
    const [finding] = judged('service.gas-aluminium', shell(-50, odd));
    expect(finding?.severity).toBe('warning');
    expect(finding?.message).toMatch(/^Not proved that GA\/1 is not of aluminium: `soft alu line` is not in the list/u);
  });
});

describe('wires and water in one cavity', () => {
  const lane = zone('Z', [
    [0, -500, 0],
    [4000, 500, 300],
  ]);
  const shell = (wireZ: number, wireY = 60) => {
    const [w1, w2] = [of('W1', [100, wireY, wireZ], 'splice'), of('W2', [3900, wireY, wireZ], 'splice')];
    const [p1, p2] = [of('P1', [100, 0, 150], 'fitting', 'water'), of('P2', [3900, 0, 150], 'fitting', 'water')];
    return { zones: [lane], nodes: [w1, w2, p1, p2], runs: [run('DC', w1, w2), run('WC', p1, p2)] };
  };

  it('service.wire-below-water: wires above, or well aside', () => {
    expect(ids('service.wire-below-water', shell(200))).toEqual([]);
    expect(ids('service.wire-below-water', shell(50, 400))).toEqual([]);
    const [finding] = judged('service.wire-below-water', shell(50));
    expect(finding).toMatchObject({ severity: 'warning', ids: ['DC', 'WC'] });
    expect(finding?.message).toContain('100 mm below WC');
    // In a cavity of its own it may lie where it likes.
    const { zones: _, ...apart } = shell(50);
    expect(ids('service.wire-below-water', apart)).toEqual([]);
  });

  it('service.joint-under-union: no joint within 75 mm under a fitting', () => {
    expect(judged('service.joint-under-union', shell(50))[0]).toMatchObject({ severity: 'warning', ids: ['W1', 'P1'] });
    expect(ids('service.joint-under-union', shell(50, 80))).toEqual([]);
    expect(ids('service.joint-under-union', shell(200))).toEqual([]);
  });
});

describe('service.trough-undrained', () => {
  const belly = levelPanel('BP', [2000, 0, 0], [4000, 1000]);
  const shell = (z: number, drains: readonly Vec3[] = [[100, 0, 0]]) => {
    const [a, b] = [of('A', [100, 0, z], 'splice'), of('B', [3900, 0, z], 'splice')];
    const box: readonly [Vec3, Vec3] = [
      [0, -500, 0],
      [4000, 500, 300],
    ];
    return { panels: [belly], zones: [zone('Z', box, { closedBy: ['BP'], drains })], nodes: [a, b], runs: [run('R', a, b)] };
  };
  it('wants a drain hole, and nothing in the lowest 20 mm', () => {
    expect(ids('service.trough-undrained', shell(25))).toEqual([]);
    expect(ids('service.trough-undrained', shell(25, []))).toEqual(['Z']);
    expect(judged('service.trough-undrained', shell(15))[0]).toMatchObject({ severity: 'warning', ids: ['R', 'Z'] });
  });
  it('asks nothing of a cavity that no belly panel closes', () => {
    expect(ids('service.trough-undrained', { ...shell(15, []), panels: [] })).toEqual([]);
  });
});

describe('notes', () => {
  const [a, b] = [of('A', [0, 0, 0], 'terminal'), of('B', [2000, 0, 0], 'splice')];
  const service = { id: 's', name: 'House', medium: 'dc' as const, file: 's.yaml', circuits: [], nodes: [], runs: [] };

  it('service.no-spare-way: a chase wants a spare way and a cord; an open cavity does not', () => {
    const chase = (more: object) => ({
      zones: [
        zone(
          'RC',
          [
            [0, 0, 0],
            [3000, 400, 100],
          ],
          { name: 'sound', carries: ['ac'], ...more },
        ),
      ],
    });
    expect(ids('service.no-spare-way', chase({ spare: 'one loom tube', pullCord: true }))).toEqual([]);
    expect(judged('service.no-spare-way', chase({ pullCord: true }))[0]?.message).toContain('add `spare`');
    expect(judged('service.no-spare-way', chase({ spare: 'x' }))[0]?.message).toContain('`pull_cord: yes`');
    expect(ids('service.no-spare-way', chase({ concealed: false }))).toEqual([]);
    expect(ids('service.no-spare-way', chase({ name: 'truss chase conduit', carries: ['water'] }))).toEqual([]);
  });

  it('service.stud-crowded: ABYC E-11 (from memory), four on a stud, any number on a bar', () => {
    const runs = (count: number) => Array.from({ length: count }, (_, i) => run(`R${i}`, a, b));
    expect(ids('service.stud-crowded', { nodes: [a, b], runs: runs(4) })).toEqual([]);
    expect(ids('service.stud-crowded', { nodes: [a, b], runs: runs(5) })).toEqual(['A']);
    const bar = of('A', [0, 0, 0], 'terminal', 'dc', { role: 'busbar' });
    expect(ids('service.stud-crowded', { nodes: [bar, b], runs: runs(5) })).toEqual([]);
  });

  it('service.support-at-end: first support within 150 mm of the terminal', () => {
    const by = (endSupportsMm: number) =>
      ids('service.support-at-end', { nodes: [a, b], runs: [run('R', a, b, [], { endSupportsMm })] });
    expect(by(150)).toEqual([]);
    expect(by(160)).toEqual(['R']);
  });

  it('service.untagged: both ends, and one note where a service does not say', () => {
    const tagged = (tags?: 'both ends' | 'one end' | 'none') => ({
      services: [service],
      nodes: [a, b],
      runs: [run('R', a, b, [], tags ? { tags } : {}), run('R2', a, b, [], { tags: 'both ends' })],
    });
    expect(ids('service.untagged', tagged('both ends'))).toEqual([]);
    expect(judged('service.untagged', tagged('one end'))[0]?.message).toContain('one end, expected both');
    expect(judged('service.untagged', tagged())[0]?.message).toContain('1 runs of House do not say');
  });
});

describe('a conduit’s fill', () => {
  const [a, b] = [node('A', [0, 0, 0]), node('B', [2000, 0, 0])];
  const filled = (awg: string, count: number) =>
    judged('service.cavity-full', {
      nodes: [a, b],
      zones: [
        {
          ...zone(
            'CD',
            [
              [0, 0, 0],
              [0, 0, 0],
            ],
            { conduit: { text: '1/2 in EMT', nominalMm: 12.7, material: 'EMT' } },
          ),
          box: undefined,
          along: [
            [0, 0, 0],
            [2000, 0, 0],
          ],
          clearMm: [12.7, 12.7],
        },
      ],
      runs: Array.from({ length: count }, (_, i) =>
        run(`R${i}`, a, b, [], { zones: ['CD'], conductor: { awg, conductors: 1, material: 'copper' } }),
      ),
    });

  it('WIR-48, WIR-49: 1/2 in EMT is 0.304 in² inside; 31 % with two wires, 40 % with more', () => {
    expect(filled('12', 3)).toEqual([]);
    const [finding] = filled('4', 2);
    expect(finding?.message).toContain('expected at most 31 %');
  });
});
