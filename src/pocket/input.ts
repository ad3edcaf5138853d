import type { Assessment } from '../assess.js';
import type { CommitList } from '../book/input.js';
import type { Reader } from '../words/index.js';

/** Editions that have a page for a phone. */
export type PocketEdition = 'owner' | 'service';
export const POCKET_EDITIONS: readonly PocketEdition[] = ['owner', 'service'];

/** What a page for a phone is made from: the whole record, which is cut down to the edition here. */
export interface PocketInput {
  readonly assessment: Assessment;
  readonly edition: PocketEdition;
  readonly reader: Reader;
  /** SHA-256 over the record as this edition has it, in hexadecimal. */
  readonly fingerprint: string;
  readonly history: CommitList;
  /** The record has changes that no commit has. */
  readonly dirty: boolean;
  /** The page's script, bundled. */
  readonly script: string;
  /** Bytes of a photo's file; undefined where it is missing. */
  photoFile(photoId: string): Promise<Buffer | undefined>;
}
