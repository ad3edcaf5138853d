import { percent } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const cavityFull: Rule = {
  name: 'service.cavity-full',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A cavity whose runs fill more of it than the shop allows, or a conduit fuller than 53 % with one wire, 31 % with two, 40 % with more.',
  why: 'A wire can no longer be drawn through without hurting the others, and the middle of the bundle runs hot.',
  source: 'NEC Chapter 9 Table 1 by its 2014 handbook. For cavities the shop sets it in shop.yaml',
  examples: {
    given: `
# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}
runs:
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, zones: [CN-1], tolerance: 5 mm}
circuits:
  - {id: DC-1, voltage: 12 V, load: 20 A, protection: {kind: fuse, rating: 25 A, at: N1}, conductor: {awg: 4}}
# zones.yaml
`,
    fails: `
- {id: CN-1, name: conduit, along: [[0 m, 0 m, 1 m], [3 m, 0 m, 1 m]], conduit: 1/2 in EMT, spare: none, pull_cord: yes}
`,
    passes: `
- {id: CN-1, name: conduit, along: [[0 m, 0 m, 1 m], [3 m, 0 m, 1 m]], conduit: 2 in EMT, spare: none, pull_cord: yes}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const zones = new Map(shell.zones.map((zone) => [zone.id, zone] as const));
    return figures.services.zones.flatMap((figure) => {
      const zone = zones.get(figure.id);
      const limit = figure.limit ?? shop.limits.cavityFill;
      if (!zone || figure.fill <= limit) return [];
      const count = `${figure.runs.length} run${figure.runs.length === 1 ? '' : 's'}`;
      return [
        {
          message: `${zone.id} is ${percent(figure.fill, 0)} full with ${count}, expected at most ${percent(limit, 0)}: move runs to another cavity, or compare its clear size`,
          ids: [zone.id, ...figure.runs],
          place: zone.source.place(zone.conduit ? 'conduit' : zone.clearMm ? 'clear' : 'box'),
        } as const,
      ];
    });
  },
};
