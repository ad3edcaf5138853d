import type { ChapterMaker } from '../book.js';
import { table } from '../table.js';
import { placeColumn } from '../where.js';
import { trappedTable } from './services.js';
import { clampTable } from './structure.js';

/** Owner's edition: draining, checks, torque. */
export const care: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const wet = shell.nodes.filter(
    (node) => ['water', 'drain'].includes(node.medium) && ['drain', 'valve'].includes(node.nodeKind),
  );
  const runs = new Set(shell.runs.filter((run) => ['water', 'drain'].includes(run.medium)).map((run) => run.id));
  return {
    key: 'care',
    title: 'Looking after it',
    template: 'care',
    data: {
      drains: table(book.show, {
        rows: [...wet].sort((a, b) => (a.nodeKind === b.nodeKind ? 0 : a.nodeKind === 'valve' ? -1 : 1)),
        columns: (c) => [
          c.refs('Id', (node) => [node.id]),
          c.text('What', (node) => [node.name, node.nodeKind].filter(Boolean).join(', ')),
          c.text('Normally', (node) => node.position?.replace('normally ', '')),
          placeColumn(book, 'Where', (node) => node.at),
        ],
        empty: 'No drains or water valves are recorded.',
      }),
      trapped: trappedTable(book, runs),
      clamps: clampTable(book),
    },
  };
};
