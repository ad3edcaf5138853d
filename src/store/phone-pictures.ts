import { createHash } from 'node:crypto';
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { momentOf, readExif } from './exif.js';
import { isHeic, readHeic } from './heic.js';

/** A picture as a phone or camera left it; its bytes stay on the disk. */
export interface Picture {
  /** Relative to the folder. */
  readonly name: string;
  readonly sha256: string;
  /** It was HEIC: what is kept is the JPEG made of it. */
  readonly original?: { readonly sha256: string };
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
  /** Pictures that are taken in without their date → what stands there in its place. */
  readonly undated: ReadonlyMap<string, string>;
  /** The bytes of one of them, once more. Throws {@link UserError} where it is no longer what was looked at. */
  bytesOf(picture: Pick<Picture, 'name' | 'sha256' | 'original'>): Promise<Buffer>;
}

const PICTURE = /\.(?:jpe?g|png|webp|tiff?|heic|heif|avif)$/iu;
const LARGEST_BYTES = 60 * 1024 * 1024;

/** Looks at the pictures of a folder and of those in it, one by one, in the order of their names. Throws {@link UserError} where there is no such folder. */
export async function readPictures(dir: string, progress: (text: string) => void): Promise<Pictures> {
  const names = await filesIn(dir);
  const pictures: Picture[] = [];
  const refused = new Map<string, string>();
  const undated = new Map<string, string>();
  const wanted = names.filter((name) => PICTURE.test(name));
  for (const [i, name] of wanted.entries()) {
    progress(`Reading picture ${i + 1} of ${wanted.length}`);
    const read = await readPicture(dir, name);
    if (typeof read === 'string') refused.set(name, read);
    else {
      pictures.push(read.picture);
      if (read.wrongDate !== undefined) undated.set(name, read.wrongDate);
    }
  }
  return { pictures, refused, undated, others: names.length - wanted.length, bytesOf: (picture) => bytesAgain(dir, picture) };
}

async function bytesAgain(
  dir: string,
  { name, sha256, original }: Pick<Picture, 'name' | 'sha256' | 'original'>,
): Promise<Buffer> {
  const bytes = await readFile(path.join(dir, name)).catch(() => undefined);
  if (bytes && hashOf(bytes) === sha256) return bytes;
  if (bytes && original && hashOf(bytes) === original.sha256) {
    const read = await readHeic(bytes);
    if ('jpeg' in read && hashOf(read.jpeg) === sha256) return read.jpeg;
  }
  throw new UserError(
    `${name} was changed or removed while the pictures were taken in. Take them in again: those already there are skipped.`,
  );
}

const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

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

interface Read {
  readonly picture: Picture;
  readonly wrongDate?: string;
}

/** The picture, or why it cannot be used. */
async function readPicture(dir: string, name: string): Promise<Read | string> {
  const file = path.join(dir, name);
  const found = await stat(file).catch(() => undefined);
  if (!found?.isFile()) return 'it is gone';
  if (found.size > LARGEST_BYTES) return `over ${LARGEST_BYTES / 1048576} MB: save it smaller`;
  const given = await readFile(file);
  const made = isHeic(given) ? await readHeic(given) : undefined;
  if (made && 'fault' in made) return made.fault;
  const bytes = made?.jpeg ?? given;
  const looked = await lookAt(bytes);
  if (typeof looked === 'string') return looked;
  const { taken, wrongDate, bearingDeg } = cameraOf(looked.exif);
  const picture = {
    name,
    sha256: hashOf(bytes),
    ...(made ? { original: { sha256: hashOf(given) } } : {}),
    ...(taken === undefined ? {} : { taken }),
    ...(bearingDeg === undefined ? {} : { bearingDeg }),
  };
  return { picture, ...(wrongDate === undefined ? {} : { wrongDate }) };
}

/** Pixels are asked for, not the head alone: a picture cut short has a head too. What is wrong, in words; else what the camera wrote. */
async function lookAt(bytes: Buffer): Promise<{ readonly exif: Buffer | undefined } | string> {
  const { openPicture, whyNot } = await import('./picture.js');
  try {
    const picture = await openPicture(bytes);
    const { exif } = await picture.metadata();
    await picture.resize(8, 8).raw().toBuffer();
    // A TIFF is the frame of Exif itself.
    return { exif: exif ?? (/^(?:II|MM)/u.test(bytes.toString('latin1', 0, 2)) ? bytes : undefined) };
  } catch (error) {
    const why = whyNot(error);
    if (why !== undefined) return `it ${why}: save it smaller`;
    return 'it cannot be read as a picture: it is cut short or of another kind';
  }
}

/** As the phone wrote it: its clock is the shop’s, whatever zone this machine is in. */
function cameraOf(block: Buffer | undefined): {
  readonly taken?: string;
  readonly wrongDate?: string;
  readonly bearingDeg?: number;
} {
  const { dateTimeOriginal, dateTimeDigitized, gpsImgDirection } = readExif(block);
  const moments = [momentOf(dateTimeOriginal), momentOf(dateTimeDigitized)];
  const taken = moments.find((one) => one !== undefined && 'iso' in one && one.iso.includes('T'));
  const wrong = moments.find((one) => one !== undefined && 'wrong' in one);
  const bearing =
    typeof gpsImgDirection === 'number' && gpsImgDirection >= 0 && gpsImgDirection <= 360 ? gpsImgDirection : undefined;
  return {
    ...(taken && 'iso' in taken ? { taken: taken.iso } : wrong && 'wrong' in wrong ? { wrongDate: wrong.wrong } : {}),
    ...(bearing === undefined ? {} : { bearingDeg: bearing }),
  };
}
