import type { Outside } from '../rules/rule.js';
import type { Context } from './context.js';
import type { OpenStore } from './open.js';

/** What a check of everything wants to know from beside the records: when each came into Git, and what the pictures say themselves. */
export async function lookAround(store: OpenStore, shell: string, context: Context): Promise<Outside> {
  if (!store.loaded.shells.has(shell)) return {};
  const hasPhotos = [...store.text.photos.keys()].some((file) => file.startsWith(`shells/${shell}/photos/`));
  if (hasPhotos) context.progress(`Looking at the photos of ${shell}`);
  const { history } = store;
  // Part of a history would give every record the day of the first commit that is here.
  if (history?.missing !== undefined) context.tell(`${history.missing} When records were entered is not looked at.`);
  const [entered, last, photos] = await Promise.all([
    history && history.missing === undefined
      ? import('../store/entered.js').then(({ enteredOn }) => enteredOn(store.root, shell))
      : undefined,
    history?.commits(shell, 1),
    hasPhotos
      ? import('../store/photo-facts.js').then(({ photoFacts }) => photoFacts(store.text, shell, history?.gitDir))
      : undefined,
  ]);
  const lastCommit = last?.[0]?.date;
  return { ...(entered ? { entered } : {}), ...(lastCommit === undefined ? {} : { lastCommit }), ...(photos ? { photos } : {}) };
}
