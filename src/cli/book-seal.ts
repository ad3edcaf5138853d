import type { BookSignature, SealCheck } from '../archive/check-seal.js';
import type { BookDifference } from '../archive/verify.js';
import { type KeyStanding, type KnownKey, standingOf } from '../signing/known-keys.js';
import { groupedDigits } from '../signing/words.js';

/** By whom a book was signed, as far as anybody here knows. */
export interface SignedBy {
  /** Absent where it is not signed, or its signature does not hold. */
  readonly signature?: BookSignature;
  readonly standing?: KeyStanding;
  /** Signed with a key that is known to be the shop's. */
  readonly proved: boolean;
  /** One sentence. */
  readonly words: string;
}

export function signedBy({ signature }: SealCheck, known: readonly KnownKey[]): SignedBy {
  if (!signature) return { proved: false, words: 'Not signed: anybody could have made this file.' };
  if ('fault' in signature) return { proved: false, words: `Signed, but the signature ${signature.fault}.` };
  const { signer, day } = signature;
  const standing = standingOf(signer.fingerprint, day, known);
  const on = day === undefined ? '' : ` on ${day}`;
  return { signature, standing, proved: standing.is === 'known', words: wordsOf(standing, signature, on) };
}

function wordsOf(standing: KeyStanding, { signer }: BookSignature, on: string): string {
  const key = `key ${groupedDigits(signer.fingerprint)}`;
  if (standing.is === 'known')
    return `Signed by ${standing.key.name || signer.name}${on}, with the ${key}, which is known to ${standing.key.knownTo}.`;
  if (standing.is === 'not trusted')
    return `Not proved: signed with a key of ${standing.key.name} that ${standing.why} (${key}).`;
  return `Signed by nobody known: whoever signed${on} goes by the name “${signer.name}”, and anybody can. Compare the ${key} with the one on the shop’s own paper.`;
}

/**
 * What is wrong where a book should be signed with one of these keys, and is not: a store that signs its books has none without a
 * signature. `day`: of the book's revision by the store's own history; absent where the store has no such revision.
 */
export function unsignedDespite(
  { standing, signature }: SignedBy,
  keys: readonly KnownKey[],
  day: string | undefined,
): readonly BookDifference[] {
  const expected = keys.filter(
    ({ from, lost }) => lost === undefined && (day === undefined || from === undefined || from <= day),
  );
  if (expected.length === 0) return [];
  if (standing?.is === 'known' && expected.some(({ fingerprint }) => fingerprint === signature?.signer.fingerprint)) return [];
  const [first] = expected;
  const since = first?.from === undefined ? '' : ` since ${first.from}`;
  const message =
    first?.name === ''
      ? 'It is not signed with the key that you typed.'
      : `${first?.name} signs its books${since}, and this one is not signed with any of its keys.`;
  return [{ part: 'signature', name: 'signature', message }];
}
