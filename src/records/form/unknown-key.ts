import { getOwn } from '../../get-own.js';
import { nearest } from '../../source/nearest.js';
import { shown } from '../../source/shown.js';
import type { Path } from '../../source/source.js';
import { kindOf } from '../kinds.js';
import type { KindName } from '../names.js';

/** How a message speaks of a record of each kind. */
export const kindWords = (kind: KindName): string => kindOf(kind).more.words ?? `${/^[aeiou]/u.test(kind) ? 'an' : 'a'} ${kind}`;

/** Why a key that looks right is never typed. */
export function neverTyped(kind: KindName, key: string): string | undefined {
  const reason = getOwn(kindOf(kind).more.never ?? {}, key);
  return reason === undefined ? undefined : `Found the key \`${key}\` in ${kindWords(kind)}: ${reason}. Take it out`;
}

export function unknownKeyMessage(key: string, known: readonly string[], kind: KindName, path: Path): string {
  const keys = path.filter((step): step is string => typeof step === 'string');
  const within = keys.length > 0 ? `\`${keys.at(-1)}\` of ${kindWords(kind)}` : kindWords(kind);
  const close = nearest(key, known, 2);
  if (close.length > 0)
    return `Found the key \`${shown(key)}\` in ${within}, expected ${close.map((one) => `\`${one}\``).join(' or ')}`;
  const list = known.map((one) => `\`${one}\``).join(', ');
  const own = path.length === 0 ? `. For a key of your own write \`x-${shown(key)}\`` : '';
  return `Found the key \`${shown(key)}\` in ${within}, expected one of ${list}${own}`;
}
