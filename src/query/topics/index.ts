import type { Computed } from '../../compute/figures.js';
import { isPlanned, PLANNED_WORDS } from '../../model/planned.js';
import { readerOf, say } from '../../words/index.js';
import { hanging, lifting, roof } from './declared.js';
import { earths } from './earths.js';
import { frost } from './frost.js';
import { leaks } from './leaks.js';
import { emergency, live } from './live.js';
import { contacts, pointers, rightBook } from './papers.js';
import { protections } from './protections.js';
import { changes, repairs } from './repairs.js';
import { spareWays } from './spare-ways.js';
import { tested } from './tested.js';
import type { Topic, TopicAnswer } from './topic.js';
import { torques } from './torques.js';
import { unused } from './unused.js';
import { valves } from './valves.js';
import { asked } from './words.js';

/** Every question about the whole shell that `where` understands, by its words. */
export const TOPICS: readonly Topic[] = [
  protections,
  live,
  valves,
  frost,
  leaks,
  spareWays,
  unused,
  earths,
  torques,
  tested,
  lifting,
  hanging,
  roof,
  repairs,
  changes,
  emergency,
  contacts,
  rightBook,
  ...pointers,
];

/** The topics that every word of a question belongs to; filling words do not count. */
export const topicsOf = (query: string): readonly Topic[] => asked(query, TOPICS);

/** The answer to one question about the whole shell. */
export function answerTopic(assessment: Computed, { name, ask, answer }: Topic): TopicAnswer {
  const { rows, notes } = answer(assessment);
  const { shell, shop } = assessment.model;
  // Nobody can shut what is not there: said in the row itself.
  const said = rows.map((row) =>
    row.id !== undefined && isPlanned(shell, row.id) ? { ...row, what: `${row.what} ${PLANNED_WORDS}` } : row,
  );
  return { topic: name, question: say(readerOf({ english: shop.english }), ask), rows: said, notes };
}
