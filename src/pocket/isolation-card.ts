import type { Isolation } from '../query/lookup/types.js';
import { type IsolationCard, linkTo, type Pocket } from './pocket.js';

/** What every isolation says: the page says it once, with what else holds for all of it. */
const SAID_ONCE = ['From the records only', 'Fewest actions'];

/** An isolation as steps to tick off, in the order to do them; undefined where there is nothing to do and nothing to say. */
export function isolationCard(
  { say, told, placeOf }: Pocket,
  isolation: Isolation | undefined,
  has: (id: string) => boolean,
): IsolationCard | undefined {
  if (!isolation || (isolation.actions.length === 0 && isolation.unknown.length === 0)) return undefined;
  const { id, actions, sourcesLeft, verified, unknown, notes } = isolation;
  const isProved = verified && sourcesLeft.length === 0;
  return {
    title: say('pocket.card.isolate', { count: actions.length }),
    steps: actions.map((action) => ({
      text: told(action.say),
      ...placed(action.id === id ? undefined : placeOf(action.id)),
      links: [...new Set([action.id, ...action.panels])].filter((one) => one !== id).map((one) => linkTo(one, has)),
    })),
    ...(isProved ? { proved: say('pocket.card.proved') } : { unproved: say('pocket.card.unproved') }),
    missing: isProved ? [] : unknown.map((one) => `${one.id}: ${told(one.what)}`),
    ...(sourcesLeft.length > 0 ? { left: say('pocket.card.left', { ids: sourcesLeft.join(', ') }) } : {}),
    notes: notes.filter((note) => !SAID_ONCE.some((start) => note.startsWith(start))).map(told),
  };
}

const placed = (place: string | undefined): { readonly place?: string } => (place === undefined ? {} : { place });
