import { bondTimes } from '../../compute/structure/bond-times.js';
import { number } from '../../quantity/format.js';
import type { Rule, RuleFinding } from '../rule.js';

export const bondTime: Rule = {
  name: 'panel.bond-time',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A bonded panel that was closed after the adhesive’s open time, or loaded before its least cure.',
  why: 'A skin that has formed on the bead does not wet the panel; a bond that is loaded while it is soft creeps.',
  source:
    'limits `open_time_limit` and `cure_least` on the record, from the adhesive’s data sheet; EN 17460 practice, unverified citation',
  examples: {
    given: `
# panels.yaml
`,
    fails: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, applied: 2026-02-06}, bond: {open_time: 25 min, open_time_limit: 20 min}}
`,
    passes: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, applied: 2026-02-06}, bond: {open_time: 15 min, open_time_limit: 20 min}}
`,
  },
  check({ model: { shell } }) {
    return shell.panels.flatMap(({ id, bond, source }): readonly RuleFinding[] => {
      const found: RuleFinding[] = [];
      const say = (key: string, message: string): void =>
        void found.push({ severity: 'warning', message, ids: [id], place: source.place('bond', key) });
      const { open, cure } = bondTimes(bond);
      if (open) {
        const [openTimeS, openTimeLimitS] = open;
        say(
          'open_time',
          `Panel ${id} was closed ${minutes(openTimeS)} after spreading, expected within ${minutes(openTimeLimitS)}: take it off and bond it again, or decide it in findings.yaml with a coupon of that bead`,
        );
      }
      if (cure) {
        const [cureS, cureLeastS] = cure;
        say(
          'cure',
          `Panel ${id} was loaded ${minutes(cureS)} after bonding, expected at least ${minutes(cureLeastS)}: tap it along the bead and decide it in findings.yaml`,
        );
      }
      return found;
    });
  },
};

const minutes = (seconds: number): string => (seconds >= 7200 ? `${number(seconds / 3600, 1)} h` : `${number(seconds / 60)} min`);
