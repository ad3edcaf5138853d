import { createHash } from 'node:crypto';
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../user-error.js';

/** A picture as a phone or camera left it. */
export interface Picture {
  /** Relative to the folder. */
  readonly name: string;
  readonly bytes: Buffer;
  readonly sha256: string;
  /** When it was taken, ISO 8601 without a zone, as the phone’s clock had it. */
  readonly taken?: string;
  /** Degrees clockwise from north that the lens looked to. */
  readonly bearingDeg?: number;
}

export interface Pictures {
  readonly pictures: readonly Picture[];
  /** Files that cannot be used → why, and what to do. */
  readonly refused: ReadonlyMap<string, string>;
  /** Files that are no pictures at all. */
  readonly others: number;
}

const PICTURE = /\.(?:jpe?g|png|webp|tiff?|heic|heif|avif)$/iu;
const HEIC = /\.hei[cf]$/iu;
const LARGEST_BYTES = 60 * 1024 * 1024;

/** Reads the pictures of a folder and of those in it, in the order of their names. Throws {@link UserError} where there is no such folder. */
export async function readPictures(dir: string, progress: (text: string) => void): Promise<Pictures> {
  const names = await filesIn(dir);
  const pictures: Picture[] = [];
  const refused = new Map<string, string>();
  const wanted = names.filter((name) => PICTURE.test(name));
  for (const [i, name] of wanted.entries()) {
    progress(`Reading picture ${i + 1} of ${wanted.length}`);
    const read = await readPicture(dir, name);
    if (typeof read === 'string') refused.set(name, read);
    else pictures.push(read);
  }
  return { pictures, refused, others: names.length - wanted.length };
}

async function filesIn(dir: string): Promise<readonly string[]> {
  try {
    const entries = await readdir(dir, { recursive: true, withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile() && !entry.name.startsWith('.'));
    return files.map((entry) => path.relative(dir, path.join(entry.parentPath ?? entry.path, entry.name))).sort();
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new UserError(
      `${dir} cannot be read: ${code === 'ENOENT' ? 'there is no such folder' : code === 'ENOTDIR' ? 'it is a file, expected a folder of pictures' : code}`,
    );
  }
}

/** The picture, or why it cannot be used. */
async function readPicture(dir: string, name: string): Promise<Picture | string> {
  const file = path.join(dir, name);
  if ((await stat(file)).size > LARGEST_BYTES) return `over ${LARGEST_BYTES / 1048576} MB: save it smaller`;
  const bytes = await readFile(file);
  const fault = await faultOf(name, bytes);
  if (fault !== undefined) return fault;
  return { name, bytes, sha256: createHash('sha256').update(bytes).digest('hex'), ...(await exifOf(bytes)) };
}

/** Pixels are asked for, not the head alone: a picture cut short has a head too. */
async function faultOf(name: string, bytes: Buffer): Promise<string | undefined> {
  const { hasTooManyPixels, openPicture, TOO_MANY_PIXELS } = await import('./picture.js');
  try {
    await (await openPicture(bytes)).resize(8, 8).raw().toBuffer();
    return undefined;
  } catch (error) {
    if (hasTooManyPixels(error)) return `it ${TOO_MANY_PIXELS}: save it smaller`;
    if (HEIC.test(name)) return 'HEIC cannot be read here: save it as JPEG, or set the phone to take JPEG (“most compatible”)';
    return 'it cannot be read as a picture: it is cut short or of another kind';
  }
}

async function exifOf(bytes: Buffer): Promise<Pick<Picture, 'taken' | 'bearingDeg'>> {
  const { default: exifr } = await import('exifr');
  const pick = ['DateTimeOriginal', 'CreateDate', 'GPSImgDirection'];
  // As the phone wrote it: its clock is the shop’s, whatever zone this machine is in.
  const read: unknown = await exifr.parse(bytes, { pick, reviveValues: false, translateValues: false }).catch(() => undefined);
  const { DateTimeOriginal, CreateDate, GPSImgDirection } = (read ?? {}) as Readonly<Record<string, unknown>>;
  const taken = isoTime(DateTimeOriginal) ?? isoTime(CreateDate);
  const bearingDeg =
    typeof GPSImgDirection === 'number' && GPSImgDirection >= 0 && GPSImgDirection <= 360 ? GPSImgDirection : undefined;
  return { ...(taken === undefined ? {} : { taken }), ...(bearingDeg === undefined ? {} : { bearingDeg }) };
}

/** `2026:04:07 14:30:05` as Exif has it. */
function isoTime(typed: unknown): string | undefined {
  const match = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2}(?::\d{2})?)/u.exec(String(typed ?? ''));
  return match && match[1] !== '0000' ? `${match[1]}-${match[2]}-${match[3]}T${match[4]}` : undefined;
}
