import type { Bounds } from '../../geometry/box.js';
import type { TopicAnswer } from '../topics/topic.js';
import { asked } from '../topics/words.js';
import { matching } from './matching.js';
import type { Findable } from './records.js';
import type { Match } from './types.js';
import { searchIn } from './word-search.js';

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
  if (topics.length === 0) return { topics, matches: named.length > 0 ? all() : byWords(lookup, query), alsoNamed: 0 };
  const ids = new Set(topics.flatMap((topic) => topic.rows.flatMap(({ id }) => id ?? [])));
  return {
    topics,
    matches: [...ids].flatMap((id) => lookup.match(id) ?? []),
    alsoNamed: named.filter(([, quality]) => quality !== 'close').length,
  };
}

const MOST_BY_WORDS = 10;

/** What everyday words may mean, as the phone page's search has it: offered where nothing is called so, and no answer. */
function byWords(lookup: Lookup, query: string): readonly Match[] {
  const entries = lookup.findables.map(({ id, kind, name, marking, service, colour }) => ({
    id,
    title: name ?? '',
    kind,
    names: [marking, colour].filter(Boolean).join(' '),
    more: service ?? '',
  }));
  const { hits } = searchIn(entries, () => '').find(query);
  return hits.slice(0, MOST_BY_WORDS).flatMap(({ id }) => {
    const match = lookup.match(id);
    return match ? [{ ...match, quality: 'close' as const }] : [];
  });
}
