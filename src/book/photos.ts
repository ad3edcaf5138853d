import sharp from 'sharp';
import type { Photo } from '../model/shell.js';

/** One photo as the book prints it. */
export interface PrintPhoto {
  readonly photo: Photo;
  /** Path inside the book's page; absent where the picture could not be read. */
  readonly path?: string;
  readonly bytes?: Buffer;
  /** Why it is not there. */
  readonly missing?: string;
}

export interface BookPhotos {
  readonly all: readonly PrintPhoto[];
  readonly byId: ReadonlyMap<string, PrintPhoto>;
  readonly warnings: readonly string[];
}

/** Long side for print: 85 mm at 400 dpi. */
const LONGEST_PX = 1400;
const QUALITY = 72;
/** Above this a picture is not opened at all: a small file may unpack to gigabytes. */
const MOST_PIXELS = 120e6;

/** Turns every photo upright, makes it small enough for print and leaves all its metadata (the place above all) behind. */
export async function preparePhotos(
  photos: readonly Photo[],
  file: (photoId: string) => Promise<Buffer | undefined>,
): Promise<BookPhotos> {
  const all: PrintPhoto[] = [];
  for (const photo of photos) all.push(await preparePhoto(photo, all.length + 1, file));
  return {
    all,
    byId: new Map(all.map((one) => [one.photo.id, one])),
    warnings: all.flatMap((one) =>
      one.missing ? [`Photo ${one.photo.id}: ${one.missing}; the book says so in its place.`] : [],
    ),
  };
}

async function preparePhoto(
  photo: Photo,
  number: number,
  file: (photoId: string) => Promise<Buffer | undefined>,
): Promise<PrintPhoto> {
  const given = await file(photo.id).catch(() => undefined);
  if (given === undefined || given.length === 0) return { photo, missing: `its file \`${photo.file}\` is not in the record` };
  try {
    const bytes = await sharp(given, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' })
      .rotate()
      .resize({ width: LONGEST_PX, height: LONGEST_PX, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .jpeg({ quality: QUALITY, mozjpeg: false })
      .toBuffer();
    return { photo, bytes, path: `/photo/${number}.jpg` };
  } catch {
    return { photo, missing: `its file \`${photo.file}\` cannot be read as a picture` };
  }
}
