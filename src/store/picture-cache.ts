import sharp from 'sharp';
import { UserError } from '../user-error.js';
import { CacheDir } from './kept.js';
import { digest, sealed, unsealed } from './sealed.js';

/** Pictures made smaller, kept by the content of the photo they were made of: once for every edition, page and later print. */
export interface PictureCache {
  /** The picture of `photo`, from the cache or from `make`. A cache that cannot be used only costs time and memory. */
  picture(photo: Buffer, make: () => Promise<Buffer>): Promise<SmallPicture>;
}

/** Read whenever it is asked for, so that a thousand of them are not in memory at once. */
export type SmallPicture = () => Buffer;

/** Beyond this many the oldest go. */
const MOST_PICTURES = 6000;

/**
 * In the user's own folder. `recipe` names how pictures are made: another recipe makes others. Each is marked with the user's key and
 * with its own name, so that none is believed that is damaged, was put there by somebody else, or is of another photo.
 */
export async function openPictureCache(recipe: string, environment: NodeJS.ProcessEnv = process.env): Promise<PictureCache> {
  const folder = CacheDir.ofUser('photos', environment);
  await folder.thin(MOST_PICTURES);
  const making = new Map<string, Promise<SmallPicture>>();
  return {
    picture(photo, make) {
      const name = digest(`${recipe}\n${PICTURE_LIBRARY}\n${digest(photo)}`);
      const known = making.get(name);
      if (known) return known;
      const picture = kept(folder, name, make).finally(() => making.delete(name));
      making.set(name, picture);
      return picture;
    },
  };
}

async function kept(folder: CacheDir, name: string, make: () => Promise<Buffer>): Promise<SmallPicture> {
  if (pictureIn(folder, name)) return inFile(folder, name);
  const made = await make();
  const written = await folder.write(fileOf(name), sealed(Buffer.concat([Buffer.from(name), made])));
  return written ? inFile(folder, name) : () => made;
}

const fileOf = (name: string): string => `${name}.kept`;

function pictureIn(folder: CacheDir, name: string): Buffer | undefined {
  const found = folder.read(fileOf(name));
  const text = found && unsealed(found);
  return text?.subarray(0, name.length).toString('latin1') === name ? text.subarray(name.length) : undefined;
}

const inFile =
  (folder: CacheDir, name: string): SmallPicture =>
  () => {
    const found = pictureIn(folder, name);
    if (!found) throw new UserError('A picture was taken away while the book was printed. Print it again.');
    return found;
  };

/** The picture library and its decoders: another version may make other bytes. */
const PICTURE_LIBRARY = `sharp ${sharp.versions.sharp}, vips ${sharp.versions.vips}`;
