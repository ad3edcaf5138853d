import { facts, type Topic } from './topic.js';

export const unused: Topic = {
  name: 'unused wires',
  ask: 'find.unused',
  words: ['abandoned', 'unused', 'spare', 'spares', 'dead', 'wire', 'wires', 'cable', 'cables', 'conductor', 'conductors'],
  answer({ model: { shell } }) {
    const rows = shell.runs
      .filter((run) => run.spare || run.abandoned)
      .map((run) => ({
        id: run.id,
        what: `${run.abandoned ? 'abandoned' : 'spare'}${run.note ? `, ${run.note}` : ''}`,
        facts: facts(
          ['from', run.from],
          ['to', run.to],
          ['marking', run.marking],
          ['colour', run.colour],
          ['through', run.zones],
        ),
      }));
    return { rows, notes: rows.length === 0 ? ['No spare or abandoned wire or pipe is recorded.'] : [] };
  },
};
