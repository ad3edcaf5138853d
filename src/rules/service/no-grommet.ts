import { positionWords } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const noGrommet: Rule = {
  name: 'service.no-grommet',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A run that passes through the metal of a member or panel without a grommet on record.',
  why: 'The edge of an aluminium hole saws through insulation and hose on the road.',
  source: 'common practice, no source; gas lines: state liquefied-gas vehicle rules, unverified citation',
  examples: {
    given: `
# members.yaml
- {id: CB-1, section: RT4x2, alloy: 6061-T6, from: [1.5 m, -1 m, 1 m], to: [1.5 m, 1 m, 1 m]}
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
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, grommets: [CB-1]}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
    return figures.services.crossings.flatMap(({ run: id, through, kind, at, grommet }) => {
      const run = runs.get(id);
      if (!run || grommet) return [];
      return [
        {
          message: `${id} passes through ${kind} ${through} at ${positionWords(at, shop.units)} without a grommet on record: add \`grommets: [${through}]\`, or correct its way points`,
          ids: [id, through],
          place: run.source.place('grommets'),
          proposes: [{ kind: 'run', id, path: ['grommets'], value: through, adds: true }],
        } as const,
      ];
    });
  },
};
