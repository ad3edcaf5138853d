import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import { inflateSync } from 'node:zlib';
import sharp, { type Sharp, type SharpOptions } from 'sharp';

/** Above this a picture is not opened at all: a small file may unpack to gigabytes. */
const MOST_PIXELS = 120e6;

/** Above this a file is no picture that a camera wrote. */
const MOST_BYTES = 256 * 1024 * 1024;
/** Colour profiles of printers, the largest that are used, have about three million bytes. */
const MOST_PROFILE_BYTES = 4 * 1024 * 1024;

/** A picture that is refused before it is unpacked; the message is to follow its name. */
class TooMuch extends Error {}

/** How the files begin that cameras and phones write: JPEG, PNG, WebP, TIFF, HEIF and AVIF, GIF. */
const HEAD = /^(?:\xff\xd8\xff|\x89PNG\r\n|RIFF.{4}WEBP|II[*+]\0|MM\0[*+]|.{4}ftyp|GIF8)/su;
const HEAD_BYTES = 16;

/**
 * A picture of anybody's, whatever its name says that it is. The library reads drawings too, and a drawing takes other files of this
 * machine into itself: what does not begin as a picture is not given to it.
 * @throws Error where it is of another kind; reading the picture fails where it is damaged or has too many pixels
 */
export async function openPicture(given: Buffer | string, failOn: SharpOptions['failOn'] = 'truncated'): Promise<Sharp> {
  const source = typeof given === 'string' ? await fileSource(given) : bufferSource(given);
  try {
    if (source.size > MOST_BYTES) throw new TooMuch(`has more than ${MOST_BYTES / 1048576} MB`);
    if (!HEAD.test((await source.read(0, HEAD_BYTES)).toString('latin1')))
      throw new Error('no picture of a kind that cameras write');
    await refuseLargeProfile(source);
  } finally {
    await source.close();
  }
  return sharp(given, { limitInputPixels: MOST_PIXELS, failOn });
}

/** Why a picture that could not be read was refused, to follow its name; undefined where it is damaged or of another kind. */
export function whyNot(error: unknown): string | undefined {
  if (error instanceof TooMuch) return error.message;
  return error instanceof Error && /pixel limit/iu.test(error.message)
    ? `has more than ${MOST_PIXELS / 1e6} million pixels`
    : undefined;
}

interface Source {
  readonly size: number;
  read(from: number, bytes: number): Promise<Buffer>;
  close(): Promise<void>;
}

const bufferSource = (bytes: Buffer): Source => ({
  size: bytes.length,
  read: async (from, count) => bytes.subarray(from, from + count),
  close: async () => {},
});

async function fileSource(file: string): Promise<Source> {
  const handle = await open(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  const found = await handle.stat().catch(() => undefined);
  if (!found?.isFile()) {
    await handle.close();
    throw new Error('no file');
  }
  return {
    size: found.size,
    async read(from, count) {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(count), 0, count, from);
      return buffer.subarray(0, bytesRead);
    },
    close: () => handle.close(),
  };
}

/** Chunks that a PNG may have before its pixels. */
const MOST_CHUNKS = 1000;

/**
 * A PNG holds its colour profile packed (chunk iCCP, PNG specification 11.3.2.3), and a few thousand bytes may unpack to a gigabyte. The
 * other kinds hold theirs as it is.
 */
async function refuseLargeProfile(source: Source): Promise<void> {
  if ((await source.read(0, 4)).toString('latin1') !== '\x89PNG') return;
  for (let at = 8, chunks = 0; at + 8 <= source.size; chunks++) {
    const head = await source.read(at, 8);
    if (head.length < 8) return;
    const [bytes, kind] = [head.readUInt32BE(0), head.toString('latin1', 4, 8)];
    if (kind === 'IDAT') return;
    if (chunks > MOST_CHUNKS || bytes > MOST_PROFILE_BYTES) throw new TooMuch('has more before its pixels than a picture needs');
    if (kind === 'iCCP' && isBomb(await source.read(at + 8, bytes)))
      throw new TooMuch(`has a colour profile of more than ${MOST_PROFILE_BYTES / 1048576} MB`);
    at += 12 + bytes;
  }
}

/** After a name, a zero byte and the way of packing comes the packed profile. */
function isBomb(chunk: Buffer): boolean {
  try {
    inflateSync(chunk.subarray(chunk.indexOf(0) + 2), { maxOutputLength: MOST_PROFILE_BYTES });
    return false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE';
  }
}
