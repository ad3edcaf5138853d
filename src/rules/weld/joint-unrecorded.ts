import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

/** Partners named in a message; the ids have all of them. */
const SHOWN = 6;

export const jointUnrecorded: Rule = {
  name: 'weld.joint-unrecorded',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'Members that meet without a weld or clamp on record. One finding for each member that has such joints, the most first.',
  why: 'Nobody inspects a joint that nobody recorded.',
  source: 'geometry (outer surfaces within 3 mm); common practice, no source',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
# nothing joins them
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model, figures }) {
    const members = new Map(model.shell.members.map((member) => [member.id, member]));
    return byMember(figures.joints.missing).flatMap(({ id, partners }) => {
      const member = members.get(id);
      if (!member) return [];
      const more = partners.length > SHOWN ? ` and ${partners.length - SHOWN} more` : '';
      const joints = partners.length === 1 ? 'meets' : `meets ${partners.length} members:`;
      return [
        {
          message: `${id} ${joints} ${partners.slice(0, SHOWN).join(', ')}${more} without a weld or clamp on record, expected one for each joint: add it to welds.yaml or clamps.yaml, or record in findings.yaml why there is none`,
          ids: [id, ...partners],
          place: member.source.place(),
        } as const,
      ];
    });
  },
};

/** Each missing pair once, under the member that has most of those left: a rail is told of once, not each cross member. */
function byMember(
  pairs: readonly (readonly [string, string])[],
): readonly { readonly id: string; readonly partners: readonly string[] }[] {
  const partners = new Map<string, Set<string>>();
  const link = (a: string, b: string) => partners.set(a, (partners.get(a) ?? new Set()).add(b));
  for (const [a, b] of pairs) {
    link(a, b);
    link(b, a);
  }
  const order = [...partners.keys()].sort((a, b) => (partners.get(b)?.size ?? 0) - (partners.get(a)?.size ?? 0));
  return order.flatMap((id) => {
    const own = [...(partners.get(id) ?? [])];
    for (const other of own) partners.get(other)?.delete(id);
    return own.length > 0 ? [{ id, partners: own }] : [];
  });
}
