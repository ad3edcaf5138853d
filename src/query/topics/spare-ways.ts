import { facts, type Topic } from './topic.js';

export const spareWays: Topic = {
  name: 'spare ways',
  question: 'Is there a spare way or a pull cord?',
  words: ['spare', 'way', 'ways', 'pull', 'cord', 'cords', 'cavity', 'cavities', 'conduit', 'conduits', 'fill', 'full', 'free'],
  answer({ model: { shell }, figures }) {
    const fills = new Map(figures.services.zones.map((one) => [one.id, one] as const));
    return {
      rows: shell.zones.map((zone) => {
        const fill = fills.get(zone.id)?.fill;
        return {
          id: zone.id,
          what: zone.name,
          facts: facts(
            ['filled', fill ?? (zone.box || zone.clearMm ? 0 : undefined), 'fraction'],
            ['free', fill === undefined ? undefined : Math.max(0, 1 - fill), 'fraction'],
            ['spare', zone.spare],
            ['pull cord', zone.pullCord === undefined ? undefined : zone.pullCord ? 'yes' : 'no'],
            ['cord ends', zone.cordEnds],
          ),
        };
      }),
      notes: ['Filled counts what lies side by side at the fullest place. What nobody wrote down is in there too.'],
    };
  },
};
