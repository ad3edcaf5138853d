import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { type SolvedPhoto, solvePhoto } from '../compute/pictures/solve-photo.js';
import type { Photo } from '../records/index.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { type OpenShell, openForAnswer } from './open.js';

/** A photo of a shell, tied to the datum by its `seen` points, with the bytes of its file. */
export interface OpenPhoto {
  readonly opened: OpenShell;
  readonly solved: SolvedPhoto;
  readonly bytes: Buffer;
}

/** Throws {@link UserError} where there is no such photo, or its file cannot be read. */
export async function openPhoto(shell: string, id: string, context: Context): Promise<OpenPhoto> {
  const opened = await openForAnswer(shell, context, []);
  const { model } = opened.assessment;
  const photo = model.shell.photos.find((one) => one.id === id) ?? (await noSuchPhoto(shell, id, model.shell.photos));
  const file = `shells/${shell}/photos/${photo.file}`;
  // Only what the reader found inside the photos folder: a record's file name may say anything.
  if (!opened.store.text.photos.has(file))
    throw new UserError(`Photo ${id}: ${file} is not there. Put the picture back, or mend \`file\`.`);
  const [bytes, { pictureFacts }] = await Promise.all([
    readFile(path.join(opened.store.root, file)),
    import('../store/picture-facts.js'),
  ]);
  const facts = await pictureFacts(bytes);
  if (!facts) throw new UserError(`Photo ${id}: ${file} cannot be read as a picture`);
  return { opened, solved: solvePhoto(model, photo, facts), bytes };
}

async function noSuchPhoto(shell: string, id: string, photos: readonly Photo[]): Promise<never> {
  const { nearest } = await import('../source/nearest.js');
  const close = nearest(
    id,
    photos.map((one) => one.id),
  );
  throw new UserError(`No photo ${id} in ${shell}.${close.length > 0 ? ` Did you mean ${close.join(' or ')}?` : ''}`);
}
