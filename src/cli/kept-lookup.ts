import type { Lookup } from '../query/lookup/ask.js';
import type { Match, TopicAnswer } from '../query/lookup/types.js';
import { findStore } from '../store/find.js';
import { type Asked, type KeptAt, keep, keptAt, readKept } from '../store/kept-answers.js';
import type { Context } from './context.js';
import { programFiles } from './program-files.js';
import type { Shown } from './report/where-text.js';

/** All that `where` answers from. */
export interface TraceQuery extends Shown {
  readonly lookup: Lookup;
  readonly revision: string | null;
  /** That the records have errors, where they do. */
  readonly warning?: string;
  pagesOf(id: string): readonly number[];
}

interface Head extends Pick<Lookup, 'findables' | 'bounds' | 'topics'> {
  readonly units: Shown['units'];
  readonly services: readonly (readonly [string, string])[];
  readonly revision: string | null;
  readonly warning?: string;
}

/** Where this shell's answers are kept; undefined outside Git and for a book. */
export async function placeOf(shell: string, { io, settings }: Context): Promise<KeptAt | undefined> {
  if (settings.book !== undefined) return undefined;
  return keptAt(findStore(io.cwd, settings.store), whereAsked(shell));
}

/** The pages of printed books are in the answers. */
export const whereAsked = (shell: string): Asked => ({
  room: 'where',
  question: shell,
  program: programFiles(),
  inGit: ['shellbook/pages'],
});

/** The answers of the last time; undefined where a record has changed since. */
export async function keptLookup(place: KeptAt): Promise<TraceQuery | undefined> {
  const kept = await readKept(place);
  if (!kept || !isHead(kept.head)) return undefined;
  const { head } = kept;
  const of = (id: string) =>
    kept.part(`record ${id}`) as { readonly match: Match; readonly pages: readonly number[] } | undefined;
  return {
    ...head,
    services: new Map(head.services),
    lookup: {
      ...head,
      match: (id) => of(id)?.match,
      topic: (name) => kept.part(`topic ${name}`) as TopicAnswer | undefined,
    },
    pagesOf: (id) => of(id)?.pages ?? [],
  };
}

const isHead = (found: unknown): found is Head => {
  const { findables, topics, services } = (found ?? {}) as Partial<Head>;
  return [findables, topics, services].every(Array.isArray);
};

/** Keeps every answer, whatever was asked this time. */
export async function keepLookup(place: KeptAt, sought: TraceQuery): Promise<void> {
  const { lookup, units, services, revision, warning, pagesOf } = sought;
  const head: Head = {
    findables: lookup.findables,
    ...(lookup.bounds ? { bounds: lookup.bounds } : {}),
    topics: lookup.topics.map(({ name, words }) => ({ name, words })),
    units,
    services: [...services],
    revision,
    ...(warning === undefined ? {} : { warning }),
  };
  await keep(place, head, [
    ...lookup.findables.map(({ id }) => [`record ${id}`, { match: lookup.match(id), pages: pagesOf(id) }] as const),
    ...lookup.topics.map(({ name }) => [`topic ${name}`, lookup.topic(name)] as const),
  ]);
}
