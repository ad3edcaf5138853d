import { createHash, timingSafeEqual } from 'node:crypto';
import { cacheKey, markOf } from './cache-key.js';

export const digest = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const MARK_CHARS = 64;

/** Behind the mark of this user's key. Undefined where there is no key: nothing is kept then. */
export function sealed(text: string | Uint8Array): Buffer | undefined {
  const key = cacheKey();
  if (!key) return undefined;
  const bytes = Buffer.from(text as Uint8Array);
  return Buffer.concat([Buffer.from(`${markOf(key, bytes)} `), bytes]);
}

/** What was sealed here; undefined where it is damaged, and where it was sealed by anybody else. */
export function unsealed(bytes: Buffer): Buffer | undefined {
  const key = cacheKey();
  const text = bytes.subarray(MARK_CHARS + 1);
  if (!key || bytes.length <= MARK_CHARS) return undefined;
  const mark = Buffer.from(markOf(key, text));
  return timingSafeEqual(mark, bytes.subarray(0, MARK_CHARS)) ? text : undefined;
}
