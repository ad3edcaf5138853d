import type { CircuitFigure } from '../../compute/services/types.js';
import type { Severity } from '../../finding.js';
import { number } from '../../quantity/format.js';
import type { Circuit } from '../../records/index.js';
import { LAMP_RUN } from '../example-records.js';
import type { Rule } from '../rule.js';

/**
 * Over what a conductor can carry alone, and over the small-conductor limit of mains: an error. Within that, but over the ampacity once
 * the wires that lie with it are counted, or over the small-conductor limit of low voltage: a warning, for those rest on assumptions.
 */
function judged(circuit: Circuit, figure: CircuitFigure): readonly [Severity, limitA: number, by: string] | undefined {
  const { protectionA, ampacityAloneA, ampacityA, protectionLimitA, bundledConductors } = figure;
  if (protectionA === undefined || ampacityAloneA === undefined || ampacityA === undefined) return undefined;
  const small = protectionLimitA !== undefined && protectionLimitA < ampacityAloneA ? protectionLimitA : undefined;
  // The next standard rating above an ampacity is let pass, with a warning.
  const hard = Math.max(ampacityAloneA, protectionLimitA ?? 0);
  if (small !== undefined && protectionA > small && circuit.medium === 'ac') return ['error', small, 'for a wire of this gauge'];
  if (protectionA > hard) return ['error', small ?? ampacityAloneA, 'that the wire can carry'];
  if (small !== undefined && protectionA > small) return ['warning', small, 'for a wire of this gauge'];
  if (protectionA > ampacityAloneA) return ['warning', ampacityAloneA, 'that the wire can carry'];
  if (protectionA <= ampacityA) return undefined;
  return ['warning', ampacityA, `with ${bundledConductors} current-carrying conductors lying together`];
}

export const protectionTooLarge: Rule = {
  name: 'service.protection-too-large',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A fuse or breaker larger than the smallest conductor on the way can carry.',
  why: 'The wire burns before the fuse blows.',
  source: 'NEC Table 310.16; small conductors NEC 240.4(D), and by Table 551.10(E)(1), which is an unverified citation',
  examples: {
    given: `
${LAMP_RUN}
`,
    fails: `
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 60 A, at: N1}, conductor: {awg: 14}}
`,
    passes: `
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
`,
  },
  check({ model: { shell }, figures }) {
    const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
    return figures.services.circuits.flatMap((figure) => {
      const circuit = circuits.get(figure.id);
      const found = circuit && judged(circuit, figure);
      if (!found) return [];
      const [severity, limitA, by] = found;
      const kind = circuit.protection?.kind ?? 'protection';
      return [
        {
          severity,
          message: `${figure.id} has a ${number(figure.protectionA as number)} A ${kind} on ${figure.smallestConductor} (${figure.smallestRun}), expected at most ${number(limitA, limitA % 1 === 0 ? 0 : 1)} A ${by}: a smaller ${kind} or a larger wire; a licensed electrician decides`,
          ids: [figure.id, ...(figure.smallestRun === undefined ? [] : [figure.smallestRun])],
          place: circuit.source.place('protection', 'rating'),
        },
      ];
    });
  },
};
