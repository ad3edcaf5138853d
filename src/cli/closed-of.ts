import type { ClosedAs } from '../store/closed-as.js';
import type { OpenShell } from './open.js';

/** How an opened shell was last closed; undefined where it was not, outside Git, and from a book. */
export async function closedOf({ store, standing, assessment }: OpenShell): Promise<ClosedAs | undefined> {
  if (!standing) return undefined;
  const { closedAs } = await import('../store/closed-as.js');
  return (await closedAs(store.root, standing.uncommitted)).get(assessment.model.shell.id);
}
