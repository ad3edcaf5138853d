import { getOwn } from '../get-own.js';
import { nearest } from '../source/nearest.js';
import { shown } from '../source/shown.js';
import type { Path } from '../source/source.js';
import type { Kind } from './kinds.js';

const WORDS: Readonly<Partial<Record<Kind, string>>> = {
  shop: 'the shop file',
  shell: 'the shell',
  chassis: '`chassis`',
  datum: '`datum`',
  bare: '`bare`',
  declared: 'a declared value',
};

/** How a message speaks of a record of each kind. */
export const kindWords = (kind: Kind): string => WORDS[kind] ?? `${/^[aeiou]/u.test(kind) ? 'an' : 'a'} ${kind}`;

/** Keys that look right and are never typed, with the reason. */
const NEVER: Readonly<Partial<Record<Kind, Readonly<Record<string, string>>>>> = {
  test: {
    result: 'shellbook decides pass or fail from `limit` and `measured`',
    passed: 'shellbook decides pass or fail from `limit` and `measured`',
    pass: 'shellbook decides pass or fail from `limit` and `measured`',
  },
  section: {
    area: 'it is computed from the dimensions (only `shape: custom` has it typed)',
    mass: 'it is computed from the dimensions and the alloy’s density',
    weight: 'it is computed from the dimensions and the alloy’s density',
    ix: 'it is computed from the dimensions (only `shape: custom` has it typed)',
    iy: 'it is computed from the dimensions (only `shape: custom` has it typed)',
  },
  member: {
    mass: 'it is computed from section, length and the alloy’s density',
    length: 'type the ends `from` and `to`, and `cut_length` as measured',
  },
};

export function neverTyped(kind: Kind, key: string): string | undefined {
  const reason = getOwn(NEVER[kind] ?? {}, key);
  return reason === undefined ? undefined : `Unexpected key \`${key}\` in ${kindWords(kind)}: ${reason}. Take it out`;
}

export function unknownKeyMessage(key: string, known: readonly string[], kind: Kind, path: Path): string {
  const keys = path.filter((step): step is string => typeof step === 'string');
  const within = keys.length > 0 ? `\`${keys.at(-1)}\` of ${kindWords(kind)}` : kindWords(kind);
  const close = nearest(key, known, 2);
  if (close.length > 0)
    return `Unexpected key \`${shown(key)}\` in ${within}, expected ${close.map((one) => `\`${one}\``).join(' or ')}`;
  const list = known.map((one) => `\`${one}\``).join(', ');
  const own = path.length === 0 ? `. For a key of your own write \`x-${shown(key)}\`` : '';
  return `Unexpected key \`${shown(key)}\` in ${within}, expected one of ${list}${own}`;
}
