import { zoneMap } from '../../compute/access/zones.js';
import { strays } from '../../compute/services/strays.js';
import type { Vec3 } from '../../geometry/vector.js';
import { positionWords } from '../../quantity/format.js';
import type { Run } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

export const outsideZone: Rule = {
  name: 'service.outside-zone',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A run that never enters a cavity it says it is in, or (a note) that leaves its cavities at a way point and comes back.',
  why: 'Either the cavity or the way points are wrong, and whoever looks for the run looks in the wrong place.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
- {id: TC, name: chase, box: [[0 m, -0.2 m, 0.9 m], [3 m, 0.2 m, 1.1 m]]}
- {id: TD, name: other chase, box: [[0 m, -0.2 m, 1.9 m], [3 m, 0.2 m, 2.1 m]]}
# services/dc.yaml
service: dc
medium: dc
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, zones: [TD], tolerance: 10 mm}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, zones: [TC], tolerance: 10 mm}
`,
  },
  check({ model: { shell, shop } }) {
    const zones = zoneMap(shell.zones);
    return shell.runs.flatMap((run): readonly RuleFinding[] => {
      const { never, via: stray } = strays(run, zones);
      return [
        ...never.map((zone) => neverIn(run, zone)),
        ...(stray === undefined || never.length > 0 ? [] : [strayed(run, stray)]),
      ];
    });

    function neverIn(run: Run, zone: string): RuleFinding {
      return {
        message: `${run.id} says it is in ${zone} but no part of its way comes into it, expected a way point inside: compare \`zones\` and \`via\``,
        ids: [run.id, zone],
        place: run.source.place('zones', run.zones.indexOf(zone)),
      };
    }

    function strayed(run: Run, i: number): RuleFinding {
      return {
        severity: 'note',
        message: `${run.id} has a way point at ${positionWords(run.via[i] as Vec3, shop.units)} in none of ${run.zones.join(', ')}: compare the point, or add the cavity that it is in to \`zones\``,
        ids: [run.id, ...run.zones],
        place: run.source.place('via', i),
      };
    }
  },
};
