import { spareSpaces } from '../load/index.js';
import { facts, type Topic } from './topic.js';

export const spareWays: Topic = {
  name: 'spare conduits',
  ask: 'find.spare',
  words: [
    'spare',
    'breaker',
    'space',
    'spaces',
    'way',
    'ways',
    'pull',
    'cord',
    'cords',
    'cavity',
    'cavities',
    'conduit',
    'conduits',
    'chase',
    'chases',
    'fill',
    'full',
    'free',
  ],
  answer({ model: { shell }, figures }) {
    const fills = new Map(figures.services.zones.map((one) => [one.id, one] as const));
    const spaces = shell.nodes.flatMap((node) =>
      spareSpaces(node).map((space) => ({ id: node.id, what: `spare breaker space: ${space}`, facts: [] })),
    );
    return {
      rows: [
        ...shell.zones.map((zone) => {
          const { fill, limit = 1 } = fills.get(zone.id) ?? {};
          return {
            id: zone.id,
            what: zone.name,
            facts: facts(
              ['filled', fill ?? (zone.box || zone.clearMm ? 0 : undefined), 'fraction'],
              ['free', fill === undefined ? undefined : Math.max(0, limit - fill), 'fraction'],
              ['spare', zone.spare],
              ['pull cord', zone.pullCord === undefined ? undefined : zone.pullCord ? 'yes' : 'no'],
              ['cord ends', zone.cordEnds],
            ),
          };
        }),
        ...spaces,
      ],
      notes: ['“Filled” counts what lies side by side at the fullest place. Unrecorded things are in there too.'],
    };
  },
};
