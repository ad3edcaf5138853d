import { fieldKeys } from './field-keys.js';
import { type Hidden, SOMEONE } from './hidden.js';
import { cleanText } from './text.js';
import { folded } from './words.js';

/** The id that stands in record files where a person is named by id. */
export const SOMEONE_ID = 'the-shop';

/** A deep copy of a record without what is hidden. What was typed stays behind whole: nothing prints it, and nothing can leak from it. */
export function redact(value: unknown, hidden: Hidden, key = ''): unknown {
  if (typeof value === 'string') return cleanValue(value, hidden, key);
  if (Array.isArray(value)) return value.filter((one) => !isHiddenRecord(one, hidden)).map((one) => redact(one, hidden, key));
  if (value === null || typeof value !== 'object' || key === 'source') return value;
  if (key === 'typed') return {};
  const entries = Object.entries(value).filter(([name, one]) => !isLeftOut(name, hidden) && !isHiddenRecord(one, hidden));
  return Object.fromEntries(entries.map(([name, one]) => [name, redact(one, hidden, name)]));
}

/** The id of a finding or photo that is not for this edition, alone in its field. */
export const isHiddenRecord = (value: unknown, { records }: Hidden): boolean => typeof value === 'string' && records.has(value);

/** A key whose field an edition leaves out whole: private ones, and the shop's own, in which anything may stand. */
export const isLeftOut = (key: string, { ownKeys }: Hidden): boolean =>
  ownKeys && (key.startsWith('x-') || fieldKeys().private.has(key));

/** What stands in one field; `key` is what it or its list is called. */
export function cleanValue(value: string, hidden: Hidden, key: string): string {
  if (fieldKeys().person.has(key) && isHiddenPerson(value, hidden)) return SOMEONE;
  return hidden.ids.has(value) ? value : cleanText(value, hidden);
}

/** A field for a person that holds the id or the name of one who is hidden. */
export const isHiddenPerson = (value: string, { people, peopleNames }: Hidden): boolean =>
  people.has(value.trim()) || peopleNames.has(folded(value.trim()));
