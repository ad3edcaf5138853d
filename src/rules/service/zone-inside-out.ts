import type { Severity } from '../../finding.js';
import { positionWords } from '../../quantity/format.js';
import type { Zone } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

const AXES = ['x', 'y', 'z'] as const;
/** Thinner than this nothing runs through it, mm. */
const FLAT_MM = 1;

export const zoneInsideOut: Rule = {
  name: 'service.zone-inside-out',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A cavity’s box that has no inside (a warning), or whose first corner lies beyond its second (a note).',
  why: 'It is most likely a lost minus sign or two corners exchanged: runs in the cavity are then looked for elsewhere.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
`,
    fails: `
- {id: TC, box: [[0 m, 0 m, 0 m], [3 m, 0 m, 0.2 m]]}
`,
    passes: `
- {id: TC, box: [[0 m, -0.2 m, 0 m], [3 m, 0.2 m, 0.2 m]]}
`,
  },
  check({ model: { shell, shop } }) {
    return shell.zones.flatMap((zone): readonly RuleFinding[] => {
      if (!zone.box) return [];
      const [from, to] = zone.box;
      const of = (is: (a: number, b: number) => boolean): readonly string[] =>
        AXES.filter((_, k) => is(from[k] as number, to[k] as number));
      const flat = of((a, b) => Math.abs(a - b) < FLAT_MM);
      if (flat.length > 0) {
        const message = `${zone.id} has no size along ${flat.join(' and ')} (${positionWords(from, shop.units)} to ${positionWords(to, shop.units)}), expected two opposite corners: look for a lost minus sign`;
        return [told(zone, 'warning', message)];
      }
      const turned = of((a, b) => a > b);
      if (turned.length === 0) return [];
      return [
        told(
          zone,
          'note',
          `${zone.id} has its corners inside out along ${turned.join(' and ')}, expected the smaller first: taken as exchanged; look for a lost minus sign`,
        ),
      ];
    });
  },
};

const told = (zone: Zone, severity: Severity, message: string): RuleFinding => ({
  severity,
  message,
  ids: [zone.id],
  place: zone.source.place('box'),
});
