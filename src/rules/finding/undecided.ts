import type { Model } from '../../model/shell.js';
import type { Nonconformance } from '../../records/index.js';
import type { Rule } from '../rule.js';

export const undecided: Rule = {
  name: 'finding.undecided',
  severity: 'error',
  asks: 'missing',
  duty: 'inspector',
  finds: 'A nonconformance without a decision, or whose decision nobody approved. A warning until its stage is signed off.',
  why: 'Nothing is closed in over an open nonconformance: what nobody decides gets forgotten.',
  source: 'ISO 9001:2015 clause 8.7',
  examples: {
    given: `
# findings.yaml
`,
    fails: `
- {id: NC-1, raised: 2026-04-02, of: [X-1], description: a dent}
`,
    passes: `
- {id: NC-1, raised: 2026-04-02, of: [X-1], description: a dent, decision: use as is, approved_by: J2}
`,
  },
  check({ model }) {
    const signed = new Set(model.shell.signoffs.map((signoff) => signoff.stage));
    return model.shell.findings.flatMap((record) => {
      if (record.decision !== undefined && record.approvedBy !== undefined) return [];
      const stage = stagesOf(record, model).find((one) => signed.has(one));
      const missing = record.decision === undefined ? 'has no decision' : 'has a decision that nobody approved';
      const type =
        record.decision === undefined
          ? 'add `decision:` (rework, repair, use as is or reject) and `approved_by:`'
          : 'add `approved_by:` with who may decide it';
      return [
        {
          severity: stage === undefined ? 'warning' : 'error',
          message: `Finding ${record.id} of ${record.of.join(', ')}, raised ${record.raised}, ${missing}${stage === undefined ? '' : `, and stage ${stage} is signed off`}: ${type}`,
          ids: [record.id, ...record.of],
          place: record.source.place(),
        } as const,
      ];
    });
  },
};

/** Its own stage where it has one, else the stages of what it is of. */
function stagesOf(record: Nonconformance, { shell }: Model): readonly string[] {
  if (record.stage !== undefined) return [record.stage];
  return record.of.flatMap((id) => {
    const stage = (shell.byId.get(id)?.record as { readonly stage?: unknown } | undefined)?.stage;
    return typeof stage === 'string' ? [stage] : [];
  });
}
