import type { Rule } from '../rule.js';

/** Kinds of clamp that are bolts. */
const BOLTED: readonly string[] = ['U-bolt', 'bolt'];

export const clampTorqueMissing: Rule = {
  name: 'member.clamp-torque-missing',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A U-bolt, or a clamp with a bolt, without the torque that it was tightened to. A note where no later check is set.',
  why: 'The shell hangs on its clamps: too loose it walks on the frame, too tight the rail is crushed; and every clamp settles.',
  source: 'common practice, no source: follow the chassis maker’s body builder manual',
  examples: {
    given: `
# clamps.yaml
`,
    fails: `
- {id: UB-1, kind: U-bolt, at: [1 m, -0.4 m, 0 m], check_again: {after: 500 mi}}
`,
    passes: `
- {id: UB-1, kind: U-bolt, at: [1 m, -0.4 m, 0 m], torque: 200 N.m, check_again: {after: 500 mi}}
`,
  },
  check({ model: { shell } }) {
    return shell.clamps.flatMap((clamp) => {
      if (clamp.bolt === undefined && !BOLTED.includes(clamp.clampKind)) return [];
      const what = clamp.torqueNm === undefined ? 'torque' : clamp.checkAgain === undefined ? 'check_again' : undefined;
      if (what === undefined) return [];
      const words =
        what === 'torque'
          ? 'has no torque on record, expected what it was tightened to: tighten it by the chassis maker’s manual and add `torque:`'
          : 'has no later check set, expected one after it has settled: add `check_again: {after: 500 mi}`';
      return [
        {
          severity: what === 'torque' ? 'warning' : 'note',
          message: `Clamp ${clamp.id} ${words}`,
          ids: [clamp.id],
          place: clamp.source.place(what),
        } as const,
      ];
    });
  },
};
