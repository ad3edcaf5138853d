import sharp from 'sharp';
import { readExif } from './exif.js';

/** A picture as a phone wrote it in HEIC, made into the JPEG that the store keeps; or why it could not be. */
export type HeicRead = { readonly jpeg: Buffer } | { readonly fault: string };

/** Four bytes a pixel stand in memory while it is read. */
const MOST_PIXELS = 64e6;
const QUALITY = 92;

interface Decoded {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

type Decode = (given: { readonly buffer: Uint8Array }) => Promise<Decoded>;

/** The decoder is optional: where it was not installed, HEIC is told and not read. Its name is kept from the compiler, which would ask for it. */
const DECODER = 'heic-decode';

/** HEIC begins with a box `ftyp` of one of these brands (ISO/IEC 23008-12, annex B). */
export const isHeic = (bytes: Uint8Array): boolean =>
  /^.{4}ftyp(?:hei[cxms]|hev[cxms]|mif1|msf1)/su.test(Buffer.from(bytes.subarray(0, 16)).toString('latin1'));

/**
 * Reads HEIC. The picture is upright in the JPEG; of what the phone wrote beside it, the time, the direction and the focal length go
 * along, the place where it was taken does not.
 */
export async function readHeic(bytes: Buffer): Promise<HeicRead> {
  const decode = await decoder();
  if (!decode) {
    return {
      fault: 'HEIC cannot be read here, since the package heic-decode is not installed: install it, or save the picture as JPEG',
    };
  }
  try {
    const { width, height, exif } = await sharp(bytes).metadata();
    if (!width || !height) return { fault: DAMAGED };
    if (width * height > MOST_PIXELS) return { fault: `it has more than ${MOST_PIXELS / 1e6} million pixels: save it smaller` };
    const made = await decode({ buffer: bytes });
    if (made.width * made.height > MOST_PIXELS)
      return { fault: `it has more than ${MOST_PIXELS / 1e6} million pixels: save it smaller` };
    const raw = { width: made.width, height: made.height, channels: 4 as const };
    const jpeg = await sharp(Buffer.from(made.data.buffer), { raw })
      .removeAlpha()
      .jpeg({ quality: QUALITY })
      .withExif(kept(exif))
      .toBuffer();
    return { jpeg };
  } catch {
    return { fault: DAMAGED };
  }
}

const DAMAGED = 'it cannot be read as a picture: it is cut short or of another kind; if it opens elsewhere, save it as JPEG';

async function decoder(): Promise<Decode | undefined> {
  try {
    const loaded = (await import(DECODER)) as { readonly default: Decode };
    return loaded.default;
  } catch {
    return undefined;
  }
}

/** Of what the camera wrote, what is asked of a picture here. */
function kept(block: Buffer | undefined): Readonly<Record<string, Readonly<Record<string, string>>>> {
  const exif = readExif(block);
  const text = (value: string | number | undefined): string | undefined =>
    value === undefined ? undefined : typeof value === 'number' ? String(Math.round(value)) : value;
  const all = {
    DateTimeOriginal: text(exif.dateTimeOriginal),
    DateTimeDigitized: text(exif.dateTimeDigitized),
    FocalLengthIn35mmFilm: text(exif.focalLengthIn35mm),
  };
  const said = Object.fromEntries(Object.entries(all).flatMap(([key, value]) => (value === undefined ? [] : [[key, value]])));
  const { gpsImgDirection } = exif;
  const bearing: Readonly<Record<string, string>> =
    typeof gpsImgDirection === 'number' ? { GPSImgDirectionRef: 'M', GPSImgDirection: `${Math.round(gpsImgDirection)}/1` } : {};
  return { IFD2: said, IFD3: bearing };
}
