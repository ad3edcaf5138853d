import type { GitStanding } from '../store/history.js';
import type { OpenStore } from './open-store.js';

/** The last commit that touched a shell's record, or the one that a book was printed from; null outside Git. */
export const revisionOf = ({
  standing,
  store,
}: {
  readonly standing: GitStanding | null;
  readonly store: OpenStore;
}): string | null => standing?.last?.commit ?? store.book?.revision ?? null;
