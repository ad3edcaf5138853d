import { enumFault } from '../records/form/worded-fields.js';
import type { EntryColumn } from './columns.js';

/** What is wrong with a word that its closed list does not have; undefined for what has no such list. */
export function outsideList({ key, form, traits }: EntryColumn, value: unknown): string | undefined {
  if (!traits.listed || form.as !== 'choice' || value === undefined || form.values.includes(String(value))) return undefined;
  const { found, expected } = enumFault(value, form.values);
  return `Found ${found} for \`${key}\`, expected ${expected}`;
}
