import { type Trend, trendOf } from '../compute/record/trends.js';
import type { Context } from './context.js';
import { openStoreFor } from './open.js';

/** Every shell of the store by what it says of the shop's work, in the order of the store. */
export async function storeTrends(context: Context): Promise<readonly Trend[]> {
  const store = await openStoreFor(context);
  const [{ assess }, { enteredOn }] = await Promise.all([import('../assess.js'), import('../store/entered.js')]);
  const trends: Trend[] = [];
  for (const [shell, { model }] of store.loaded.shells) {
    context.progress(`Looking back on ${shell}`);
    const entered = store.history ? await enteredOn(store.root, shell) : undefined;
    trends.push(trendOf(model, assess(model, [], {}, []).figures.weights.tickets, entered));
  }
  return trends;
}
