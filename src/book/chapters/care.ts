import { frostAnswer } from '../answers/frost.js';
import type { ChapterMaker } from '../book.js';
import { trappedTable } from './services.js';
import { clampTable } from './structure.js';

/** Owner's edition: draining, checks, torque. */
export const care: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const runs = new Set(shell.runs.filter((run) => ['water', 'drain'].includes(run.medium)).map((run) => run.id));
  return {
    key: 'care',
    title: 'Looking after it',
    template: 'care',
    data: {
      frost: frostAnswer(book),
      trapped: trappedTable(book, runs),
      clamps: clampTable(book),
    },
  };
};
