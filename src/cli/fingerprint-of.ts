import type { OpenShell } from './open.js';

export interface Fingerprinted {
  readonly fingerprint: string;
  /** Path in the store → SHA-256, hex, of the shell's photo files. */
  readonly photoHashes: ReadonlyMap<string, string>;
}

/** Fingerprint of a shell's whole record; one definition for the book, and for whatever asks which book is of this record. */
export async function fingerprintOf(opened: OpenShell): Promise<Fingerprinted> {
  const { model } = opened.assessment;
  const [{ fingerprint }, { hashPhotos }] = await Promise.all([
    import('../archive/fingerprint.js'),
    import('../store/hash-photos.js'),
  ]);
  const photoHashes = await hashPhotos(opened.store.text, model.shell.id);
  return { fingerprint: fingerprint(model, photoHashes), photoHashes };
}
