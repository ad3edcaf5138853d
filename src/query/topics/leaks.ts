import { zoneMap } from '../../compute/access/zones.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import type { Zone } from '../../records/index.js';
import { facts, type Topic } from './topic.js';

const WET = ['water', 'drain', 'hydraulic', 'refrigerant', 'fuel'];

const level = ([ax, ay]: Vec3, [bx, by]: Vec3): number => distance([ax, ay, 0], [bx, by, 0]);

/** The drain hole of a cavity that is nearest to a place. */
const holeOf = (zone: Zone, at: Vec3): Vec3 | undefined =>
  [...(zone.drains ?? [])].sort((a, b) => level(a, at) - level(b, at))[0];

export const leaks: Topic = {
  name: 'leak',
  ask: 'find.leak',
  words: ['leak', 'leaks', 'leaking', 'drip', 'drips', 'wet', 'show', 'shows', 'stain', 'stains', 'damp'],
  beside: ['under', 'ceiling', 'water', 'floor', 'wall', 'rain'],
  answer({ model: { shell } }) {
    const zones = zoneMap(shell.zones);
    const all = shell.nodes.filter((node) => WET.includes(node.medium));
    const joints = placedNodes(all);
    const hidden = joints.flatMap((node) => {
      const zone = zones.holding(node.at).find((one) => one.concealed);
      return zone ? [{ node, zone, hole: holeOf(zone, node.at) }] : [];
    });
    const rows = hidden.map(({ node, zone, hole }) => ({
      id: node.id,
      what: node.name ?? node.nodeKind,
      facts: facts(
        ['in', zone.id],
        ['closed by', zone.closedBy],
        ['shows at', hole ? 'the drain hole' : 'no drain hole on record'],
        ['away', hole && level(hole, node.at), 'mm'],
      ),
    }));
    return {
      rows,
      notes: [
        `${joints.length - hidden.length} joints are exposed: a leak shows at the joint itself.`,
        ...(all.length > joints.length
          ? [`${all.length - joints.length} joints have no recorded place, so it is not known where they leak.`]
          : []),
        'Water runs along the lowest wire or pipe: look upstream of the wet place too.',
      ],
    };
  },
};
