import { positionWords } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const noSealant: Rule = {
  name: 'service.no-sealant',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'A run that passes through a skin, roof, cap or belly panel without sealing of the hole on record.',
  why: 'Water, road salt and exhaust come in by the hole of a wire long before anybody sees it.',
  source: 'common practice, no source',
  examples: {
    given: `
# panels.yaml
- {id: SK-1, kind: skin, alloy: 5052-H32, thickness: 2 mm, outline: [[0 m, -1 m, 0 m], [3 m, -1 m, 0 m], [3 m, -1 m, 2 m], [0 m, -1 m, 2 m]]}
# members.yaml
- {id: P-1, section: RT4x2, alloy: 6061-T6, from: [2 m, -0.9 m, 0 m], to: [2 m, -0.9 m, 2 m]}
- {id: P-2, section: RT4x2, alloy: 6061-T6, from: [2 m, 0.9 m, 0 m], to: [2 m, 0.9 m, 2 m]}
# services/dc.yaml
service: dc
medium: dc
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
nodes:
  - {id: N1, kind: source, at: [1 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: porch lamp, at: [1 m, -1.1 m, 1 m]}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, grommets: [SK-1]}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, grommets: [SK-1], sealed: [SK-1]}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
    return figures.services.crossings.flatMap(({ run: id, through, at, sealed }) => {
      const run = runs.get(id);
      if (!run || sealed !== false) return [];
      return [
        {
          message: `${id} passes through panel ${through} to the outside at ${positionWords(at, shop.units)} without sealing on record: look, and add \`sealed: [${through}]\``,
          ids: [id, through],
          place: run.source.place('sealed'),
          proposes: [{ kind: 'run', id, path: ['sealed'], value: through, adds: true }],
        } as const,
      ];
    });
  },
};
