import { length, percent, smallLength } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Larger of a tape's reading and a share of the length. Project defaults. */
const LEAST_MM = 3;
const SHARE = 0.002;

export const lengthDiffers: Rule = {
  name: 'member.length-differs',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A cut length that differs from the member’s line by more than 3 mm or 0.2 %, whichever is larger.',
  why: 'One of the two is wrong: mass and joints follow from them.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
`,
    fails: `
- {id: CB-1, section: RT4x2, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m], cut_length: 2050 mm}
`,
    passes: `
- {id: CB-1, section: RT4x2, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m], cut_length: 1998 mm}
`,
  },
  check({ model, figures }) {
    const { units } = model.shop;
    const byId = new Map(model.shell.members.map((member) => [member.id, member]));
    return figures.takeOff.members.flatMap(({ id, lengthMm, lineLengthMm }) => {
      const member = byId.get(id);
      const allowedMm = Math.max(LEAST_MM, SHARE * lineLengthMm);
      const offMm = lengthMm - lineLengthMm;
      if (!member || lineLengthMm === 0 || Math.abs(offMm) <= allowedMm) return [];
      return [
        {
          message: `Cut length ${length(lengthMm, units)} of ${id} is ${smallLength(Math.abs(offMm), units)} ${offMm > 0 ? 'longer' : 'shorter'} than the line from its start to its end (${length(lineLengthMm, units)}), expected at most ${smallLength(allowedMm, units)} (${percent(SHARE)}) apart: measure again and correct \`cut_length\`, \`from\` or \`to\``,
          ids: [id],
          place: member.source.place('cut_length'),
        } as const,
      ];
    });
  },
};
