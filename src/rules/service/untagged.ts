import { LAMP_NODES } from '../example-records.js';
import type { Rule, RuleFinding } from '../rule.js';

const WIRES = ['dc', 'ac', 'data'];

export const untagged: Rule = {
  name: 'service.untagged',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'A wire that is not tagged at both ends. One note per service if nobody recorded its tags.',
  why: 'The end without a tag is the one that a technician has in the hand. Keep tags 50 mm and more back from the terminal.',
  source: 'common practice, no source',
  examples: {
    given: `
${LAMP_NODES}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, tags: one end}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, tags: both ends}
`,
  },
  check({ model: { shell } }) {
    const wires = shell.runs.filter((run) => WIRES.includes(run.medium));
    const short = wires
      .filter((run) => run.tags === 'one end' || run.tags === 'none')
      .map((run) => ({
        message: `${run.id} is tagged at ${run.tags === 'none' ? 'neither end' : 'one end'}, expected both: tag it, then write \`tags: both ends\``,
        ids: [run.id],
        place: run.source.place('tags'),
      }));
    const silent = shell.services.flatMap((service): readonly RuleFinding[] => {
      const unsaid = wires.filter((run) => run.service === service.id && run.tags === undefined);
      const [first] = unsaid;
      if (!first) return [];
      return [
        {
          message: `${unsaid.length} runs of ${service.name} do not say where they are tagged, expected \`tags: both ends\`: not verified`,
          ids: unsaid.map((run) => run.id),
          place: first.source.place(),
          proposes: unsaid.map(({ id }) => ({ kind: 'run', id, path: ['tags'], value: 'both ends' })),
        },
      ];
    });
    return [...short, ...silent];
  },
};
