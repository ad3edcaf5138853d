import { number } from '../../quantity/format.js';
import { LAMP_RUN } from '../example-records.js';
import type { Rule } from '../rule.js';

export const protectionBelowLoad: Rule = {
  name: 'service.protection-below-load',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A circuit whose loads together draw more than its fuse or breaker lets pass.',
  why: 'It opens in use, and the next owner puts a larger one in.',
  source: 'common practice, no source',
  examples: {
    given: `
${LAMP_RUN}
`,
    fails: `
  - {id: DC-1, voltage: 12 V, load: 10 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
`,
    passes: `
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
`,
  },
  check({ model: { shell }, figures }) {
    const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
    return figures.services.circuits.flatMap(({ id, loadA, protectionA }) => {
      const circuit = circuits.get(id);
      if (!circuit || loadA === undefined || protectionA === undefined || loadA <= protectionA) return [];
      return [
        {
          message: `${id} feeds ${number(loadA, 1)} A behind ${number(protectionA)} A protection, expected no more load than that: split the circuit, or compare the recorded loads`,
          ids: [id],
          place: circuit.source.place('load'),
        } as const,
      ];
    });
  },
};
