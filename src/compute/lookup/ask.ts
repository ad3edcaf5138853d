import type { Assessment } from '../../assess.js';
import { askTopics } from './topics/index.js';
import type { TopicAnswer } from './topics/topic.js';
import type { Match } from './types.js';
import { where, whereIs } from './where.js';

/** What `where` answers: to a question about the whole shell with a list of its own, else with the records that were asked for. */
export interface Answer {
  readonly topics: readonly TopicAnswer[];
  /** The records; of a topic those that its list names, in its order. */
  readonly matches: readonly Match[];
  /** Records that are called so as well, where a topic was answered. */
  readonly alsoNamed: number;
}

/** A record of exactly that id, name or marking goes before a question; a question goes before parts of names. */
export function ask(assessment: Assessment, query: string): Answer {
  const matches = where(assessment, query);
  if (matches[0]?.quality === 'exact') return { topics: [], matches, alsoNamed: 0 };
  const topics = askTopics(assessment, query);
  if (topics.length === 0) return { topics, matches, alsoNamed: 0 };
  const ids = topics.flatMap((topic) => topic.rows.flatMap(({ id }) => (id === undefined ? [] : [id])));
  const alsoNamed = matches.filter(({ quality }) => quality !== 'close').length;
  return { topics, matches: whereIs(assessment, ids), alsoNamed };
}
