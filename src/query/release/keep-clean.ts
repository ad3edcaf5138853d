import { earthNodes } from '../../compute/services/earths.js';
import type { Model } from '../../model/shell.js';
import type { Medium, ServiceNode } from '../../records/index.js';
import { findables } from '../lookup/records.js';
import type { KeepClean } from './types.js';

/** Lines that breathe or run out in the open. */
const OPEN_ENDED: readonly Medium[] = ['gas', 'drain', 'duct', 'air', 'water', 'fuel'];

/** A drain by its kind or role; a vent is an outlet of something that flows. */
const isOpenEnd = ({ nodeKind, role, medium }: ServiceNode): boolean =>
  nodeKind === 'drain' || role === 'drain cock' || (role === 'outlet' && OPEN_ENDED.includes(medium));

type Test = (node: ServiceNode, earths: ReadonlySet<string>) => boolean;

/** The first that fits takes a node. */
const NODES: readonly (readonly [what: string, why: string, test: Test])[] = [
  [
    'ground and bonding pads',
    'bare metal, or the circuit has no ground: mask before sanding, coat again as found',
    ({ id, nodeKind }, earths) => ['terminal', 'junction', 'connector', 'fitting'].includes(nodeKind) && earths.has(id),
  ],
  ['drains and vents', 'keep open: a blocked drain holds water, a blocked gas vent holds gas', isOpenEnd],
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
  const earths = new Set(earthNodes(shell).map(({ id }) => id));
  const ofNodes = NODES.map(([what, why, test]): KeepClean => {
    const nodes = shell.nodes.filter((node) => !taken.has(node.id) && test(node, earths));
    for (const node of nodes) taken.add(node.id);
    return {
      what,
      why,
      items: nodes.map(({ id, name, at }) => ({ id, ...(name === undefined ? {} : { name }), ...(at ? { at } : {}) })),
    };
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
