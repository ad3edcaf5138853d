import { anchor } from '../model/anchor.js';
import type { Photo } from '../records/index.js';
import { openPicture } from '../store/picture.js';
import { openPictureCache, type PictureCache } from '../store/picture-cache.js';

/** A picture of the page: made small once, shown wherever it is wanted. */
export interface PagePicture {
  readonly photo: Photo;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly jpeg: Buffer;
}

export interface PagePictures {
  readonly all: readonly PagePicture[];
  /** How many could not be read, or would make the page too large. */
  readonly left: number;
}

/** All pictures of a page together, in bytes as written there: the page stays below 6 MB with 3 MB of its own. */
const MOST_BYTES = 2_900_000;
const BASE64 = 4 / 3;
/** Long sides that are tried, px; with many pictures each is smaller. */
const LEAST_PX = 400;
const SIZES = [1280, 960, 720, 540, LEAST_PX] as const;
const QUALITY = 58;
/** Bytes of such a picture for each pixel, about: only what is tried first hangs on it. */
const BYTES_PER_PX = 0.1;
const AT_ONCE = 4;

export const pictureId = (photo: string): string => `ph-${anchor(photo).slice(2)}`;

/** Turned upright, small, without any metadata (the place above all). As many as fit, in the order of the record. */
export async function pagePictures(
  photos: readonly Photo[],
  file: (photoId: string) => Promise<Buffer | undefined>,
): Promise<PagePictures> {
  const share = MOST_BYTES / BASE64 / Math.max(1, photos.length);
  const sizes = SIZES.filter((px) => px === LEAST_PX || px * px * 0.75 * BYTES_PER_PX <= share);
  for (const longest of sizes) {
    const made = await allOf(photos, longest, file);
    const bytes = made.reduce((sum, { jpeg }) => sum + jpeg.length * BASE64, 0);
    if (bytes <= MOST_BYTES) return { all: made, left: photos.length - made.length };
    if (longest === LEAST_PX) return fitting(made, photos.length);
  }
  return { all: [], left: photos.length };
}

/** As many of them, in order, as fit. */
function fitting(made: readonly PagePicture[], count: number): PagePictures {
  let bytes = 0;
  const all = made.filter(({ jpeg }) => {
    if (bytes + jpeg.length * BASE64 > MOST_BYTES) return false;
    bytes += jpeg.length * BASE64;
    return true;
  });
  return { all, left: count - all.length };
}

async function allOf(
  photos: readonly Photo[],
  longest: number,
  file: (photoId: string) => Promise<Buffer | undefined>,
): Promise<readonly PagePicture[]> {
  const cache = await openPictureCache(`page, upright, ${longest} px, JPEG ${QUALITY}, sRGB on white, behind its size`);
  const made: (PagePicture | undefined)[] = [];
  let next = 0;
  const work = async (): Promise<void> => {
    for (let at = next++; at < photos.length; at = next++) made[at] = await small(photos[at] as Photo, longest, file, cache);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  return made.filter((one) => one !== undefined);
}

async function small(
  photo: Photo,
  longest: number,
  file: (photoId: string) => Promise<Buffer | undefined>,
  cache: PictureCache,
): Promise<PagePicture | undefined> {
  const given = await file(photo.id).catch(() => undefined);
  if (!given || given.length === 0) return undefined;
  try {
    const kept = (await cache.picture(given, () => withSize(given, longest)))();
    return { photo, widthPx: kept.readUInt16BE(0), heightPx: kept.readUInt16BE(2), jpeg: kept.subarray(SIZE_BYTES) };
  } catch {
    // Damaged, of another kind, too large: the page says how many are not on it.
    return undefined;
  }
}

const SIZE_BYTES = 4;

/** The small picture behind its width and height in pixels, two bytes each. */
async function withSize(given: Buffer, longest: number): Promise<Buffer> {
  const { data, info } = await (await openPicture(given))
    .rotate()
    .resize({ width: longest, height: longest, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    // Slower ways of packing save a fifth of the bytes and take twice as long.
    .jpeg({ quality: QUALITY })
    .toBuffer({ resolveWithObject: true });
  const size = Buffer.alloc(SIZE_BYTES);
  size.writeUInt16BE(info.width, 0);
  size.writeUInt16BE(info.height, 2);
  return Buffer.concat([size, data]);
}
