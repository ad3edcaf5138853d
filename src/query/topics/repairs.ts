import { doneWords, repairsOf } from '../repairs.js';
import { facts, type Topic } from './topic.js';

export const repairs: Topic = {
  name: 'repairs',
  ask: 'find.repaired',
  words: ['repair', 'repairs', 'repaired', 'rework', 'reworked', 'finding', 'findings', 'concession', 'concessions'],
  beside: ['before', 'already', 'ever', 'here'],
  answer({ model: { shell } }) {
    const decided = new Map(shell.findings.map((one) => [one.id, one]));
    const rows = repairsOf(shell).map((one) => {
      const finding = decided.get(one.id);
      const told = finding
        ? facts(['raised', one.date], ['decision', finding.decision ?? 'undecided'], ['closed', finding.closed])
        : facts(['date', one.date], ['done', doneWords(one, (day) => day)]);
      return { id: one.id, what: one.what, facts: [...facts(['of', one.of]), ...told] };
    });
    return { rows, notes: rows.length === 0 ? ['No repair is recorded.'] : [] };
  },
};

export const changes: Topic = {
  name: 'changes',
  ask: 'find.changed',
  words: [
    'book',
    'changed',
    'change',
    'changes',
    'since',
    'amended',
    'amendment',
    'amendments',
    'altered',
    'alteration',
    'alterations',
  ],
  answer({ model: { shell } }) {
    const rows = shell.amendments.map((one) => ({
      id: one.id,
      what: one.reason,
      facts: facts(['changes', one.changes], ['date', one.date], ['by', one.by]),
    }));
    return {
      rows,
      notes: [
        ...(rows.length === 0 ? ['No change after close-out is recorded.'] : []),
        `Every revision: shellbook history ${shell.id}`,
      ],
    };
  },
};
