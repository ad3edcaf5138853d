import { open } from 'node:fs/promises';
import sharp, { type Sharp, type SharpOptions } from 'sharp';

/** Above this a picture is not opened at all: a small file may unpack to gigabytes. */
const MOST_PIXELS = 120e6;

/** Why such a picture is refused; to follow its name. */
export const TOO_MANY_PIXELS = `has more than ${MOST_PIXELS / 1e6} million pixels`;

/** How the files begin that cameras and phones write: JPEG, PNG, WebP, TIFF, HEIF and AVIF, GIF. */
const HEAD = /^(?:\xff\xd8\xff|\x89PNG\r\n|RIFF.{4}WEBP|II[*+]\0|MM\0[*+]|.{4}ftyp|GIF8)/su;
const HEAD_BYTES = 16;

/**
 * A picture of anybody's, whatever its name says that it is. The library reads drawings too, and a drawing takes other files of this
 * machine into itself: what does not begin as a picture is not given to it.
 * @throws Error where it is of another kind; reading the picture fails where it is damaged or has too many pixels
 */
export async function openPicture(given: Buffer | string, failOn: SharpOptions['failOn'] = 'truncated'): Promise<Sharp> {
  const head = typeof given === 'string' ? await headOf(given) : given.subarray(0, HEAD_BYTES);
  if (!HEAD.test(head.toString('latin1'))) throw new Error('no picture of a kind that cameras write');
  return sharp(given, { limitInputPixels: MOST_PIXELS, failOn });
}

export const hasTooManyPixels = (error: unknown): boolean => error instanceof Error && /pixel limit/iu.test(error.message);

async function headOf(file: string): Promise<Buffer> {
  const handle = await open(file);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}
