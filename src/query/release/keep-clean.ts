import type { Model } from '../../model/shell.js';
import type { ServiceNode } from '../../records/index.js';
import { findables } from '../lookup/records.js';
import type { KeepClean } from './types.js';

const EARTH = /\b(earth|earthing|ground|grounding|bond|bonding)\b/iu;
const NOT_EARTH = /\bground fault\b/iu;
const OPEN = /\b(drain|vent|breather|weep)\b/iu;

const isEarth = (text: string): boolean => EARTH.test(text) && !NOT_EARTH.test(text);
const wordsOf = (node: ServiceNode): string => [node.name, node.marking].filter(Boolean).join(' ');

type Test = (node: ServiceNode) => boolean;

/** The first that fits takes a node. */
const NODES: readonly (readonly [what: string, why: string, test: Test])[] = [
  [
    'earth and bonding pads',
    'bare metal, or the circuit has no earth: mask before sanding, coat again as found',
    (node) => ['terminal', 'junction', 'connector', 'fitting'].includes(node.nodeKind) && isEarth(wordsOf(node)),
  ],
  [
    'drains, vents and breathers',
    'keep open: a blocked drain holds water, a blocked gas vent holds gas',
    (node) => node.nodeKind === 'drain' || OPEN.test(wordsOf(node)),
  ],
  [
    'gauge tappings and test points',
    'threads and caps must come free for the next test',
    (node) => node.nodeKind === 'test-point',
  ],
  [
    'terminals and connectors',
    'paint on a contact makes heat: cover, and never spray into an open panel',
    (node) => node.nodeKind === 'terminal' || node.nodeKind === 'connector',
  ],
];

/** Places to be kept clear of paint, primer and sealer, from the records. Groups without any are left out. */
export function keepClean({ shell }: Model): readonly KeepClean[] {
  const taken = new Set<string>();
  const ofNodes = NODES.map(([what, why, test]): KeepClean => {
    const nodes = shell.nodes.filter((node) => !taken.has(node.id) && test(node));
    for (const node of nodes) taken.add(node.id);
    return { what, why, items: nodes.map(({ id, name, at }) => ({ id, ...(name === undefined ? {} : { name }), at })) };
  });
  const places = new Map(findables(shell).map((one) => [one.id, one.position] as const));
  const placed = (id: string, name: string | undefined): KeepClean['items'][number] => {
    const at = places.get(id);
    return { id, ...(name === undefined ? {} : { name }), ...(at ? { at } : {}) };
  };
  const access = shell.panels.filter((panel) => panel.panelKind === 'access');
  return [
    ...ofNodes,
    {
      what: 'clamps and U-bolts',
      why: 'paint under a nut or on a thread takes the torque with it, and hides a nut that has turned',
      items: shell.clamps.map(({ id, clampKind }) => placed(id, clampKind)),
    },
    {
      what: 'access panels',
      why: 'screw threads, edges and seals: a panel painted shut is cut open on the road',
      items: access.map(({ id, name }) => placed(id, name)),
    },
  ].filter(({ items }) => items.length > 0);
}
