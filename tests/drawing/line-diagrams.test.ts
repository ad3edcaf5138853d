import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as drawing from '../../src/drawing/index.js';
import { type Leg, type LegBranch, serviceTrees } from '../../src/drawing/line-diagram/tree.js';
import { legId } from '../../src/drawing/line-diagram/words.js';
import type { Run, ServiceNode } from '../../src/records/index.js';
import { judged } from '../demo/store.js';
import { node, run } from './sample.js';

const SHEET = { widthMm: 177.9, heightMm: 225 };

/** Nodes and runs of a forest, in the order found; `rings`: runs that lead to a node elsewhere in it, each once. */
function held(legs: readonly Leg[]): {
  readonly nodes: readonly string[];
  readonly runs: readonly string[];
  readonly rings: readonly string[];
} {
  const nodes: string[] = [];
  const runs: string[] = [];
  const rings: string[] = [];
  const walk = (leg: Leg): void => {
    nodes.push(...leg.nodes.map(({ id }) => id));
    runs.push(...leg.within.map(({ id }) => id));
    for (const branch of leg.branches) {
      if (branch.to) {
        runs.push(branch.run.id);
        walk(branch.to);
      } else rings.push(branch.run.id);
    }
  };
  legs.forEach(walk);
  return { nodes, runs: [...runs, ...new Set(rings)], rings };
}

/** The way from a root to the leg that holds a node, by ids. */
function wayTo(legs: readonly Leg[], id: string): readonly string[] {
  const look = (leg: Leg, before: readonly string[]): readonly string[] | undefined => {
    const way = [...before, legId(leg)];
    if (leg.nodes.some((one) => one.id === id)) return way;
    return leg.branches.map(({ to }: LegBranch) => to && look(to, way)).find((found) => found !== undefined);
  };
  return legs.map((leg) => look(leg, [])).find((found) => found !== undefined) ?? [];
}

const { shell } = judged('OV-021').assessment.model;
const of = (service: string): readonly [readonly ServiceNode[], readonly Run[]] => [
  shell.nodes.filter((one) => one.service === service),
  shell.runs.filter((one) => one.service === service),
];

describe('the tree of a service', () => {
  it('holds every node and every run of the demo once', () => {
    for (const { id } of shell.services) {
      const [nodes, runs] = of(id);
      const found = held(serviceTrees(nodes, runs));
      expect([...found.nodes].sort()).toEqual(nodes.map((one) => one.id).sort());
      expect([...found.runs].sort()).toEqual(runs.map((one) => one.id).sort());
    }
  });

  it('leads from the source by protection and switch to the load', () => {
    expect(wayTo(serviceTrees(...of('dc-house')), 'DC-22/L1')).toEqual([
      ...['BAT', 'BAT/MF', 'BAT/MD', 'DCP', 'DC-22/F', 'DC-22/S1', 'DC-22/L1'],
    ]);
    expect(wayTo(serviceTrees(...of('water')), 'SINK-1/C').slice(0, 3)).toEqual(['FRESH/OUT', 'WV-1', 'PUMP']);
  });

  it('goes by what joins what and by roles, and by no name', () => {
    const [nodes, runs] = of('dc-house');
    const nameless = nodes.map(({ name: _name, ...one }) => one as ServiceNode);
    expect(held(serviceTrees(nameless, runs))).toEqual(held(serviceTrees(nodes, runs)));
  });

  it('holds each of any nodes and runs once, in circles too', () => {
    const graph = fc.record({
      count: fc.integer({ min: 1, max: 12 }),
      pairs: fc.array(fc.tuple(fc.nat(11), fc.nat(11)), { maxLength: 24 }),
    });
    fc.assert(
      fc.property(graph, ({ count, pairs }) => {
        const nodes = Array.from({ length: count }, (_, k) => node(`N/${k}`, 'dc', k % 3 === 0 ? 'source' : 'load', [k, 0, 0]));
        const at = (k: number): ServiceNode => nodes[k % count] as ServiceNode;
        const runs = pairs.map(([a, b], k) => run(`R/${k}`, 'dc', at(a), at(b)));
        const found = held(serviceTrees(nodes, runs));
        expect([...found.nodes].sort()).toEqual(nodes.map(({ id }) => id).sort());
        expect([...found.runs].sort()).toEqual(runs.map(({ id }) => id).sort());
        // A ring is seen from both its ends.
        for (const id of found.rings) {
          const { from, to } = runs.find((one) => one.id === id) as Run;
          expect([id, found.rings.filter((one) => one === id).length]).toEqual([id, from === to ? 1 : 2]);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** What hangs on a leg of the demo's house battery, by run. */
const hanging = (id: string): readonly string[] => {
  const look = (leg: Leg): readonly string[] =>
    (leg.nodes.at(-1)?.id === id
      ? leg.branches.map(({ run: one, to, back }) => `${one.id} ${to ? legId(to) : back}`)
      : []
    ).concat(leg.branches.flatMap(({ to }) => (to ? look(to) : [])));
  return serviceTrees(...of('dc-house')).flatMap(look);
};

describe('the sides of a switch', () => {
  it('keep what is joined before it out of what it switches off: charger and solar stay live with BAT/MD off', () => {
    // The record: DC-S/3, DC-S2/2 and DC-C/2 end on the line side of BAT/MD, DC-00/3 on its load side.
    expect(hanging('BAT/MD')).toEqual(['DC-00/3 DCP']);
    expect(hanging('BAT/MF')).toEqual(['DC-00/2 BAT/MD', 'DC-S/3 SOL/MPT', 'DC-S2/2 SOL/F2', 'DC-C/2 CONV/F']);
  });

  it('are told where only the record can tell them: of a side that is not recorded it says so', () => {
    const nodes = [
      node('B', 'dc', 'source', [0, 0, 0]),
      { ...node('S', 'dc', 'device', [1, 0, 0]), role: 'switch' as const },
      ...['L1', 'L2'].map((id) => node(id, 'dc', 'load', [2, 0, 0])),
    ];
    const [b, s, l1, l2] = nodes as [ServiceNode, ServiceNode, ServiceNode, ServiceNode];
    const feed = { ...run('R1', 'dc', b, s), toSide: 'line' };
    const known = { ...run('R2', 'dc', s, l1), fromSide: 'load' };
    const [root] = serviceTrees(nodes, [feed, known, run('R3', 'dc', s, l2)]);
    const at = root?.branches[0]?.to;
    expect(at?.branches.map(({ run: one, note }) => [one.id, note])).toEqual([
      ['R2', undefined],
      ['R3', { id: 'S' }],
    ]);
    const [same] = serviceTrees(nodes, [feed, { ...known, fromSide: 'line' }, { ...run('R3', 'dc', s, l2), fromSide: 'load' }]);
    expect(same?.branches.map(({ run: one, note }) => [one.id, note])).toEqual([
      ['R1', undefined],
      ['R2', { id: 'S', side: 'line' }],
    ]);
  });

  it('let a line through a one-way node only its own way', () => {
    const nodes = [
      node('B', 'dc', 'source', [0, 0, 0]),
      { ...node('M', 'dc', 'device', [1, 0, 0]), role: 'solar regulator' as const },
      node('P', 'dc', 'junction', [2, 0, 0]),
      { ...node('SUN', 'dc', 'source', [3, 0, 0]), role: 'solar panel' as const },
    ];
    const [b, m, p, sun] = nodes as [ServiceNode, ServiceNode, ServiceNode, ServiceNode];
    const runs = [
      { ...run('R1', 'dc', m, b), fromSide: 'out' },
      { ...run('R2', 'dc', p, m), toSide: 'in' },
      run('R3', 'dc', sun, p),
    ];
    const trees = serviceTrees(nodes, runs);
    expect(wayTo(trees, 'M')).toEqual(['SUN', 'P', 'M']);
    expect(trees.find((one) => legId(one) === 'B')?.branches).toMatchObject([{ back: 'M', flow: 'from', side: 'out' }]);
  });

  it('make no source of what takes in there: the network shelf is fed by DC-33', () => {
    expect(wayTo(serviceTrees(...of('dc-house')), 'NET')[0]).not.toBe('NET');
    expect(wayTo(serviceTrees(...of('data')), 'NET')).toEqual(['NET']);
  });
});

describe('a line diagram', () => {
  const sheets = drawing
    .mediaUsed(judged('OV-021').assessment)
    .flatMap((medium) => [...drawing.lineDiagrams(judged('OV-021').assessment, medium, SHEET)]);

  it('links every run that is no part of a row, and the first node of every leg', () => {
    const linked = new Set(sheets.flatMap(({ ids }) => ids));
    for (const { id } of shell.services) {
      const [nodes, runs] = of(id);
      const walk = (leg: Leg): readonly string[] => [
        (leg.nodes[0] as ServiceNode).id,
        ...leg.branches.flatMap(({ run: one, to }) => [...(one.abandoned ? [] : [one.id]), ...(to ? walk(to) : [])]),
      ];
      for (const one of serviceTrees(nodes, runs).flatMap(walk)) expect([id, one, linked.has(one)]).toEqual([id, one, true]);
    }
  });

  it('draws ground bonds by themselves, and says why nothing hangs on an end', () => {
    const words = sheets.flatMap(({ marks = [] }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
    expect(words).toContain('negative bar, ground bonds');
    expect(words).toContain('capped end, old buzzer pair, its run is abandoned');
  });

  it('gives protection its size and wires theirs', () => {
    const words = sheets.flatMap(({ marks = [] }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
    // BAT/MF is a fuse of 200 A in the record, its circuit's wire 4/0 AWG.
    expect(words).toContain('200 A');
    expect(words).toContain('4/0 AWG');
    expect(words.some((one) => one.includes('grey/black'))).toBe(true);
  });

  it('is no higher than its sheet', () => {
    for (const { id, heightMm } of sheets) expect([id, heightMm <= SHEET.heightMm + 6]).toEqual([id, true]);
  });
});
