import { UserError } from '../../user-error.js';

/** The `index`th of `count` shares of the shells, from 1. */
export interface Share {
  readonly index: number;
  readonly count: number;
}

/** `1/8`. Throws {@link UserError}. */
export function readShare(text: string): Share {
  const [, index, count] = /^(\d{1,4})\/(\d{1,4})$/u.exec(text.trim()) ?? [];
  const share = { index: Number(index), count: Number(count) };
  if (index === undefined || share.index < 1 || share.index > share.count)
    throw new UserError(`Found the share \`${text}\`, expected a share such as 1/8`);
  return share;
}

/**
 * Whether a shell belongs to a share: by its number alone (FNV-1a), so that every machine agrees, whatever else is in the store, and
 * a shell stays in its share.
 */
export function inShare(shell: string, { index, count }: Share): boolean {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(shell)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  // The low bits of a short name are spread too little by themselves.
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d) >>> 0;
  return ((hash ^ (hash >>> 13)) >>> 0) % count === index - 1;
}
