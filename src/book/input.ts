import type { Carry } from '../archive/carry.js';
import type { Assessment } from '../assess.js';
import type { Drawings } from './drawings.js';

/** Who reads the book: see {@link ./editions.ts} for what each may see. */
export type Edition = 'owner' | 'service' | 'shop';
export const EDITIONS: readonly Edition[] = ['owner', 'service', 'shop'];

/** What Git says of the record, newest commit first. */
export interface CommitList {
  /** The commit that the book is printed from; absent where the record was never committed. */
  readonly revision?: string;
  /** ISO 8601 date of that commit: the date of the book. The clock of this machine is never asked. */
  readonly revisionDate?: string;
  readonly tag?: string;
  readonly commits: readonly {
    readonly hash: string;
    readonly date: string;
    readonly author: string;
    readonly message: string;
    readonly tag?: string;
  }[];
}

/** With whose key a book is signed. */
export interface BookSigner {
  /** The shop's name, as its certificate has it. */
  readonly name: string;
  /** SHA-256 of the certificate, hex: printed in the book, so that it can be compared with the shop's own paper. */
  readonly fingerprint: string;
  /** ISO 8601: when the signature says that it was made. */
  readonly date?: string;
  /** Signs a SHA-256 digest (CMS, DER); absent where a signed book is only printed again to compare its pages. */
  readonly sign?: (digest: Uint8Array) => Uint8Array;
}

export interface BookInput {
  readonly assessment: Assessment;
  readonly edition: Edition;
  /** SHA-256 over the record as this edition carries it, in hexadecimal. */
  readonly fingerprint: string;
  readonly history: CommitList;
  /** True where the record has changes that no commit has: the book then says so on its cover and at the foot of every page. */
  readonly dirty?: boolean;
  /** Bytes of a photo's file; undefined where it is missing. */
  photoFile(photoId: string): Promise<Buffer | undefined>;
  /** Makes the records that the book takes along, as its edition may have them; absent for a print to look at. */
  readonly carry?: () => Promise<Carry>;
  /** Who signs; absent where nobody does. */
  readonly signer?: BookSigner;
  /** Other drawings than the project's own: plain ones where only the words are wanted. */
  readonly drawings?: Drawings;
  progress?(text: string): void;
}

export interface PrintedBook {
  readonly pdf: Uint8Array;
  /** Anchor of a record or heading → number of the page where it stands, from 1. */
  readonly pages: ReadonlyMap<string, number>;
  readonly pageCount: number;
  /** What the reader of the book should know went less than well, as a photo that could not be read. Sentences. */
  readonly warnings: readonly string[];
  /** Those of them that say what no page holds at its size. */
  readonly misfits: readonly string[];
}
