import type { Bounds } from '../../geometry/box.js';
import type { TopicAnswer } from '../topics/topic.js';
import { asked } from '../topics/words.js';
import { matching } from './matching.js';
import type { Findable } from './records.js';
import type { Match } from './types.js';

/** What `where` answers: to a question about the whole shell with a list of its own, else with the records that were asked for. */
export interface Answer {
  readonly topics: readonly TopicAnswer[];
  /** The records; of a topic those that its list names, in its order. */
  readonly matches: readonly Match[];
  /** Records that are called so as well, where a topic was answered. */
  readonly alsoNamed: number;
}

/** What there is to ask a shell, and the answers: computed when asked for, or kept from the last time. */
export interface Lookup {
  readonly findables: readonly Findable[];
  readonly bounds?: Bounds;
  readonly topics: readonly { readonly name: string; readonly words: readonly string[] }[];
  match(id: string): Match | undefined;
  topic(name: string): TopicAnswer | undefined;
}

/** A record of exactly that id, name or marking goes before a question; a question goes before parts of names. */
export function ask(lookup: Lookup, query: string): Answer {
  const named = matching(query, lookup.findables, lookup.bounds);
  const all = (): readonly Match[] =>
    named.flatMap(([one, quality]) => {
      const match = lookup.match(one.id);
      return match ? [{ ...match, quality }] : [];
    });
  const topics = named[0]?.[1] === 'exact' ? [] : asked(query, lookup.topics).flatMap(({ name }) => lookup.topic(name) ?? []);
  if (topics.length === 0) return { topics, matches: all(), alsoNamed: 0 };
  const ids = new Set(topics.flatMap((topic) => topic.rows.flatMap(({ id }) => id ?? [])));
  return {
    topics,
    matches: [...ids].flatMap((id) => lookup.match(id) ?? []),
    alsoNamed: named.filter(([, quality]) => quality !== 'close').length,
  };
}
