import { parse } from 'yaml';
import { z } from 'zod';
import { readCertificate, type ShopCertificate } from './certificate.js';

/** A key that somebody knows to be a shop's. */
export interface KnownKey {
  /** SHA-256 of its certificate, hex. */
  readonly fingerprint: string;
  readonly name: string;
  /** First and last day that it signed on, ISO 8601. */
  readonly from?: string;
  readonly until?: string;
  /** Day since which others may have it. */
  readonly lost?: string;
  readonly certificate?: ShopCertificate;
  /** Who knows it, in words: `the store in records`, `you`. */
  readonly knownTo: string;
}

const FINGERPRINT = /^[0-9a-f]{64}$/u;
const MOST_KEYS = 1000;
const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/u, 'must be a day as 2026-02-11');
const keysSchema = z
  .array(
    z.strictObject({
      fingerprint: z.string(),
      name: z.string().min(1),
      from: day.optional(),
      until: day.optional(),
      lost: day.optional(),
      note: z.string().optional(),
      certificate: z.string().optional(),
    }),
  )
  .max(MOST_KEYS);

/** `SHA256:`, colons, blanks and capitals taken away; undefined where it is no whole fingerprint. */
export function readFingerprint(typed: string): string | undefined {
  const digits = typed
    .trim()
    .toLowerCase()
    .replace(/^sha-?256[ :=]*/u, '')
    .replace(/[\s:-]/gu, '');
  return FINGERPRINT.test(digits) ? digits : undefined;
}

export type KeysRead = { readonly keys: readonly KnownKey[] } | { readonly fault: string };

/** Reads a list of known keys (YAML). Never throws; a fault is the end of a sentence that names the file. */
export function readKeys(text: string, knownTo: string): KeysRead {
  let data: unknown;
  try {
    data = parse(text, { schema: 'failsafe', maxAliasCount: 0 }) ?? [];
  } catch (error) {
    return { fault: `is not YAML: ${(error as Error).message.split('\n')[0]}` };
  }
  const read = keysSchema.safeParse(data);
  if (!read.success) {
    const issue = read.error.issues[0];
    return { fault: `is wrong at \`${issue?.path.join('.') || 'its beginning'}\`: ${issue?.message ?? ''}` };
  }
  const keys: KnownKey[] = [];
  for (const { fingerprint: typed, certificate: encoded, name, from, until, lost } of read.data) {
    const fingerprint = readFingerprint(typed);
    if (fingerprint === undefined)
      return { fault: `has the fingerprint \`${typed.slice(0, 80)}\`, which is not one of 64 digits (0-9, a-f)` };
    const certificate = encoded === undefined ? undefined : readCertificate(Buffer.from(encoded, 'base64'));
    if (encoded !== undefined && certificate?.fingerprint !== fingerprint)
      return { fault: `has a certificate that is not the one of its fingerprint ${fingerprint.slice(0, 16)}…` };
    keys.push({
      fingerprint,
      name,
      knownTo,
      ...(from === undefined ? {} : { from }),
      ...(until === undefined ? {} : { until }),
      ...(lost === undefined ? {} : { lost }),
      ...(certificate ? { certificate } : {}),
    });
  }
  return { keys };
}

/** What is known of the key behind a good signature. */
export type KeyStanding =
  | { readonly is: 'known'; readonly key: KnownKey }
  /** `why`: in words, behind the shop's name. */
  | { readonly is: 'not trusted'; readonly key: KnownKey; readonly why: string }
  | { readonly is: 'unknown' };

/**
 * Whether a signature with the key of this fingerprint, made on that day by its own account, proves the shop. A lost key proves nothing
 * of any day: whoever found it dates as they like. A replaced one proves what it signed before.
 */
export function standingOf(fingerprint: string, day: string | undefined, known: readonly KnownKey[]): KeyStanding {
  const entries = known.filter((one) => one.fingerprint === fingerprint);
  const lost = entries.find((one) => one.lost !== undefined);
  if (lost) return { is: 'not trusted', key: lost, why: `was lost on ${lost.lost}: others may sign with it` };
  const [key] = entries;
  if (!key) return { is: 'unknown' };
  if (day !== undefined && key.until !== undefined && day > key.until)
    return { is: 'not trusted', key, why: `was replaced on ${key.until}, before the day of this signature` };
  if (day !== undefined && key.from !== undefined && day < key.from)
    return { is: 'not trusted', key, why: `is of ${key.from}, after the day of this signature` };
  return { is: 'known', key };
}
