import type { Rule } from '../rule.js';

const NAMED = 3;

export const uncommitted: Rule = {
  name: 'record.uncommitted',
  severity: 'note',
  asks: 'missing',
  duty: 'administrator',
  finds: 'Files of the shell\u2019s record that differ from the last commit.',
  why: 'A book printed now would name a revision that does not hold what the book shows, and nobody has put their name to the change yet.',
  source: 'common practice, no source',
  examples: {
    given: `
# git
`,
    fails: `
uncommitted: [shells/X-1/welds.yaml]
`,
    passes: `
uncommitted: []
`,
  },
  check({ model: { shell }, outside }) {
    const files = outside?.uncommitted ?? [];
    const [first] = files;
    if (first === undefined) return [];
    const more = files.length - NAMED;
    const named = files.slice(0, NAMED).join(', ') + (more > 0 ? ` and ${more} more` : '');
    return [
      {
        message: `Not committed: ${named}, expected every record in Git: \`git add\` and \`git commit\` what is done`,
        ids: [shell.id],
        place: { file: first, line: 1, column: 1, endLine: 1, endColumn: 1 },
      },
    ];
  },
};
