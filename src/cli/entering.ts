import type { Writer } from '../store/write.js';

/**
 * Writes to a store as {@link writing} does, and keeps what stood there before with the user, so that `undo` can put it back. `what` is
 * asked when it is written.
 */
export async function entering<T>(root: string, what: () => string, act: (writer: Writer) => Promise<T>): Promise<T> {
  const [{ writing }, { Journal }] = await Promise.all([import('../store/write.js'), import('../store/journal.js')]);
  const journal = await Journal.of(root);
  return writing(root, act, (written) => journal.put(what(), new Date().toISOString(), written));
}
