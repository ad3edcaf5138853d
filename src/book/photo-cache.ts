import { readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import path from 'node:path';
import sharp from 'sharp';
import { sha256 } from '../archive/fingerprint.js';
import { replaceFile } from '../store/replace.js';
import { UserError } from '../user-error.js';
import { privateFolder } from './print/cache.js';

/** Pictures made for print, kept by the content of the photo they were made of: once for every edition and every later print. */
export interface PhotoCache {
  /** The picture of `photo`, from the cache or from `make`. A cache that cannot be used only costs time and memory. */
  picture(photo: Buffer, make: () => Promise<Buffer>): Promise<PrintPicture>;
}

/** A picture as the print asks for it: read whenever it is asked for, so that a thousand of them are not in memory at once. */
export type PrintPicture = () => Buffer;

/** Beyond this many the older half goes. */
const MOST_PICTURES = 6000;

/** `recipe` names how pictures are made: another recipe makes others. */
export function openPhotoCache(recipe: string, environment: NodeJS.ProcessEnv = process.env): PhotoCache {
  const { folder, temporary } = privateFolder('photos', environment);
  if (temporary) {
    rmSync(folder, { recursive: true, force: true });
    return { picture: async (_photo, make) => inMemory(await make()) };
  }
  prune(folder);
  const making = new Map<string, Promise<PrintPicture>>();
  return {
    picture(photo, make) {
      const file = path.join(folder, `${sha256(`${recipe}\n${sha256(photo)}`)}.jpg`);
      const known = making.get(file);
      if (known) return known;
      const picture = kept(file, make).finally(() => making.delete(file));
      making.set(file, picture);
      return picture;
    },
  };
}

const inMemory =
  (bytes: Buffer): PrintPicture =>
  () =>
    bytes;

async function kept(file: string, make: () => Promise<Buffer>): Promise<PrintPicture> {
  const size = await stat(file).then(
    (found) => found.size,
    () => 0,
  );
  if (size > 0) return inFile(file);
  const made = await make();
  const written = await replaceFile(file, made).catch(() => false);
  return written ? inFile(file) : inMemory(made);
}

function inFile(file: string): PrintPicture {
  return () => {
    try {
      return readFileSync(file);
    } catch {
      throw new UserError(`${file} was taken away while the book was printed. Print it again.`);
    }
  };
}

function prune(folder: string): void {
  try {
    const files = readdirSync(folder).map((name) => path.join(folder, name));
    if (files.length <= MOST_PICTURES) return;
    const byAge = files.map((file) => ({ file, age: statSync(file).mtimeMs })).sort((a, b) => a.age - b.age);
    for (const { file } of byAge.slice(0, Math.floor(files.length / 2))) rmSync(file, { force: true });
  } catch {
    // Another process is at it.
  }
}

/** The picture library and its decoders: another version may make other bytes. */
export const PICTURE_LIBRARY = `sharp ${sharp.versions.sharp}, vips ${sharp.versions.vips}`;
