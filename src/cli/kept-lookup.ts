import { fileURLToPath } from 'node:url';
import type { Lookup, Match, TopicAnswer } from '../compute/lookup/types.js';
import { findStore } from '../store/find.js';
import { type KeptAt, keep, keptAt, readKept } from '../store/kept-answers.js';
import type { Context } from './context.js';
import type { Shown } from './report/where-text.js';

/** All that `where` answers from. */
export interface Sought extends Shown {
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

/** A run from the sources, which change file by file, keeps nothing. */
const PROGRAM = fileURLToPath(import.meta.url);
const BUILT = PROGRAM.endsWith('.js');

/** Where this shell's answers are kept; undefined outside Git, for a book, and for a program that was not built. */
export async function placeOf(shell: string, { io, settings }: Context, built = BUILT): Promise<KeptAt | undefined> {
  if (!built || settings.book !== undefined) return undefined;
  return keptAt(findStore(io.cwd, settings.store), shell, PROGRAM);
}

/** The answers of the last time; undefined where a record has changed since. */
export async function keptLookup(place: KeptAt): Promise<Sought | undefined> {
  const kept = await readKept(place);
  if (!kept) return undefined;
  const head = kept.head as Head;
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

/** Keeps every answer, whatever was asked this time. */
export async function keepLookup(place: KeptAt, sought: Sought): Promise<void> {
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
