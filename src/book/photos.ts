import type { Photo } from '../records/index.js';
import { openPicture, whyNot } from '../store/picture.js';
import { openPictureCache, type PictureCache, type SmallPicture } from '../store/picture-cache.js';

/** One photo as the book prints it. */
export interface PrintPhoto {
  readonly photo: Photo;
  /** Path inside the book's page; absent where the picture could not be read. */
  readonly path?: string;
  readonly bytes?: SmallPicture;
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
const QUALITY = 70;
/** Whole photos that are in memory at a time. */
const AT_ONCE = 4;
/** Changed with whatever is done to a picture below. */
const RECIPE = `upright, ${LONGEST_PX} px, JPEG ${QUALITY} with a trellis, sRGB on white`;

/** Turns every photo upright, makes it small enough for print and leaves all its metadata (the place above all) behind. */
export async function preparePhotos(
  photos: readonly Photo[],
  file: (photoId: string) => Promise<Buffer | undefined>,
): Promise<BookPhotos> {
  const cache = await openPictureCache(RECIPE);
  const all: PrintPhoto[] = [];
  let next = 0;
  const prepareNext = async (): Promise<void> => {
    for (let at = next++; at < photos.length; at = next++) all[at] = await preparePhoto(photos[at] as Photo, at + 1, file, cache);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, prepareNext));
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
  cache: PictureCache,
): Promise<PrintPhoto> {
  const given = await file(photo.id).catch(() => undefined);
  if (given === undefined || given.length === 0) return { photo, missing: `its file \`${photo.file}\` is not in the record` };
  try {
    const bytes = await cache.picture(given, () => printed(given));
    return { photo, bytes, path: `/photo/${number}.jpg` };
  } catch (error) {
    const said = whyNot(error);
    const why = said === undefined ? 'cannot be read as a picture' : `${said}: record a smaller copy`;
    return { photo, missing: `its file \`${photo.file}\` ${why}` };
  }
}

const printed = async (given: Buffer): Promise<Buffer> =>
  (await openPicture(given))
    .rotate()
    .resize({ width: LONGEST_PX, height: LONGEST_PX, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .jpeg({ quality: QUALITY, mozjpeg: true })
    .toBuffer();
