import type { Rule } from '../rule.js';

/** Cavities that a later wire must be drawn through: chases, conduits, and what lies between or in trusses. */
const LONG = /\b(?:truss|trusses|chase|conduit)\b/iu;

export const noSpareWay: Rule = {
  name: 'service.no-spare-way',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'A concealed truss cavity, chase or conduit without a spare way and a pull cord on record.',
  why: 'The next wire then runs on the surface, or the lining comes down.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
`,
    fails: `
- {id: RC, name: roof chase, box: [[0 m, -0.5 m, 2 m], [3 m, 0.5 m, 2.1 m]]}
`,
    passes: `
- {id: RC, name: roof chase, box: [[0 m, -0.5 m, 2 m], [3 m, 0.5 m, 2.1 m]], spare: 3/4 in smurf tube, pull_cord: yes}
`,
  },
  check({ model: { shell } }) {
    return shell.zones
      .filter((zone) => zone.concealed && (zone.along !== undefined || LONG.test(zone.name)))
      .flatMap((zone) => {
        const missing = [zone.spare === undefined ? '`spare`' : '', zone.pullCord ? '' : '`pull_cord: yes`'].filter(Boolean);
        if (missing.length === 0) return [];
        return [
          {
            message: `${zone.id} has no ${zone.spare === undefined ? 'spare way' : 'pull cord'} on record, expected one spare way and a cord: add ${missing.join(' and ')}`,
            ids: [zone.id],
            place: zone.source.place(),
          },
        ];
      });
  },
};
