import { createHash } from 'node:crypto';
import type { FloorFile } from '../floor/hand-over.js';
import { MOST_SOUND_BYTES, soundEnding } from '../floor/sound.js';
import { UserError } from '../user-error.js';

/** A picture’s name in the photos folder: no folder, nothing hidden. */
const NAME = /^[A-Za-z0-9][\w.-]{0,79}\.jpg$/u;
const MOST_PIXELS = 64_000_000;

/** Looks at each picture of a file: are its bytes those of its hash, and are they a picture? Throws {@link UserError}. */
export async function checkPictures({ entries, pictures }: FloorFile, file: string): Promise<void> {
  const { default: sharp } = await import('sharp');
  for (const { sha256, name, jpeg } of pictures) {
    const bytes = Buffer.from(jpeg, 'base64');
    const refuse = (why: string): never => {
      throw new UserError(
        `${file}: the picture ${JSON.stringify(name)} ${why}. Nothing was taken in: hand over again on the phone.`,
      );
    };
    if (createHash('sha256').update(bytes).digest('hex') !== sha256) refuse('is not what its SHA-256 says');
    if (bytes[0] !== 0xff || bytes[1] !== 0xd8) refuse('is no JPEG');
    await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' })
      .resize(8, 8, { fit: 'fill' })
      .raw()
      .toBuffer()
      .catch(() => refuse('cannot be read'));
  }
  for (const { picture, data, key } of entries)
    if (picture !== undefined && !NAME.test(String(data.file)))
      throw new UserError(
        `${file}: entry ${key} names its picture ${JSON.stringify(data.file)}, expected a plain name that ends with .jpg`,
      );
}

/** Looks at each voice note: are its bytes those of its hash, and are they a sound? Throws {@link UserError}. */
export function checkSounds({ sounds = [] }: FloorFile, file: string): void {
  for (const { sha256, name, sound } of sounds) {
    const bytes = Buffer.from(sound, 'base64');
    const refuse = (why: string): never => {
      throw new UserError(
        `${file}: the voice note ${JSON.stringify(name)} ${why}. Nothing was taken in: hand over again on the phone.`,
      );
    };
    if (createHash('sha256').update(bytes).digest('hex') !== sha256) refuse('is not what its SHA-256 says');
    if (bytes.length > MOST_SOUND_BYTES) refuse(`is larger than ${MOST_SOUND_BYTES / 1024 / 1024} MB`);
    if (soundEnding(bytes) === undefined) refuse('is no sound');
  }
}
