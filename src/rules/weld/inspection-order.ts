import { type OutOfOrder, outOfOrder } from '../../compute/welding/inspection.js';
import type { Weld } from '../../records/index.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

export const inspectionOrder: Rule = {
  name: 'weld.inspection-order',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A look dated before the weld or before the look above it, or an acceptance after a reject by the same method without the number of the repair.',
  why: 'Rejects and repairs stay in order: a later reader must see what was found, what was done and who looked again.',
  source: 'common practice, no source',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-01, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model }) {
    return model.shell.welds.flatMap((weld) =>
      outOfOrder(weld).map(
        (fault) =>
          ({
            message: say(fault, weld),
            ids: [weld.id],
            place: weld.source.place('inspections', fault.at, fault.what === 'no repair number' ? 'repair' : 'date'),
          }) as const,
      ),
    );
  },
};

function say({ what, at, look }: OutOfOrder, weld: Weld): string {
  const seen = `Weld ${weld.id} was looked at by ${look.method} on ${look.date}`;
  switch (what) {
    case 'before the weld':
      return `${seen}, before it was made on ${weld.date}, expected that day or later: correct one of the two dates`;
    case 'before the look above':
      return `${seen}, before the look above it on ${weld.inspections[at - 1]?.date}, expected looks in order: correct the date, or put them in order`;
    case 'no repair number':
      return `${seen} and accepted after a reject, expected the repair between them: add \`repair: 1\` to this look`;
  }
}
