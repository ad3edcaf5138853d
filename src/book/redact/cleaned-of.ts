import type { Edition } from '../input.js';
import type { Hidden } from './hidden.js';
import { tokensIn } from './text.js';

/**
 * All that a record file as an edition may have it is made of, as text; of the ids that stay as they are only those that may stand in it,
 * so that one more record elsewhere changes nothing. Undefined where its words may be written otherwise than they read.
 */
export function cleanedOf(path: string, text: string, hidden: Hidden, edition: Edition): string | undefined {
  if (text.includes('\\')) return undefined;
  const tokens = new Set(tokensIn(text).map(({ token }) => token));
  const ids = sortedIds(hidden).filter(([id, isToken]) => !isToken || tokens.has(id));
  const { people, peopleNames, records, stamps, names, spared, ownKeys } = hidden;
  const lists = [people, peopleNames, records, stamps, names, spared].map((one) => [...one]);
  return JSON.stringify([edition, path, text, ownKeys, lists, ids.map(([id]) => id)]);
}

type KnownId = readonly [id: string, isToken: boolean];
const known = new WeakMap<Hidden, readonly KnownId[]>();

/** Each with whether a text that it stands in has it among its tokens; one with blanks or with dots at its ends has not. */
function sortedIds(hidden: Hidden): readonly KnownId[] {
  const made = known.get(hidden) ?? [...hidden.ids].sort().map((id): KnownId => [id, tokensIn(id)[0]?.token === id]);
  known.set(hidden, made);
  return made;
}
