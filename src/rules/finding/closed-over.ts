import type { Place } from '../../finding.js';
import { dayOf } from '../../quantity/day.js';
import { type Concealed, concealed } from '../../query/concealment.js';
import type { Nonconformance } from '../../records/index.js';
import { CONCEALED_RUN } from '../example-records.js';
import { lineName } from '../order/evidence.js';
import type { Rule, RuleFinding } from '../rule.js';

export const closedOver: Rule = {
  name: 'finding.closed-over',
  severity: 'error',
  asks: 'defect',
  duty: 'inspector',
  finds:
    'A concealed run or joint that was closed in while a finding about it, its circuit or its cavity was open. "Use as is" with who approved it counts as settled.',
  why: 'What is shut in behind a panel with its fault is forgotten with it.',
  source: 'ISO 9001:2015 clause 8.7.1',
  examples: {
    given: `
${CONCEALED_RUN}
# findings.yaml
`,
    fails: `
- {id: NC-1, raised: 2026-04-02, of: [DC-1/1], description: a dent, decision: rework, approved_by: J2}
`,
    passes: `
- {id: NC-1, raised: 2026-04-02, of: [DC-1/1], description: a dent, decision: rework, approved_by: J2, closed: 2026-04-10}
`,
  },
  check({ model }) {
    const items = concealed(model);
    return model.shell.findings.flatMap((record): readonly RuleFinding[] => {
      const [first, ...others] = items.filter((item) => isAbout(record, item) && wasOpen(record, item));
      if (!first?.closed) return [];
      const more = others.length > 0 ? ` and ${others.length} more` : '';
      const { date, panel } = first.closed;
      return [
        {
          message: `${lineName(first)}${more} ${others.length > 0 ? 'were' : 'was'} closed in by ${panel} on ${date} while finding ${record.id} (raised ${record.raised}${record.closed === undefined ? '' : `, closed ${record.closed}`}) was open, expected it settled first: open the panel, or record the decision to use it as is with \`approved_by\``,
          ids: [record.id, first.record.id, ...others.map((item) => item.record.id)],
          place: record.source.place('closed'),
          related: [{ message: `Panel ${panel}`, place: placeOf(first, panel) }],
        },
      ];
    });
  },
};

const isAbout = ({ of }: Nonconformance, { record, zones }: Concealed): boolean =>
  [record.id, record.circuit, ...zones].some((id) => id !== undefined && of.includes(id));

function wasOpen({ raised, closed, decision, approvedBy }: Nonconformance, { closed: panel }: Concealed): boolean {
  if (!panel || dayOf(raised) > dayOf(panel.date)) return false;
  if (decision === 'use as is' && approvedBy !== undefined) return false;
  return closed === undefined || dayOf(closed) > dayOf(panel.date);
}

const placeOf = ({ panels, record }: Concealed, id: string): Place =>
  (panels.find((panel) => panel.id === id) ?? record).source.place('date');
