import { length, percent } from '../../quantity/format.js';
import { LAMP_NODES } from '../example-records.js';
import type { Rule } from '../rule.js';

/** A run that lies slack by more than both of these was cut for another way. House rule. */
const SLACK = 0.15;
const SLACK_MM = 300;
/** A run shorter than its recorded way by more than both of these did not go that way. House rule. */
const SHORTFALL = 0.02;
const SHORTFALL_MM = 25;

export const runLengthDiffers: Rule = {
  name: 'service.length-differs',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'An installed length that its recorded way does not explain: more than 15 % and 300 mm longer, or 2 % and 25 mm shorter.',
  why: 'One of the two is wrong: a map that is wrong sends a drill through a pipe, a length that is wrong spoils the voltage drop.',
  source: 'common practice, no source',
  examples: {
    given: `
${LAMP_NODES}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, installed_length: 6 m}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, installed_length: 3.1 m}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const paths = new Map(figures.takeOff.runs.map((run) => [run.id, run.pathLengthMm] as const));
    return shell.runs.flatMap((run) => {
      const wayMm = paths.get(run.id) ?? 0;
      if (run.installedLengthMm === undefined || wayMm === 0) return [];
      const slackMm = run.installedLengthMm - wayMm;
      const isLong = slackMm > Math.max(SLACK * wayMm, SLACK_MM);
      const isShort = -slackMm > Math.max(SHORTFALL * wayMm, SHORTFALL_MM);
      if (!isLong && !isShort) return [];
      const by = `${length(Math.abs(slackMm), shop.units)} (${percent(Math.abs(slackMm) / wayMm)}) ${isLong ? 'longer' : 'shorter'}`;
      return [
        {
          message: `${run.id} was installed ${length(run.installedLengthMm, shop.units)} long, expected about ${length(wayMm, shop.units)} along its way, ${by}: measure the run and its way points again`,
          ids: [run.id],
          place: run.source.place('installed_length'),
        } as const,
      ];
    });
  },
};
