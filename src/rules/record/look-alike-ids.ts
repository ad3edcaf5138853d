import { codeOf, lookAt } from '../../compute/record/look-alike.js';
import type { RecordBase } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

export const lookAlikeIds: Rule = {
  name: 'record.look-alike-ids',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'Two IDs that look the same and are not: a letter of another script in one of them, a wide or styled letter, an invisible sign; an ID that mixes scripts or holds such a sign.',
  why: 'On paper, in a message or at a prompt nobody can tell them apart.',
  source: 'Unicode Technical Standard 39, Unicode Security Mechanisms (confusable detection, mixed scripts)',
  examples: {
    given: `
# zones.yaml
- {id: CO-1, name: bay, box: [[0 in, 0, 0], [9 in, 9 in, 9 in]]}
`,
    fails: `
- {id: C\u041e-1, name: bay, box: [[0 in, 0, 0], [9 in, 9 in, 9 in]]}
`,
    passes: `
- {id: CO-2, name: bay, box: [[0 in, 0, 0], [9 in, 9 in, 9 in]]}
`,
  },
  check({ model: { shell } }) {
    const first = new Map<string, string>();
    const findings: RuleFinding[] = [];
    for (const [id, entry] of shell.byId) {
      const { source } = entry.record as RecordBase;
      const { skeleton, scripts, invisible } = lookAt(id);
      const other = first.get(skeleton);
      first.set(skeleton, other ?? id);
      const odd = [...id].filter((sign) => sign > '~');
      const signs = odd.length > 0 ? odd : [...(other ?? '')].filter((sign) => sign > '~');
      const codes = [...new Set(signs)].slice(0, SHOWN).map(codeOf).join(', ');
      if (other !== undefined)
        findings.push({
          message: `Id ${id} looks the same as ${other} but differs from it (in ${codes}), expected IDs that the eye can tell apart: type it again on one keyboard layout`,
          ids: [id, other],
          place: source.place('id'),
          related: [
            { message: other, place: ((shell.byId.get(other)?.record as RecordBase | undefined)?.source ?? source).place('id') },
          ],
        });
      else if (invisible.length > 0 || scripts.length > 0)
        findings.push({
          message: `Id ${id} ${invisible.length > 0 ? `holds a sign that shows nothing (${invisible.slice(0, SHOWN).join(', ')})` : `mixes letters of ${scripts.join(' and ')} (${codes})`}, expected what can be typed and read: type it anew`,
          ids: [id],
          place: source.place('id'),
        });
    }
    return findings;
  },
};

/** Code points named in a message. */
const SHOWN = 4;
