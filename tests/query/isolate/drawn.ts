import fc from 'fast-check';
import type { ServiceFacts } from '../../../src/query/isolate/graph/facts.js';
import type { Medium, NodeKind, NodeRole } from '../../../src/records/index.js';

type Node = ServiceFacts['nodes'][number];

/** What a drawn node is: kind, role, medium. */
const NODES: readonly (readonly [NodeKind, NodeRole | undefined, Medium])[] = [
  ['source', 'battery', 'dc'],
  ['source', 'shore inlet', 'ac'],
  ['source', undefined, 'dc'],
  ['source', 'tank', 'water'],
  ['device', 'switch', 'dc'],
  ['terminal', 'fuse', 'dc'],
  ['device', 'breaker', 'ac'],
  ['valve', undefined, 'water'],
  ['device', 'changeover', 'ac'],
  ['device', 'changeover', 'dc'],
  ['device', 'charger', 'ac'],
  ['device', 'diode', 'dc'],
  ['device', 'inverter charger', 'dc'],
  ['device', 'pump', 'water'],
  ['panel', 'busbar', 'dc'],
  ['junction', undefined, 'ac'],
  ['splice', undefined, 'dc'],
  ['load', 'appliance', 'dc'],
  ['fitting', undefined, 'water'],
];

const SIDES: Readonly<Record<string, readonly string[]>> = {
  switch: ['line', 'load'],
  fuse: ['line', 'load'],
  breaker: ['line', 'load'],
  changeover: ['supply 1', 'supply 2', 'load'],
  charger: ['in', 'out'],
  diode: ['in', 'out'],
  pump: ['in', 'out'],
  'inverter charger': ['ac in', 'ac out', 'dc'],
};
const sidesOf = ({ role, nodeKind }: Node): readonly string[] | undefined =>
  role === undefined ? (nodeKind === 'valve' ? ['line', 'load'] : undefined) : SIDES[role];

/**
 * Small services of every sort of node. `gaps`: how often of 100 a side stays unrecorded. At most ten places that a hand can part, so
 * that every set of them can be tried.
 */
export const drawnServices = (gaps: number): fc.Arbitrary<ServiceFacts> =>
  fc
    .tuple(
      fc.array(fc.tuple(fc.nat(NODES.length - 1), fc.nat(3)), { minLength: 3, maxLength: 9 }),
      fc.array(fc.tuple(fc.nat(8), fc.nat(8), fc.nat(99), fc.nat(99), fc.nat(5), fc.nat(5), fc.nat(3)), {
        minLength: 3,
        maxLength: 12,
      }),
    )
    .map(([drawn, ends]) => {
      const nodes: Node[] = drawn.map(([i, thing], n) => {
        const [nodeKind, role, medium] = NODES[i] as (typeof NODES)[number];
        return {
          id: `N${n}`,
          nodeKind,
          medium,
          ...(role === undefined ? {} : { role }),
          ...(thing === 3 ? {} : { of: [`E${thing}`] }),
        };
      });
      const pick = (i: number): Node => nodes[i % nodes.length] as Node;
      const side = (node: Node, gap: number, which: number): string | undefined => {
        const sides = sidesOf(node);
        return sides === undefined || gap < gaps ? undefined : sides[which % sides.length];
      };
      const runs = ends
        .filter(([a, b]) => pick(a) !== pick(b))
        .map(([a, b, gapA, gapB, whichA, whichB, circuit], i) => {
          const [from, to] = [pick(a), pick(b)];
          const [fromSide, toSide] = [side(from, gapA, whichA), side(to, gapB, whichB)];
          return {
            id: `R${i}`,
            medium: from.medium,
            from: from.id,
            to: to.id,
            ...(fromSide === undefined ? {} : { fromSide }),
            ...(toSide === undefined ? {} : { toSide }),
            ...(circuit < 2 ? { circuit: `C${circuit}` } : {}),
          };
        });
      const holder = nodes.find((node) => node.nodeKind === 'panel' || node.nodeKind === 'splice');
      const circuits = ['C0', 'C1'].map((id) => ({
        id,
        medium: 'dc' as const,
        ...(holder ? { protection: { kind: 'fuse', at: holder.id } } : {}),
      }));
      return { nodes, runs, circuits };
    });
