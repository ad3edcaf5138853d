import { sha256Hex } from '../../page/sha256.js';
import { smallPicture } from '../../page/small-picture.js';
import { localMoment } from './moment.js';

/** A picture that the phone's camera took, made small. */
export interface TakenPicture {
  readonly sha256: string;
  readonly name: string;
  /** In base64. */
  readonly jpeg: string;
  /** The phone's own day and time. */
  readonly taken: string;
}

/** Undefined where the file is no picture. */
export async function pictureTaken(file: File): Promise<TakenPicture | undefined> {
  const jpeg = await smallPicture(file);
  if (jpeg === undefined) return undefined;
  const bytes = Uint8Array.from(atob(jpeg), (sign) => sign.charCodeAt(0));
  return { sha256: sha256Hex(bytes), name: file.name.slice(0, 200), jpeg, taken: localMoment(new Date(file.lastModified)) };
}

/** A small picture has no camera's date any more: who took it vouches for the phone's. */
export const photoFields = (
  id: string,
  { sha256, taken }: Pick<TakenPicture, 'sha256' | 'taken'>,
  { by, why }: { readonly by: string; readonly why: string },
) => ({
  file: `${id.replace(/[^\w.-]+/gu, '-')}.jpg`,
  sha256,
  taken,
  vouched: { by, date: localMoment().slice(0, 10), why },
});
