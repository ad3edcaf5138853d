import { number, percent } from '../../quantity/format.js';
import { LAMP_RUN } from '../example-records.js';
import type { Rule } from '../rule.js';

export const voltageDrop: Rule = {
  name: 'service.voltage-drop',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A circuit that loses more than the shop’s share of its voltage on the way to a load.',
  why: 'Pumps and lights run weak, and the wire warms where the volts are lost.',
  source: '3 % for critical circuits: ABYC E-11, NEC 210.19 note; unverified citation. The shop sets it in shop.yaml',
  examples: {
    given: `
${LAMP_RUN}
`,
    fails: `
  - {id: DC-1, voltage: 12 V, load: 15 A, protection: {kind: fuse, rating: 20 A, at: N1}, conductor: {awg: 14}}
`,
    passes: `
  - {id: DC-1, voltage: 12 V, load: 15 A, protection: {kind: fuse, rating: 20 A, at: N1}, conductor: {awg: 6}}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
    return figures.services.circuits.flatMap((figure) => {
      const circuit = circuits.get(figure.id);
      const limit = shop.limits.voltageDrop;
      if (!circuit || figure.drop === undefined || figure.dropV === undefined || figure.drop <= limit) return [];
      const where = figure.worstLoad ?? 'its load';
      return [
        {
          message: `${figure.id} loses ${number(figure.dropV, 2)} V (${percent(figure.drop)}) on the way to ${where}, expected at most ${percent(limit)} of ${number(circuit.voltageV as number, 1)} V: a larger conductor or a shorter way`,
          ids: [figure.id, ...(figure.worstLoad === undefined ? [] : [figure.worstLoad])],
          place: circuit.source.place('conductor'),
        } as const,
      ];
    });
  },
};
