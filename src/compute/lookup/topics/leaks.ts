import { distance, type Vec3 } from '../../../geometry/vector.js';
import type { Zone } from '../../../model/services.js';
import { zoneMap } from '../../access/zones.js';
import { facts, type Topic } from './topic.js';

const WET = ['water', 'drain', 'hydraulic', 'refrigerant'];

const level = ([ax, ay]: Vec3, [bx, by]: Vec3): number => distance([ax, ay, 0], [bx, by, 0]);

/** The drain hole of a cavity that is nearest to a place. */
const holeOf = (zone: Zone, at: Vec3): Vec3 | undefined =>
  [...(zone.drains ?? [])].sort((a, b) => level(a, at) - level(b, at))[0];

export const leaks: Topic = {
  name: 'leak',
  question: 'Where does a leak show?',
  words: ['leak', 'leaks', 'leaking', 'drip', 'drips', 'wet', 'show', 'shows'],
  answer({ model: { shell } }) {
    const zones = zoneMap(shell.zones);
    const joints = shell.nodes.filter((node) => WET.includes(node.medium));
    const rows = joints.map((node) => {
      const zone = zones.holding(node.at).find((one) => one.concealed);
      const hole = zone && holeOf(zone, node.at);
      return {
        id: node.id,
        what: node.name ?? node.nodeKind,
        facts: facts(
          ['in', zone?.id ?? 'the open'],
          ['closed by', zone?.closedBy],
          [
            'shows at',
            hole
              ? `the drain hole ${Math.round(level(hole, node.at))} mm away`
              : zone
                ? 'no drain hole on record'
                : 'the joint itself',
          ],
        ),
      };
    });
    return { rows, notes: ['Water runs along the lowest wire or pipe: look upstream of the wet place too.'] };
  },
};
