/** One note of somebody who worked on a coach. */
export interface PageNote {
  readonly date: string;
  readonly by: string;
  readonly text: string;
  /** Records that it is about. */
  readonly of: readonly string[];
  /** A JPEG in base64, with the SHA-256 of its bytes. */
  readonly picture?: { readonly jpeg: string; readonly sha256: string };
}

/** The file that a page gives back to the shop. */
export interface NotesFile {
  readonly shellbook: 'notes';
  readonly version: 1;
  readonly shell: string;
  /** Of the page that it was written on. */
  readonly edition: string;
  readonly revision: string | null;
  readonly fingerprint: string;
  readonly notes: readonly PageNote[];
}
