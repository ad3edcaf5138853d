import { drainPlan } from '../../query/lookup/index.js';
import type { Book } from '../book.js';
import { table } from '../table.js';
import { panelColumn, placeColumn } from '../where.js';

/** The order of valves for draining against frost, each with its place, its panel and what comes out there. */
export function frostAnswer(book: Book) {
  const plan = drainPlan(book.assessment);
  const nodes = new Map(book.assessment.model.shell.nodes.map((node) => [node.id, node] as const));
  return {
    steps: table(book.show, {
      look: 'dense tight',
      rows: plan.steps.map((step, i) => ({ ...step, no: i + 1, node: nodes.get(step.id) })),
      columns: (c) => [
        c.count('Step', (one) => one.no),
        c.text('Do', (one) => one.do),
        c.refs('At', (one) => [one.id]),
        c.text(
          'What',
          (one) => one.node?.name ?? one.node?.nodeKind,
          (one) => one.why,
        ),
        placeColumn(
          book,
          'Where',
          (one) => one.node?.at,
          (one) => one.node?.id,
        ),
        panelColumn(book),
        c.count('Comes out', (one) => one.litres, 1, 'L'),
      ],
      empty: 'No water or waste line is recorded.',
    }),
    notes: plan.notes,
  };
}
