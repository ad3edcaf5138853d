import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as drawing from '../../src/drawing/index.js';
import { type Leg, type LegBranch, serviceTrees } from '../../src/drawing/line-diagram/tree.js';
import { legId } from '../../src/drawing/line-diagram/words.js';
import type { Run, ServiceNode } from '../../src/records/index.js';
import { judged } from '../demo/store.js';
import { node, run } from './sample.js';

const SHEET = { widthMm: 177.9, heightMm: 225 };

/** Nodes and runs of a forest, in the order found. */
function held(legs: readonly Leg[]): { readonly nodes: readonly string[]; readonly runs: readonly string[] } {
  const nodes: string[] = [];
  const runs: string[] = [];
  const walk = (leg: Leg): void => {
    nodes.push(...leg.nodes.map(({ id }) => id));
    runs.push(...leg.within.map(({ id }) => id));
    for (const branch of leg.branches) {
      runs.push(branch.run.id);
      if (branch.to) walk(branch.to);
    }
  };
  legs.forEach(walk);
  return { nodes, runs };
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
      }),
      { numRuns: 60 },
    );
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
