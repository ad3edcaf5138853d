import { kindOf } from './kinds.js';
import type { KindName } from './names.js';

type Typed = Readonly<Record<string, unknown>>;

/**
 * What tells a record from the others of its kind, as typed: its id; of kinds that need none, the words that stand for one. Two people may
 * sign one stage on one day in one role: who signs tells them apart, though the model calls both the same.
 * @returns undefined where nothing tells it.
 */
export function identityOf(kind: KindName, data: Typed): string | undefined {
  if (data.id !== undefined && data.id !== null) return String(data.id);
  return kindOf(kind)
    .more.toldBy?.map((key) => String(data[key] ?? ''))
    .join(' ');
}

/** What a reader calls a record: the id that was typed, else the one that the model makes of its words; `?` where there is neither. */
export function calledOf(kind: KindName, data: Typed): string {
  if (data.id !== undefined && data.id !== null) return String(data.id);
  const usual: unknown = kindOf(kind).fields.id?.traits.usual;
  const words = kindOf(kind).more.toldBy ?? [];
  const read = { ...data, ...Object.fromEntries(words.map((key) => [key, data[key] ?? ''])) };
  return (typeof usual === 'function' ? String(usual({ read })) : '') || (identityOf(kind, data) ?? '?');
}
