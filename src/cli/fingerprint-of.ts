import type { StoreText } from '../model/load-types.js';
import type { Model } from '../model/shell.js';
import type { OpenShell } from './open.js';

export interface Fingerprinted {
  readonly fingerprint: string;
  /** Path in the store → SHA-256, hex, of the shell's photo files. */
  readonly photoHashes: ReadonlyMap<string, string>;
}

/** Fingerprint of a shell's whole record; one definition for the book, and for whatever asks which book is of this record. */
export const fingerprintOf = ({ store, assessment }: OpenShell): Promise<Fingerprinted> =>
  fingerprintIn(store.text, assessment.model);

/** The same of a shell in a store whose files were read. */
export async function fingerprintIn(text: StoreText, model: Model): Promise<Fingerprinted> {
  const [{ fingerprint }, { hashPhotos }] = await Promise.all([
    import('../archive/fingerprint.js'),
    import('../store/hash-photos.js'),
  ]);
  const photoHashes = await hashPhotos(text, model.shell.id);
  return { fingerprint: fingerprint(model, photoHashes), photoHashes };
}
