import type { OpenShell } from './open.js';

/** Fingerprint of a shell's whole record; one definition for the book, and for whatever asks which book is of this record. */
export async function fingerprintOf(opened: OpenShell): Promise<string> {
  const { model } = opened.assessment;
  const [{ fingerprint }, { hashPhotos }] = await Promise.all([
    import('../archive/fingerprint.js'),
    import('../store/hash-photos.js'),
  ]);
  return fingerprint(model, await hashPhotos(opened.store.text, model.shell.id));
}
