import type { Rule } from '../rule.js';

export const sharedHistory: Rule = {
  name: 'record.shared-history',
  severity: 'note',
  asks: 'missing',
  duty: 'administrator',
  finds: 'Commits that changed the shell\u2019s records together with files outside the store.',
  why: 'They belong to the project around the store, so the age of evidence follows the dates typed on the records, not these commits.',
  source: 'common practice, no source',
  examples: {
    given: `
# git
`,
    fails: `
sharedCommits: 4
`,
    passes: `
sharedCommits: 0
`,
  },
  check({ model: { shell, sharedCommits = 0 } }) {
    if (sharedCommits === 0) return [];
    const [commits, change] = sharedCommits === 1 ? ['1 commit', 'changes'] : [`${sharedCommits} commits`, 'change'];
    return [
      {
        message: `The store is part of a larger repository, and ${commits} of ${shell.id} ${change} files outside it too: they do not count as changes of the coach, and the age of evidence goes by the dates typed. Keep the store in a repository of its own, or commit its records by themselves`,
        ids: [shell.id],
        place: shell.source.place(),
      },
    ];
  },
};
