import { createHash } from 'node:crypto';
import type { Model } from '../model/shell.js';
import { canonicalRecords } from './canonical.js';

/** SHA-256 (FIPS 180-4) as 64 lower-case hex digits. Text is hashed as UTF-8. */
export const sha256 = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');

/**
 * One number for everything that a shell's book stands on: SHA-256 over the canonical form (RFC 8785) of every record, each on a line
 * of its own, sorted by kind and id. Changes with any record, any photo, and nothing else: comments, key order and the files'
 * layout do not count. `photoHashes` as for {@link canonicalRecords}.
 */
export function fingerprint(model: Model, photoHashes: ReadonlyMap<string, string> = new Map()): string {
  const hash = createHash('sha256');
  for (const { text } of canonicalRecords(model, photoHashes)) hash.update(text).update('\n');
  return hash.digest('hex');
}
