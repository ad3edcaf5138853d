import { length, positionWords } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const runsTooClose: Rule = {
  name: 'service.too-close',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds:
    'Two runs of media that must keep apart that may be nearer to each other than the shop’s distance, at the worst place of their ways; the tolerances recorded for their places are taken off.',
  why: 'A leak beside a spark, or mains that a chafed low-voltage wire can reach. An error where gas is one of the two.',
  source:
    'distances from shop.yaml; low voltage and mains 13 mm: NEC 551.10(C), unverified citation; gas: common practice, no source',
  examples: {
    given: `
# services/gas.yaml
service: Propane
medium: gas
nodes:
  - {id: G1, kind: source, at: [0 m, 0 m, 1 m]}
  - {id: G2, kind: load, at: [3 m, 0 m, 1 m]}
runs:
  - {id: GAS/1, from: G1, to: G2, size: 1/2 in copper}
`,
    fails: `
# services/ac.yaml
service: Shore power
medium: ac
nodes:
  - {id: A1, kind: source, at: [0 m, 0.03 m, 1 m]}
  - {id: A2, kind: load, at: [3 m, 0.03 m, 1 m]}
runs:
  - {id: AC/1, from: A1, to: A2, conductor: {awg: 12, conductors: 3}}
`,
    passes: `
# services/ac.yaml
service: Shore power
medium: ac
nodes:
  - {id: A1, kind: source, at: [0 m, 0.3 m, 1 m]}
  - {id: A2, kind: load, at: [3 m, 0.3 m, 1 m]}
runs:
  - {id: AC/1, from: A1, to: A2, conductor: {awg: 12, conductors: 3}}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
    return figures.services.tooClose.flatMap(({ runs: [a, b], media, distanceMm, recordedMm, limitMm, at }) => {
      const [first, second] = [runs.get(a), runs.get(b)];
      if (!first || !second) return [];
      const known =
        recordedMm > distanceMm ? ` (${length(recordedMm, shop.units)} as recorded, less the tolerances of both places)` : '';
      const severity = media.includes('gas') ? 'error' : 'warning';
      return [
        {
          severity,
          message: `${a} (${media[0]}) comes within ${length(distanceMm, shop.units)} of ${b} (${media[1]}) at ${positionWords(at, shop.units)}${known}, expected at least ${length(limitMm, shop.units)}: move one, or measure their way points again`,
          ids: [a, b],
          place: first.source.place('via'),
          related: [{ message: `${b}, the other run`, place: second.source.place('via') }],
        },
      ];
    });
  },
};
