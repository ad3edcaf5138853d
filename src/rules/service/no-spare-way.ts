import type { Medium, Zone } from '../../records/index.js';
import type { Rule } from '../rule.js';

const WIRED: readonly Medium[] = ['dc', 'ac', 'data'];
/** So many times as long as it is wide or high, and so long, a box is a way and no compartment, mm. Project defaults. */
const SLENDER = 4;
const LONG_MM = 3000;

/** A cavity that the next wire is drawn through: a swept one or a conduit, or a long box that wires may run in. */
function isWay({ along, box, carries }: Zone): boolean {
  if (along !== undefined) return true;
  if (!box || !carries.some((medium) => WIRED.includes(medium))) return false;
  const [least = 0, middle = 0, most = 0] = box[0]
    .map((one, axis) => Math.abs(one - (box[1][axis] as number)))
    .sort((a, b) => a - b);
  return least > 0 && most >= LONG_MM && most >= SLENDER * middle;
}

export const noSpareWay: Rule = {
  name: 'service.no-spare-way',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds:
    'A concealed conduit or swept cavity, or a long box that wires may run in (`carries`), without a spare conduit or chase and a pull cord on record.',
  why: 'The next wire then runs on the surface, or the lining comes down.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
`,
    fails: `
- {id: RC, name: roof chase, box: [[0 m, -0.2 m, 2 m], [3 m, 0.2 m, 2.1 m]], carries: [dc]}
`,
    passes: `
- {id: RC, name: roof chase, box: [[0 m, -0.2 m, 2 m], [3 m, 0.2 m, 2.1 m]], carries: [dc], spare: 3/4 in smurf tube, pull_cord: yes}
`,
  },
  check({ model: { shell } }) {
    return shell.zones
      .filter((zone) => zone.concealed && isWay(zone))
      .flatMap((zone) => {
        const missing = [zone.spare === undefined ? '`spare`' : '', zone.pullCord ? '' : '`pull_cord: yes`'].filter(Boolean);
        if (missing.length === 0) return [];
        return [
          {
            message: `${zone.id} has no ${zone.spare === undefined ? 'spare conduit or chase' : 'pull cord'} on record, expected a spare conduit and a cord for the next wire: add ${missing.join(' and ')}`,
            ids: [zone.id],
            place: zone.source.place(),
          },
        ];
      });
  },
};
