import { NOT_IN_DIGESTS } from '../pdf/document-digest.js';
import { isSealed } from '../pdf/seal.js';
import { findSignature } from '../pdf/signature.js';
import type { ShopCertificate } from '../signing/certificate.js';
import { readDetached } from '../signing/cms.js';
import type { CarriedBook } from './open-book.js';

/** A good signature over the whole file: with whose key, and when by the signer's own account. */
export interface BookSignature {
  readonly signer: ShopCertificate;
  /** ISO 8601 day. */
  readonly day: string | undefined;
}

/** What can be said of a book's bytes without reading its pages. */
export interface SealCheck {
  /** Not one byte has changed since the file was written; anybody can write such a file. */
  readonly sealed: boolean;
  /** Absent where nobody signed. */
  readonly signature?: BookSignature | { readonly fault: string };
  /** What no digest covers, in words; empty where the seal over all bytes is whole. */
  readonly notCovered: readonly string[];
}

/** Of books that were printed before these had digests. */
const NOT_COVERED_BEFORE: readonly string[] = [
  'links and notes on the pages',
  'bookmarks, page labels and the title',
  ...NOT_IN_DIGESTS,
];

export function checkSeal({ file, manifest }: CarriedBook): SealCheck {
  const found = findSignature(file);
  const stretch = 'signature' in found ? found.signature.stretch : undefined;
  const sealed = isSealed(file, stretch);
  const isNew = 'manifest' in manifest && manifest.manifest.seal === 2;
  return {
    sealed,
    notCovered: sealed ? [] : isNew ? NOT_IN_DIGESTS : NOT_COVERED_BEFORE,
    ...signatureOf(found),
  };
}

function signatureOf(found: ReturnType<typeof findSignature>): Pick<SealCheck, 'signature'> {
  if ('none' in found) return {};
  if ('fault' in found) return { signature: found };
  const { der, digest, date } = found.signature;
  const read = readDetached(der, digest);
  if ('fault' in read) return { signature: { fault: `proves nothing: ${read.fault}` } };
  return { signature: { signer: read.signer, day: dayOf(date) } };
}

/** `D:20260630100000Z` → `2026-06-30` */
function dayOf(date: string | undefined): string | undefined {
  const [, year, month, day] = /^D:(\d{4})(\d{2})(\d{2})/u.exec(date ?? '') ?? [];
  return year === undefined ? undefined : `${year}-${month}-${day}`;
}
