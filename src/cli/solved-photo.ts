import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { cameraFitData, cameraFitOf } from '../compute/camera/fit.js';
import { type SolvedPhoto, solvePhoto } from '../compute/pictures/solve-photo.js';
import type { Photo } from '../records/index.js';
import { findStore } from '../store/find.js';
import { UserError } from '../user-error.js';
import { type Answering, answering } from './answering.js';
import type { Context } from './context.js';
import { openStoreFor } from './open.js';

/** A photo of a shell, tied to the datum by its `seen` points. */
export interface OpenPhoto {
  readonly opened: Answering;
  /** Where it was taken from and how well its points fit; of a fit that was kept, only the figures. */
  readonly solved: SolvedPhoto;
  /** The same with a fit that places can be looked up by: fitted again where only its figures were kept. */
  fitted(): Promise<SolvedPhoto>;
  /** The folder of the store. */
  readonly root: string;
  /** What is in the photo's file. */
  bytes(): Promise<Buffer>;
}

/** Throws {@link UserError} where there is no such photo, or its file cannot be read. */
export async function openPhoto(shell: string, id: string, context: Context): Promise<OpenPhoto> {
  const opened = await answering(shell, context, []);
  const { model, figures } = opened.assessment;
  const photo = model.shell.photos.find((one) => one.id === id) ?? (await noSuchPhoto(shell, id, model.shell.photos));
  const file = `shells/${shell}/photos/${photo.file}`;
  const known = context.settings.book === undefined ? figures.solvedPhotos.get(id) : undefined;
  if (known) {
    // Only what the reader found inside the photos folder is among them: a record's file name may say anything.
    const root = findStore(context.io.cwd, context.settings.store);
    const fitted = async (): Promise<SolvedPhoto> => (opened.assessment.kept ? fittedAgain(opened, known) : known);
    return { opened, solved: known, fitted, root, bytes: () => readFile(path.join(root, file)) };
  }
  return unmarked(opened, photo, file, context);
}

/** The fit that was kept, as it was; fitted again the first time. One on a plane takes little time. */
async function fittedAgain({ assessment: { model }, once }: Answering, known: SolvedPhoto): Promise<SolvedPhoto> {
  const { photo, facts } = known;
  if (known.method !== 'camera') return solvePhoto(model, photo, facts);
  const data = await once(`camera ${photo.id}`, async () => {
    const { fit } = solvePhoto(model, photo, facts);
    return fit?.method === 'camera' ? cameraFitData(fit) : null;
  });
  return data ? { ...known, fit: cameraFitOf(data) } : solvePhoto(model, photo, facts);
}

/** A photo that no figure is kept of: without marked points, out of a book, or not there. */
async function unmarked(opened: Answering, photo: Photo, file: string, context: Context): Promise<OpenPhoto> {
  const { root, text } = await openStoreFor(context);
  if (!text.photos.has(file))
    throw new UserError(`Photo ${photo.id}: ${file} is not there. Put the picture back, or mend \`file\`.`);
  const [bytes, { pictureFacts }] = await Promise.all([readFile(path.join(root, file)), import('../store/picture-facts.js')]);
  const facts = await pictureFacts(bytes);
  if (!facts) throw new UserError(`Photo ${photo.id}: ${file} cannot be read as a picture`);
  const solved = solvePhoto(opened.assessment.model, photo, facts);
  return { opened, solved, fitted: async () => solved, root, bytes: async () => bytes };
}

async function noSuchPhoto(shell: string, id: string, photos: readonly Photo[]): Promise<never> {
  const { nearest } = await import('../source/nearest.js');
  const close = nearest(
    id,
    photos.map((one) => one.id),
  );
  throw new UserError(`No photo ${id} in ${shell}.${close.length > 0 ? ` Did you mean ${close.join(' or ')}?` : ''}`);
}
